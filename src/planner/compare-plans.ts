/**
 * What changes in the plan when answers change, and which answers did it.
 *
 * Each change of the plan is put down to the smallest sets of changed answers that bring it about by themselves,
 * found by making the plan with each of them alone, then with each two, and so on.
 */
import { addDays, type IsoDate } from '../base/dates.js';
import type { Units } from '../base/us-units.js';
import type { Answers } from '../interview/answers.js';
import { reasonsFor, sentenceOf } from '../interview/reasons.js';
import { showAnswer } from '../interview/show-answer.js';
import { namesIn } from '../rules/call.js';
import { recordOf } from '../rules/dot.js';
import type { Scope } from '../rules/evaluate.js';
import { everythingBehind, readsByName } from '../rules/graph.js';
import type { Pack } from '../rules/pack.js';
import type { Expression } from '../rules/schema.js';
import { assemblePlan, plannedScope, ScheduleClash } from './assemble-plan.js';
import type { Plan } from './plan.js';
import { type Feature, featuresOf } from './plan-features.js';
import type { PriceList } from './price-list.js';
import { type Outcome, smallestSets } from './smallest-sets.js';

export interface ChangedAnswer {
  readonly questionId: string;
  readonly label: string;
  readonly before: string;
  readonly after: string;
}

export interface PlanChange {
  readonly kind: Feature['kind'];
  /** `in`: only after; `out`: only before; `changed`: in both, and different. */
  readonly how: 'in' | 'out' | 'changed';
  readonly id: string;
  readonly title: string;
  readonly before: string | null;
  readonly after: string | null;
  /** Sets of question ids; each set is enough by itself, and no part of it is. */
  readonly by: readonly (readonly string[])[];
  /** Whether all sets of that size were tried. */
  readonly isComplete: boolean;
  /** Records whose outcome the first set turned, such as `finding thick-thatch`, the changed one itself first. */
  readonly rules: readonly string[];
  readonly because: string;
}

export interface Comparison {
  readonly format: 1;
  readonly madeOn: IsoDate;
  /** `month` where one of the two knows no climate: days are then only a reckoning by the months in print. */
  readonly datesKnownTo: Plan['datesKnownTo'];
  readonly before: Pick<Plan, 'verdict' | 'lawn'>;
  readonly after: Pick<Plan, 'verdict' | 'lawn'>;
  readonly answers: readonly ChangedAnswer[];
  readonly changes: readonly PlanChange[];
  /** Changed answers that no change of the plan is put down to. */
  readonly withoutEffect: readonly string[];
  /** Questions answered in neither way that stand at an assumption. */
  readonly assumed: readonly string[];
}

export interface CompareInput {
  readonly pack: Pack;
  readonly before: Answers;
  readonly after: Answers;
  readonly today: IsoDate;
  /** Whether a lawn that has some of the answers before and some after can be; shares of it may not pass the whole. */
  readonly isPossible: (answers: Answers) => boolean;
  /** Most plans to make in search of the causes. */
  readonly mostPlans: number;
  readonly prices?: PriceList | undefined;
  /** In which units it is worded; metric unless said otherwise. */
  readonly units?: Units;
}

/** Answers that give one thing between them change together. */
const TOGETHER: readonly (readonly string[])[] = [['areaM2', 'lawnParts']];

export function comparePlans(input: CompareInput): Comparison {
  const { pack, before, after, today, mostPlans, prices, units: said = 'metric' } = input;
  const choice = (answers: Answers) => ({ pack, answers, today, assumeAll: true, prices, units: said });
  const [planBefore, planAfter] = [assemblePlan(choice(before)), assemblePlan(choice(after))];
  const [was, is] = [featuresOf(planBefore), featuresOf(planAfter)];
  const units = changedUnits(pack, before, after);
  const mixed = (set: readonly Unit[]): Answers => mixedAnswers(before, after, set.flat());
  const keys = [...new Set([...was.keys(), ...is.keys()])].filter(
    (key) => was.get(key)?.value !== is.get(key)?.value && !isPartOfStep(key, was, is),
  );
  const tryOut = remembered((set: readonly Unit[]) =>
    input.isPossible(mixed(set)) ? outcomeOf(() => assemblePlan(choice(mixed(set)))) : undefined,
  );
  const causes = smallestSets({ changes: units, tryOut, keys, most: mostPlans });
  const scopeBefore = plannedScope(choice(before));
  const scopeWith = remembered((set: readonly Unit[]) => plannedScope(choice(mixed(set))));
  const changes = keys.map((key): PlanChange => {
    const [old, now] = [was.get(key), is.get(key)];
    const known = (now ?? old) as Feature;
    const { sets, isComplete } = causes.get(key) as { sets: readonly Unit[][]; isComplete: boolean };
    const cause = sets[0] ?? units;
    const scopes = { before: scopeBefore, after: scopeWith(cause) };
    const rules = turnedRules(known, pack, scopes);
    return {
      kind: known.kind,
      how: old === undefined ? 'in' : now === undefined ? 'out' : 'changed',
      id: known.id,
      title: known.title,
      before: old?.shown ?? null,
      after: now?.shown ?? null,
      by: sets.map((set) => set.flat()),
      isComplete,
      rules,
      because: whyOf(known, pack, { scope: scopes.after, plan: planAfter, cause: cause.flat(), rules }),
    };
  });
  const blamed = new Set(changes.flatMap(({ by }) => by.flat()));
  return {
    format: 1,
    madeOn: today,
    datesKnownTo: planBefore.datesKnownTo === 'month' ? 'month' : planAfter.datesKnownTo,
    before: { verdict: planBefore.verdict, lawn: planBefore.lawn },
    after: { verdict: planAfter.verdict, lawn: planAfter.lawn },
    answers: units.flat().map((id) => changedAnswer(id, { pack, before, after, units: said })),
    changes,
    withoutEffect: units.flat().filter((id) => !blamed.has(id)),
    assumed: planAfter.assumptions
      .filter(({ saidUnknown }) => !saidUnknown)
      .map(({ questionId }) => questionId),
  };
}

/** Question ids that change together. */
type Unit = readonly string[];

export function changedUnits(pack: Pack, before: Answers, after: Answers): Unit[] {
  const differs = (id: string): boolean => JSON.stringify(before[id]) !== JSON.stringify(after[id]);
  const ids = pack.questions.map(({ id }) => id).filter(differs);
  const units = TOGETHER.map((group) => ids.filter((id) => group.includes(id))).filter(
    (group) => group.length > 0,
  );
  const alone = ids.filter((id) => !units.some((unit) => unit.includes(id))).map((id) => [id]);
  return [...units, ...alone].sort((a, b) => ids.indexOf(a[0] as string) - ids.indexOf(b[0] as string));
}

/** The answers before, with those of the named questions as they are after. */
export function mixedAnswers(before: Answers, after: Answers, ids: readonly string[]): Answers {
  const kept = Object.entries(before).filter(([id]) => !ids.includes(id));
  const taken = ids.flatMap((id) => {
    const value = after[id];
    return value === undefined ? [] : [[id, value] as const];
  });
  return Object.fromEntries([...kept, ...taken]);
}

/** Days, hours and amounts of a step that comes or goes say nothing beside that. */
function isPartOfStep(
  key: string,
  was: ReadonlyMap<string, Feature>,
  is: ReadonlyMap<string, Feature>,
): boolean {
  const { kind, id } = (was.get(key) ?? is.get(key)) as Feature;
  if (kind !== 'days' && kind !== 'hours' && kind !== 'amount') return false;
  const step = `step ${id.split('/')[0]}`;
  return was.has(step) !== is.has(step);
}

/** A lawn that is made up of half of each may fit no calendar; then that half explains nothing. */
function outcomeOf(make: () => Plan): Outcome | undefined {
  try {
    return new Map([...featuresOf(make())].map(([key, { value }]) => [key, value]));
  } catch (error) {
    if (error instanceof ScheduleClash || error instanceof RangeError) return undefined;
    throw error;
  }
}

function remembered<Result>(work: (set: readonly Unit[]) => Result): (set: readonly Unit[]) => Result {
  const kept = new Map<string, Result>();
  return (set) => {
    const key = JSON.stringify(set);
    const before = kept.get(key);
    if (before !== undefined || kept.has(key)) return before as Result;
    const result = work(set);
    kept.set(key, result);
    return result;
  };
}

function changedAnswer(
  id: string,
  { pack, before, after, units }: Pick<CompareInput, 'pack' | 'before' | 'after' | 'units'>,
): ChangedAnswer {
  const question = pack.questionById.get(id);
  const shown = (answers: Answers): string => {
    const value = answers[id];
    return question === undefined || value === undefined
      ? 'not answered'
      : showAnswer(question, value, units);
  };
  return { questionId: id, label: question?.label ?? id, before: shown(before), after: shown(after) };
}

interface Scopes {
  readonly before: Scope;
  readonly after: Scope;
}

/** The condition that lets the feature into the plan, with the record that holds it. */
function conditionOf(
  { kind, id }: Feature,
  pack: Pack,
): { readonly rule: string; readonly when: Expression } {
  const [stepId = '', amountId] = id.split('/');
  switch (kind) {
    case 'verdict':
      return { rule: `verdict ${id}`, when: { var: 'facts.need' } };
    case 'caution':
      return { rule: `caution ${id}`, when: pack.cautionById.get(id)?.when ?? true };
    case 'left-out':
      return { rule: `notDone ${id}`, when: pack.notDone.find((each) => each.id === id)?.when ?? true };
    case 'finding':
      return { rule: `finding ${id}`, when: pack.findingById.get(id)?.when ?? true };
    case 'buy':
      return { rule: `material ${id}`, when: true };
    case 'cost':
      return { rule: 'the price list', when: true };
    case 'amount': {
      const amount = pack.stepById.get(stepId)?.amounts.find((each) => each.id === amountId);
      const inputs = Object.values(amount?.inputs ?? {});
      return { rule: `step ${stepId}, formula ${amount?.formula}`, when: inputs };
    }
    case 'hours': {
      const labour = pack.stepById.get(stepId)?.labour;
      return {
        rule: `step ${stepId}, formula ${labour?.formula}`,
        when: Object.values(labour?.inputs ?? {}),
      };
    }
    case 'days': {
      const waits = pack.stepById
        .get(stepId)
        ?.after.flatMap(({ minDays, maxDays = 0 }) => [minDays, maxDays]);
      return { rule: `step ${stepId}, waits and season`, when: waits ?? [] };
    }
    default:
      return { rule: `step ${stepId}`, when: pack.stepById.get(stepId)?.when ?? true };
  }
}

/** The record itself, then the findings and facts behind it that came out another way. */
function turnedRules(feature: Feature, pack: Pack, { before, after }: Scopes): string[] {
  const { rule, when } = conditionOf(feature, pack);
  const names = [...everythingBehind(namesIn(when), readsByName(pack))].filter((name) =>
    /^(findings|facts)\./.test(name),
  );
  const turned = names.filter((name) => {
    const [was, is] = [before(name), after(name)];
    return was.known !== is.known || (was.known && is.known && was.value !== is.value);
  });
  return [rule, ...turned.map(recordOf)];
}

interface Now {
  readonly scope: Scope;
  /** The plan with all answers as they are after. */
  readonly plan: Plan;
  /** The answers and the rules that turned it. */
  readonly cause: readonly string[];
  readonly rules: readonly string[];
}

/** Why it is so now, in words: a working, the wait that holds it, or the comparisons of what was turned. */
function whyOf(feature: Feature, pack: Pack, { scope, plan, cause, rules }: Now): string {
  if (feature.kind === 'amount') return feature.from;
  if (feature.kind === 'days') return holdingWait(feature.id, plan);
  const { when } = conditionOf(feature, pack);
  if (Array.isArray(when)) return '';
  const names = [
    ...cause.flatMap((id) => pack.questionById.get(id)?.label ?? []),
    ...pack.facts.filter(({ id }) => rules.includes(`fact ${id}`)).map(({ what }) => what),
  ];
  return sentenceOf(
    reasonsFor(when, { pack, scope, units: plan.units }).filter((clause) =>
      names.some((name) => clause.startsWith(name)),
    ),
  );
}

/** The wait that a step stands at, so that it could not be any earlier. */
function holdingWait(id: string, plan: Plan): string {
  const step = plan.steps.find((each) => each.id === id);
  for (const { step: beforeId, minDays } of step?.after ?? []) {
    const earlier = plan.steps.find((each) => each.id === beforeId);
    if (earlier === undefined || step === undefined || minDays === 0) continue;
    const held = [earlier.startOn, earlier.endOn].some((day) => addDays(day, minDays) === step.startOn);
    if (held) return `Now ${minDays === 1 ? 'the day' : `${minDays} days`} after: ${earlier.title}.`;
  }
  return '';
}
