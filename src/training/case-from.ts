/**
 * A case made of answers that somebody gave about a real lawn: what the rules conclude becomes the expected result,
 * what they needed for it becomes the needed looks. A person then adds the story, the misleading signs and the lesson.
 */
import { parseIsoDate } from '../base/dates.js';
import { type Answers, UNKNOWN } from '../interview/answers.js';
import { assemblePlan } from '../planner/assemble-plan.js';
import type { Plan } from '../planner/plan.js';
import { scopeFor } from '../planner/working-scope.js';
import { namesIn } from '../rules/call.js';
import { evaluate, type Scope } from '../rules/evaluate.js';
import type { Pack } from '../rules/pack.js';
import type { Expression } from '../rules/schema.js';
import type { DrillCase, Marking } from '../rules/schema-case.js';
import { questionsBehind, workOut } from './worked-case.js';

/** How many mistaken steps are offered beside the right ones, how many look-alikes get words, how many sums are asked. */
const MOST_WRONG_STEPS = 4;
const MOST_WRONG_TURNS = 4;
const MOST_SUMS = 3;

/**
 * The draft of a case; checkCase tells what it lacks.
 *
 * @param today ISO day on which the lawn was looked at
 */
export function caseFrom(given: Answers, today: string, pack: Pack, marking: Marking): DrillCase {
  const answers = withoutTheUsual(given, marking);
  const input = { pack, answers, today: parseIsoDate(today) };
  const plan = assemblePlan({ ...input, assumeAll: true });
  const scope = scopeFor({ ...input, assume: 'all' });
  const found = plan.findings.filter(({ verdict }) => verdict === 'found');
  const sums = sumsOf(plan, answers, { pack, marking });
  const draft: DrillCase = {
    id: 'own-lawn',
    title: typeof answers.lawnName === 'string' ? answers.lawnName : marking.ownLawn.title,
    invented: false,
    level: 'middling',
    topic: marking.ownLawn.topic,
    minutes: marking.ownLawn.minutes,
    lesson: marking.ownLawn.lesson.replace('{verdict}', marking.verdicts[plan.verdict.id] ?? ''),
    today,
    story: [marking.ownLawn.story],
    answers,
    seen: seenParts(answers),
    expected: {
      findings: found.map(({ id }) => id),
      not: lookAlikes(plan),
      verdict: plan.verdict.id,
      steps: plan.steps.map(({ id }) => id),
      notSteps: wrongSteps(plan, pack),
    },
    needs: [
      ...neededLooks(
        [...found.map(({ id }) => `findings.${id}`), 'facts.need'].map((name) => ({ var: name })),
        scope,
        pack,
      ),
      ...sums.flatMap(({ needs }) => needs),
    ],
    dangers: dangersOf(plan, pack, marking),
    misleads: [],
    wrongTurns: wrongTurnsOf(plan, pack),
    amounts: sums.map(({ asked }) => asked),
  };
  return withLooksThatAreThere(draft, pack, marking);
}

interface AskedSum {
  readonly asked: DrillCase['amounts'][number];
  /** Looks that it rests on. */
  readonly needs: readonly string[];
}

/** The area where it has to be worked out, and what goes on a lawn whose size is known. */
function sumsOf(
  plan: Plan,
  { lawnParts }: Answers,
  { pack, marking }: { readonly pack: Pack; readonly marking: Marking },
): AskedSum[] {
  const { areaM2, areaAssumed } = plan.lawn;
  if (areaAssumed) return [];
  const { area, areaWorking, amount } = marking.ownLawn;
  const byHand = (value: number, working: string) => ({ least: value, most: value, working });
  const ofArea: AskedSum = {
    asked: { id: 'area', ask: area, find: { kind: 'area' }, byHand: byHand(areaM2, areaWorking) },
    needs: ['areaM2'],
  };
  const ofSteps = plan.steps.flatMap(({ id: step, amounts }) =>
    amounts.flatMap(({ materialId, amount: value, formula, working, answers }): AskedSum[] => {
      if (value === null || !marking.ownLawn.formulas.includes(formula)) return [];
      const title = pack.materialById.get(materialId)?.title ?? materialId;
      const asked = {
        id: materialId,
        ask: amount.replace('{material}', title.toLowerCase()),
        find: { kind: 'amount' as const, step, material: materialId },
        byHand: byHand(value, `${working}.`),
      };
      const label = answers.filter((look) =>
        marking.planSections.includes(pack.questionById.get(look)?.section ?? ''),
      );
      return [{ asked, needs: ['areaM2', ...label] }];
    }),
  );
  return [...(Array.isArray(lawnParts) ? [ofArea] : []), ...ofSteps].slice(0, MOST_SUMS);
}

/** Questions that were not answered stay unknown; the usual lawn of the other cases fills in nothing. */
function withoutTheUsual(given: Answers, { usual }: Marking): Answers {
  const isGiven = (id: string): boolean =>
    Object.hasOwn(given, id) || (id === 'areaM2' && Object.hasOwn(given, 'lawnParts'));
  const unknown = Object.keys(usual)
    .filter((id) => !isGiven(id))
    .map((id) => [id, UNKNOWN]);
  return { ...Object.fromEntries(unknown), ...given };
}

/** Parts are told as measures, so that the area is left to work out. */
function seenParts({ lawnParts }: Answers): Record<string, string> {
  if (!Array.isArray(lawnParts)) return {};
  const words = lawnParts.map(({ shape, minus, ...sizes }) => {
    const measures = Object.entries(sizes).map(
      ([name, size]) => `${name.replace(/M$/, '')} ${measuresIn(size)}`,
    );
    return `${minus === true ? 'less ' : ''}${shape}: ${measures.join(', ')}`;
  });
  return { areaM2: `${words.join('; ')}.` };
}

/** Lengths in metres, alone, in a list or as corners: `{12 m}`, `{6 m}, {8 m}`, `({0 m}, {4 m})`. */
function measuresIn(size: unknown): string {
  if (!Array.isArray(size)) return typeof size === 'number' && size >= 0 ? `{${size} m}` : `${size} m`;
  return size.map((each) => (Array.isArray(each) ? `(${measuresIn(each)})` : measuresIn(each))).join(', ');
}

const lookAlikes = ({ findings }: Plan): string[] =>
  findings
    .filter(({ verdict, signsFor }) => verdict === 'notFound' && signsFor.length > 0)
    .map(({ id }) => id);

function wrongSteps({ steps, findings }: Plan, pack: Pack): string[] {
  const planned = new Set(steps.map(({ id }) => id));
  const leads = findings
    .filter(({ verdict }) => verdict === 'notFound')
    .flatMap(({ id }) => pack.findingById.get(id)?.leadsTo ?? []);
  return [...new Set(leads)].filter((id) => !planned.has(id)).slice(0, MOST_WRONG_STEPS);
}

/** The questions that these conditions were settled by. */
function neededLooks(conditions: readonly Expression[], scope: Scope, pack: Pack): string[] {
  const used = conditions.flatMap((condition) => {
    const outcome = evaluate(condition, scope);
    return outcome.known ? outcome.used : [];
  });
  return pack.questions.map(({ id }) => id).filter((id) => used.includes(id));
}

/** What the plan's own cautions rest on, where they hold for this lawn and not for all. */
function dangersOf(plan: Plan, pack: Pack, { beforeDigging }: Marking): DrillCase['dangers'] {
  const section = pack.questionById.get(beforeDigging.look)?.section;
  const dangers = new Map<string, string>();
  for (const { id, line, severity } of plan.cautions) {
    const when = pack.cautionById.get(id)?.when ?? true;
    if (when === true || severity === 'note') continue;
    for (const look of directlyRead(when, pack)) {
      const question = pack.questionById.get(look);
      const isNear = question?.safety === true || question?.section === section;
      if (isNear && !dangers.has(look)) dangers.set(look, line);
    }
  }
  if (dangers.size === 0) dangers.set(beforeDigging.look, beforeDigging.says);
  return [...dangers].map(([look, says]) => ({ look, says }));
}

/** The questions that a caution names, by itself or through the finding that it names. */
const directlyRead = (when: Expression, pack: Pack): string[] =>
  namesIn(when).flatMap((name) => {
    const finding = pack.findingById.get(name.replace(/^findings\./, ''));
    return finding === undefined ? [name] : namesIn(finding.when);
  });

function wrongTurnsOf(plan: Plan, pack: Pack): DrillCase['wrongTurns'] {
  const turns = lookAlikes(plan)
    .slice(0, MOST_WRONG_TURNS)
    .map((id) => ({
      finding: id,
      says: pack.findingById.get(id)?.tellsApart ?? '',
    }));
  const other = plan.verdict.id === 'start-again' ? 'care-only' : 'start-again';
  return turns.length > 0 ? turns : [{ verdict: other, says: plan.verdict.because }];
}

/** What was not answered, or is not asked here, cannot be looked at; digging waits for what lies below. */
function withLooksThatAreThere(draft: DrillCase, pack: Pack, marking: Marking): DrillCase {
  const { looks, answers } = workOut(draft, pack, marking);
  const isKnown = (id: string): boolean =>
    looks.some((look) => look.id === id) && (answers[id] ?? answers.lawnParts) !== UNKNOWN;
  const digs = [...draft.needs].some((id) => pack.questionById.get(id)?.cost === 'dig');
  const first = digs ? [marking.beforeDigging.look] : [];
  const read = new Set(questionsBehind(pack, [{ var: 'facts.need' }]));
  const needs = [...new Set([...first, ...draft.needs])].filter((id) => isKnown(id) || first.includes(id));
  return { ...draft, needs: needs.length > 0 ? needs : [...read].filter(isKnown).slice(0, 1) };
}
