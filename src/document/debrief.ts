/** The debrief of a drill as a document: result, dangers, marks with reasons, path, amounts, steps, what to practise. */
import type { Root, RootContent } from 'mdast';
import { plainNumber } from '../base/quantity-words.js';
import type { Units } from '../base/us-units.js';
import type { VerdictId } from '../rules/schema-judgement.js';
import { type Attempt, lookIds } from '../training/attempt.js';
import { type JudgedLook, praiseInFull } from '../training/judge-look.js';
import { capital, whatIsSeen } from '../training/looks.js';
import type { Marks, PartId } from '../training/marks.js';
import { practiseOf } from '../training/practise.js';
import { amountWords } from '../training/right-amount.js';
import { alsoRightSays, verdictReason, wrongVerdictSays } from '../training/verdict-words.js';
import type { WorkedCase } from '../training/worked-case.js';
import { bullets, heading, numbered, paragraph, strong, table } from './nodes.js';
import { said } from './words.js';

export const PART_TITLES: Readonly<Record<PartId, string>> = {
  looks: 'Looks that were needed',
  economy: 'Looks that were wasted',
  diagnosis: 'Diagnosis',
  sureness: 'How sure, against how right',
  amounts: 'Amounts',
  steps: 'Steps and their order',
};

const MODES: Readonly<Record<Attempt['mode'], string>> = {
  watch: 'watched',
  finish: 'the last steps done',
  whole: 'the whole case done',
};

export function debriefOf(worked: WorkedCase, attempt: Attempt, marks: Marks): Root {
  const { lesson } = worked;
  const children: RootContent[] = [
    heading(1, `Debrief: ${lesson.title}`),
    paragraph(
      `${kindOfCase(lesson)} Level: ${lesson.level}; ${MODES[attempt.mode]}, in ${attempt.minutes === 0 ? 'less than a minute' : `${attempt.minutes} min`}.`,
    ),
    paragraph(strong(resultLine(worked, marks))),
    ...dangersSection(worked, marks),
    ...marksSection(worked, attempt, marks),
    ...diagnosisSection(worked, attempt, marks),
    ...(attempt.mode === 'whole' ? pathSection(worked, attempt) : []),
    ...(marks.claims.length > 0 ? surenessSection(worked, marks) : []),
    ...(marks.amounts.length > 0 ? amountsSection(marks, worked.units) : []),
    ...stepsSection(worked, attempt, marks),
    heading(2, 'To take home'),
    paragraph(lesson.lesson),
    ...practiseSection(worked, attempt, marks),
  ];
  return { type: 'root', children };
}

export const kindOfCase = ({ invented }: WorkedCase['lesson']): string =>
  invented ? 'An invented case.' : 'A real lawn, as a case.';

/** One line: passed or not, and why. */
export function resultLine({ marking }: WorkedCase, { total, passed, dangers, gate }: Marks): string {
  const points = `${Math.round(total)} of 100`;
  if (dangers.some(({ isMissed }) => isMissed))
    return `Not passed: a danger was overlooked. That fails a case whatever the rest (${points}).`;
  const [fault] = gate;
  if (fault !== undefined) return `${marking.gate[fault]} (${points}.)`;
  return passed ? `Passed with ${points}.` : `Not passed yet: ${points}, and ${marking.passMark} are needed.`;
}

function dangersSection({ marking }: WorkedCase, { dangers }: Marks): RootContent[] {
  return [
    heading(2, 'What could hurt'),
    bullets(dangers.map(({ says, fate }) => [strong(marking.dangerWords[fate]), says])),
  ];
}

function marksSection({ marking }: WorkedCase, attempt: Attempt, marks: Marks): RootContent[] {
  const had = Object.entries(marks.parts) as [PartId, number][];
  const whole = had.reduce((sum, [id]) => sum + marking.weights[id], 0);
  const points = (id: PartId, part: number): string =>
    plainNumber((100 * marking.weights[id] * part) / whole);
  const rows = had.map(([id, part]) => [PART_TITLES[id], points(id, part), points(id, 1)]);
  const hints =
    attempt.hints.length === 0 ? [] : [[`Hints taken: ${attempt.hints.length}`, `-${marks.hintsCost}`, '']];
  return [
    heading(2, 'Marks'),
    table(['Part', 'Got', 'Of'], [...rows, ...hints, ['Together', plainNumber(marks.total), '100']]),
  ];
}

function diagnosisSection(worked: WorkedCase, attempt: Attempt, marks: Marks): RootContent[] {
  const { lesson, plan, pack, marking, say } = worked;
  const { commitment } = attempt;
  const { right, missed, wrong, doubted, tooSoon, besides } = marks.diagnosis;
  const words = marking.diagnosisWords;
  const title = (id: string): string => pack.findingById.get(id)?.title ?? id;
  const because = (id: string): string => plan.findings.find((finding) => finding.id === id)?.because ?? '';
  const tellsApart = (id: string): string => say(pack.findingById.get(id)?.tellsApart ?? '');
  const turn = (id: string): string =>
    lesson.wrongTurns.find(({ finding }) => finding === id)?.says ?? tellsApart(id);
  const howSaid = (id: string): string =>
    commitment === undefined ? '' : right.includes(id) ? 'Named.' : 'Missed.';
  return [
    heading(2, 'What was wrong, and why'),
    paragraph(
      strong(`Verdict: ${marking.verdicts[lesson.expected.verdict] ?? plan.verdict.title}.`),
      verdictReason(worked, true),
    ),
    ...(commitment === undefined || commitment.verdict === lesson.expected.verdict
      ? []
      : [
          paragraph(
            `You said: ${marking.verdicts[commitment.verdict]}.`,
            otherVerdict(worked, commitment.verdict),
          ),
        ]),
    ...listOf([
      ...lesson.expected.findings.map((id) => [
        strong(`${title(id)}.`),
        howSaid(id),
        because(id),
        commitment !== undefined && missed.includes(id) ? `How to tell: ${tellsApart(id)}` : '',
      ]),
      ...wrong.map((id) => [
        strong(`${title(id)}.`),
        tooSoon.includes(id) ? words.tooSoon : words.absent,
        turn(id),
      ]),
      ...doubted.map((id) => [strong(`${title(id)}.`), words.doubted, turn(id)]),
      ...besides.map((id) => [strong(`${title(id)}.`), 'Named, and true; it does not decide here.']),
    ]),
    ...(lesson.misleads.length === 0
      ? []
      : [paragraph('Signs that point the wrong way:'), bullets(lesson.misleads.map(({ says }) => [says]))]),
  ];
}

/** What is said of a verdict that is not the one of the case. */
export function otherVerdict(worked: WorkedCase, verdict: VerdictId): string {
  const also = alsoRightSays(worked, verdict);
  return also === undefined
    ? wrongVerdictSays(worked, verdict)
    : `${worked.marking.verdictWords.also} ${also}`;
}

const listOf = (items: Parameters<typeof bullets>[0]): RootContent[] =>
  items.length === 0 ? [] : [bullets(items)];

/** Of a good look the sign, the idea and what it changed; of another what was the matter with it. */
function whyItWas(worked: WorkedCase, look: JudgedLook): string[] {
  const isGood = look.kind === 'on-track' || look.kind === 'sound';
  return isGood ? [whatIsSeen(worked, look.question), praiseInFull(worked, look)] : [look.says];
}

function pathSection(worked: WorkedCase, attempt: Attempt): RootContent[] {
  const { good, pack, say } = worked;
  const seen = lookIds(attempt);
  const unseen = [...good].filter((id) => !seen.includes(id));
  return [
    heading(2, 'The path'),
    ...(attempt.looks.length === 0
      ? [paragraph('Nothing was looked at.')]
      : [
          numbered(
            attempt.looks.map((look) => [
              `${capital(look.question.label)}.`,
              strong(worked.marking.lookKinds[look.kind].debrief),
              ...whyItWas(worked, look),
            ]),
          ),
        ]),
    ...(unseen.length === 0
      ? []
      : [
          paragraph('Not looked at, and needed:'),
          bullets(
            unseen.map((id) => {
              const question = pack.questionById.get(id);
              return [strong(`${capital(question?.label ?? id)}.`), say(question?.why ?? '')];
            }),
          ),
        ]),
  ];
}

function surenessSection({ pack, marking }: WorkedCase, { claims, loss }: Marks): RootContent[] {
  const name = (what: string): string =>
    pack.findingById.get(what)?.title ?? (marking.verdicts as Record<string, string>)[what] ?? what;
  const rows = claims.map(({ what, sure, isRight }) => [
    name(what),
    `${Math.round(100 * sure)} %`,
    isRight ? 'right' : 'wrong',
  ]);
  const source = marking.sources.map(({ id }) => pack.sourceById.get(id)).find((each) => each !== undefined);
  return [
    heading(2, 'How sure you were'),
    table(['Said', 'How sure', 'It was'], rows),
    paragraph(
      `Quadratic score ${plainNumber(loss ?? 0)}: 0 is best and 1 is worst. What decides here and was not named counts as 0 %.`,
      source === undefined ? '' : `After ${source.author}, ${source.year}: ${source.publisher}.`,
    ),
  ];
}

function amountsSection({ amounts }: Marks, units: Units): RootContent[] {
  return [
    heading(2, 'Amounts'),
    bullets(
      amounts.map(({ asked, right, given, mark, slip }) => [
        asked.ask,
        strong(mark === 1 ? 'Right.' : mark > 0 ? 'Near.' : given === null ? 'Not given.' : 'Wrong.'),
        given === null ? '' : `You said ${amountWords(given, right, units)}.`,
        slip ?? '',
        `It is ${amountWords(right.value, right, units)}: ${said(asked.byHand.working)}`,
      ]),
    ),
  ];
}

function stepsSection(
  { lesson, plan, pack }: WorkedCase,
  { order }: Attempt,
  { steps }: Marks,
): RootContent[] {
  const title = (id: string): string => pack.stepById.get(id)?.title ?? id;
  const purpose = (id: string): string => plan.steps.find((step) => step.id === id)?.purpose ?? '';
  const why = (then: string, first: string): string =>
    plan.steps.find(({ id }) => id === then)?.after.find(({ step }) => step === first)?.why ?? '';
  const turn = (id: string): string =>
    lesson.wrongTurns.find(({ step }) => step === id)?.says ??
    'Nothing that is true of this lawn calls for it.';
  const remarks = [
    ...steps.missed.map((id) => [strong(`${title(id)} was left out.`), purpose(id)]),
    ...steps.mistaken.map((id) => [strong(`${title(id)} does not belong here.`), turn(id)]),
    ...steps.broken.map(([first, then]) => [
      strong(`${title(first)} comes before ${title(then).toLowerCase()}.`),
      why(then, first),
    ]),
  ];
  return [
    heading(2, 'Steps'),
    paragraph('A good order:'),
    numbered(lesson.expected.steps.map((id) => [title(id)])),
    ...(order === undefined ? [] : remarks.length === 0 ? [paragraph('Yours holds.')] : [bullets(remarks)]),
  ];
}

function practiseSection(worked: WorkedCase, attempt: Attempt, marks: Marks): RootContent[] {
  const lines = practiseOf(worked, attempt, marks);
  return lines.length === 0 ? [] : [heading(2, 'What to practise'), bullets(lines.map((line) => [line]))];
}
