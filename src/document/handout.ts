/** A case on paper: a handout that gives nothing away, and the key for whoever marks it. */
import type { Root, RootContent } from 'mdast';
import { formatDay, parseIsoDate } from '../base/dates.js';
import { quantityRange } from '../base/quantity-words.js';
import { measureOf } from '../base/us-units.js';
import type { Question } from '../rules/schema.js';
import type { VerdictId } from '../rules/schema-judgement.js';
import { capital, whatIsSeen } from '../training/looks.js';
import type { PartId } from '../training/marks.js';
import { amountWords, rightAmount } from '../training/right-amount.js';
import { offeredSteps } from '../training/step-order.js';
import { verdictReason } from '../training/verdict-words.js';
import { isThere, type WorkedCase } from '../training/worked-case.js';
import { kindOfCase, otherVerdict, PART_TITLES } from './debrief.js';
import { bullets, heading, numbered, paragraph, strong, table } from './nodes.js';
import { said } from './words.js';

const COSTS: Readonly<Record<Question['cost'], string>> = { chair: 'ask', look: 'look', dig: 'dig or test' };
const GAP = '……………………';

/** Two sheets, since amounts and steps give the diagnosis away: story and looks first, the rest once that is handed in. */
export function handoutOf(worked: WorkedCase): Root {
  const { lesson, looks, marking, pack } = worked;
  return {
    type: 'root',
    children: [
      ...head(worked, lesson.title),
      heading(2, 'What you may look at'),
      paragraph(
        'Ask your trainer for one at a time; what you ask for, and in which order, is marked. Go on until you are sure.',
      ),
      numbered(looks.map(({ label, cost }) => [`${capital(label)} (${COSTS[cost]})`])),
      heading(2, 'What is wrong'),
      paragraph(
        `The lawn needs: ${Object.values(marking.verdicts).join(' / ')}. How sure, in per cent: ${GAP}`,
      ),
      paragraph('Name what is wrong, each with how sure. It may be one thing or several of these:'),
      bullets(pack.findings.map(({ title }) => [title])),
      { type: 'thematicBreak' },
      heading(1, `Second sheet: ${lesson.title}`),
      paragraph('To be given out when the first sheet has been handed in.'),
      ...(lesson.amounts.length === 0
        ? []
        : [heading(2, 'Amounts'), numbered(lesson.amounts.map(({ ask }) => [said(ask), GAP]))]),
      heading(2, 'Steps'),
      paragraph('Which of these, in which order? Leave out what does not belong.'),
      bullets(offeredSteps(worked).map(({ label }) => [label])),
    ],
  };
}

/** Everything that the handout leaves open, with reasons and marks. */
export function keyOf(worked: WorkedCase): Root {
  const { lesson, plan, pack, marking, units } = worked;
  const overdosed = `So is more than ${marking.overdose.times} times what a label allows.`;
  const title = (id: string): string => pack.findingById.get(id)?.title ?? id;
  const because = (id: string): string => plan.findings.find((finding) => finding.id === id)?.because ?? '';
  const stepTitle = (id: string): string => pack.stepById.get(id)?.title ?? id;
  return {
    type: 'root',
    children: [
      ...head(worked, `Key: ${lesson.title}`),
      paragraph(strong('The lesson.'), lesson.lesson),
      heading(2, 'What each look shows'),
      ...looksTable(worked),
      heading(2, 'What can hurt'),
      paragraph('Overlooked, the case is failed whatever the rest.', hasLabel(worked) ? overdosed : ''),
      bullets(
        lesson.dangers.map(({ look, says, beforeDigging }) => [
          strong(`${capital(pack.questionById.get(look)?.label ?? look)}.`),
          says,
          beforeDigging === true ? 'To be asked before anything goes into the ground.' : '',
        ]),
      ),
      heading(2, 'What is wrong'),
      paragraph(
        strong(`${capital(marking.verdicts[lesson.expected.verdict] ?? '')}.`),
        verdictReason(worked, true),
      ),
      ...listOf(lesson.expected.findings.map((id) => [strong(`${title(id)}.`), because(id)])),
      ...section(
        'Signs that mislead',
        lesson.misleads.map(({ says }) => [says]),
      ),
      ...section('Wrong turns, and what to say', [
        ...lesson.wrongTurns
          .filter(({ verdict }) => verdict === undefined)
          .map(({ finding, step, says }) => [
            strong(`${finding ? title(finding) : stepTitle(step ?? '')}.`),
            says,
          ]),
        ...(Object.entries(marking.verdicts) as [VerdictId, string][])
          .filter(([verdict]) => verdict !== lesson.expected.verdict)
          .map(([verdict, words]) => [strong(`${capital(words)}.`), otherVerdict(worked, verdict)]),
      ]),
      ...section(
        'Amounts',
        lesson.amounts.map((asked) => {
          const right = rightAmount(worked, asked);
          if (right === undefined) return [asked.ask, said(asked.byHand.working)];
          const measure = measureOf(right);
          const range = right.range === null ? '' : `Right: ${quantityRange(right.range, measure, units)}.`;
          return [
            asked.ask,
            strong(`${amountWords(right.value, right, units)}.`),
            said(asked.byHand.working),
            range,
          ];
        }),
      ),
      heading(2, 'Steps'),
      numbered(
        lesson.expected.steps.map((id) => [
          strong(`${stepTitle(id)}.`),
          plan.steps.find((step) => step.id === id)?.purpose ?? '',
        ]),
      ),
      ...(lesson.expected.notSteps.length === 0
        ? []
        : [paragraph(`Mistakes here: ${lesson.expected.notSteps.map(stepTitle).join('; ')}.`)]),
      heading(2, 'Marks'),
      bullets([
        ...(Object.entries(marking.weights) as [PartId, number][]).map(([id, weight]) => [
          `${PART_TITLES[id]}: ${weight}`,
        ]),
        [
          `Each hint costs ${Object.values(marking.hintCosts).join(', ')}: to point, to teach, to tell. ${marking.passMark} of 100 pass.`,
        ],
      ]),
    ],
  };
}

const hasLabel = (worked: WorkedCase): boolean =>
  worked.lesson.amounts.some((asked) => rightAmount(worked, asked)?.isLabelled === true);

function head({ lesson }: WorkedCase, title: string): RootContent[] {
  return [
    heading(1, title),
    paragraph(
      `${kindOfCase(lesson)} Level: ${lesson.level}; about ${lesson.minutes} min. ${formatDay(parseIsoDate(lesson.today))}.`,
    ),
    ...lesson.story.map((text) => paragraph(text)),
  ];
}

function looksTable(worked: WorkedCase): RootContent[] {
  const { looks, good, sound } = worked;
  // Numbered as on the handout: whoever is asked for number 24 finds it.
  const rows = looks.map((question, index) => [
    String(index + 1),
    capital(question.label),
    whatIsSeen(worked, question),
    good.has(question.id)
      ? 'needed'
      : sound.has(question.id) && isThere(worked, question)
        ? 'sound'
        : 'not needed',
  ]);
  return [table(['No.', 'Look', 'What there is to see', 'Worth'], rows)];
}

type Items = Parameters<typeof bullets>[0];

const listOf = (items: Items): RootContent[] => (items.length === 0 ? [] : [bullets(items)]);

const section = (title: string, items: Items): RootContent[] =>
  items.length === 0 ? [] : [heading(2, title), bullets(items)];
