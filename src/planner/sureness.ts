/**
 * Whether a verdict is sure: every open answer is turned to what else it may be, and the lawn is judged and dated again.
 * It is sure where neither the verdict nor the first sowing moves. What would move them is told, the best look first.
 *
 * This makes many plans, so it is worked out when it is read and not when the plan is made.
 */
import { daysBetween, type IsoDate, type KnownTo } from '../base/dates.js';
import type { Answers, AnswerValue } from '../interview/answers.js';
import { UNKNOWN } from '../interview/answers.js';
import { verdictChoice } from '../interview/plan-pieces.js';
import { showAnswer } from '../interview/show-answer.js';
import { clashesIn } from '../interview/together.js';
import { thresholdsOf } from '../rules/cells.js';
import { evaluate, type Scope } from '../rules/evaluate.js';
import type { Question } from '../rules/schema.js';
import type { VerdictId } from '../rules/schema-judgement.js';
import { isAsked } from '../rules/scope.js';
import type { DatedChoice, PlanInput } from './assemble-plan.js';
import { firstSowingIn } from './dating.js';
import { titledVerdict } from './judgement.js';
import { behindOf, netSignature } from './net-signature.js';
import { ScheduleClash } from './schedule-clash.js';
import { activeSteps } from './steps.js';
import { nearbyOf, turnsOf } from './turns.js';
import { scopeFor, withImplied } from './working-scope.js';

/** One answer that would change the verdict or the first sowing. */
export interface WouldChange {
  readonly questionId: string;
  readonly label: string;
  /** What it costs to find out. */
  readonly effort: Question['cost'];
  /** Whether it was answered, by eye or roughly, and stands close to a limit. */
  readonly isNear: boolean;
  /** The nearest answer that does it, as the answers file takes it, and in words. */
  readonly value: AnswerValue;
  readonly answer: string;
  /** What has to come with it: the answers that it brings up by itself. */
  readonly with: readonly { readonly questionId: string; readonly label: string; readonly answer: string }[];
  /** Title of the verdict that it would make; null where no dates would hold. */
  readonly to: string | null;
  readonly toId: VerdictId | null;
  /** False where only the sowing would move. */
  readonly changesVerdict: boolean;
  readonly sowOn: IsoDate | null;
  /** Months only, where no climate is known there. */
  readonly knownTo: KnownTo;
}

/** What a plan comes to, as far as its sureness goes. */
interface Outcome {
  /** Number of the verdict rule; undefined where no dates hold. */
  readonly verdict: number | undefined;
  readonly title: string | null;
  readonly sowOn: IsoDate | null;
  readonly knownTo: KnownTo;
}

const NO_DATES: Outcome = { verdict: undefined, title: null, sowOn: null, knownTo: 'month' };

interface Search {
  readonly input: PlanInput;
  readonly base: DatedChoice;
  readonly outcomeOf: (answers: Answers) => Outcome;
  /** Of the plan itself. */
  readonly now: Outcome;
  /** How an outcome differs from that of the plan. */
  readonly differs: (outcome: Outcome) => 'verdict' | 'sowing' | undefined;
  /** Every answer assumed that is open, at the dates of the plan. */
  readonly supposing: (answers: Answers) => Scope;
}

/** The plan that is asked about, and how its like is dated. */
export interface Asked {
  readonly input: PlanInput;
  readonly base: DatedChoice;
  readonly dateAgain: (input: PlanInput) => DatedChoice;
}

/** What would change the plan, the look that is most worth its trouble first. */
export function wouldChangeOf(asked: Asked): WouldChange[] {
  const search = searchFrom(asked);
  const { base, input } = asked;
  const { pack } = input;
  const answers = withImplied(pack, input.answers);
  const known = scopeFor({ ...base.choice, assume: 'nothing', timing: base.timing });
  const { verdict, dates } = behindOf(pack);
  const found = pack.questions.flatMap((question) => {
    if (!verdict.has(question.id) && !dates.has(question.id)) return [];
    if (isAsked(question, base.scope) !== true) return [];
    const given = givenTo(question, answers);
    return given === undefined
      ? turned(question, search)
      : turnedNearby(question, nearbyOf(question, given, known), search);
  });
  return found.sort((a, b) => b.worth - a.worth).flatMap(({ changes }) => changes);
}

/** What an answer that was given, turned, would change: for whoever asks on what the plan rests. */
export function restsOnGiven(asked: Asked, isWanted: (id: string) => boolean): WouldChange[] {
  const search = searchFrom(asked);
  const { base, input } = asked;
  return input.pack.questions
    .filter((question) => isWanted(question.id) && isAsked(question, base.scope) === true)
    .filter((question) => givenTo(question, input.answers) !== undefined)
    .flatMap((question) => turned(question, search).flatMap(({ changes }) => changes));
}

/** The answer to a question; undefined while it is open. */
function givenTo({ id, kind }: Question, answers: Answers): AnswerValue | undefined {
  // Measured parts are the other way to give the area, and nobody is asked for them by themselves.
  if (kind === 'parts') return [];
  if (kind === 'area' && Array.isArray(answers.lawnParts)) return answers.lawnParts;
  const given = Object.hasOwn(answers, id) ? answers[id] : undefined;
  return given === UNKNOWN ? undefined : given;
}

function searchFrom({ input, base, dateAgain }: Asked): Search {
  const { pack } = input;
  const supposing = (answers: Answers): Scope =>
    scopeFor({ ...base.choice, answers, assume: 'all', timing: base.timing });
  const kept = new Map<string, Outcome>();
  const outcomeOf = (answers: Answers): Outcome => {
    const key = netSignature({ ...input, answers, assumeAll: true }, base.timing);
    const before = kept.get(key);
    if (before !== undefined) return before;
    const outcome = outcomeOfDating(() => dateAgain({ ...input, answers, assumeAll: true }), input);
    kept.set(key, outcome);
    return outcome;
  };
  const now = outcomeIn(base, input);
  const mostDays = pack.figureById.get('sure-sowing-days')?.typical ?? 0;
  const differs = ({ verdict, title, sowOn }: Outcome): 'verdict' | 'sowing' | undefined => {
    if (verdict !== now.verdict || title !== now.title) return 'verdict';
    if (sowOn === null || now.sowOn === null) return sowOn === now.sowOn ? undefined : 'sowing';
    return Math.abs(daysBetween(now.sowOn, sowOn)) > mostDays ? 'sowing' : undefined;
  };
  return { input, base, outcomeOf, now, differs, supposing };
}

function outcomeOfDating(date: () => DatedChoice, input: PlanInput): Outcome {
  try {
    return outcomeIn(date(), input);
  } catch (error) {
    if (error instanceof ScheduleClash) return NO_DATES;
    throw error;
  }
}

function outcomeIn(dated: DatedChoice, { pack, progress }: PlanInput): Outcome {
  const { scope } = dated;
  const choice = evaluate(verdictChoice(pack), scope);
  const verdict = choice.known ? Number(choice.value) : undefined;
  return {
    verdict,
    title: titledVerdict(pack, scope, verdict),
    sowOn: firstSowingIn(dated, activeSteps(pack, scope, progress?.leftOut)),
    knownTo: dated.season.climate === undefined ? 'month' : 'day',
  };
}

interface Found {
  /** Share of what was tried that changes something, against the trouble of finding out. */
  readonly worth: number;
  readonly changes: readonly WouldChange[];
}

function turned(question: Question, search: Search): Found[] {
  const { base, input, supposing } = search;
  const { pack, today } = input;
  const tries = turnsOf(question, {
    thresholds: thresholdsOf(pack),
    today,
    bandOf: (value) => {
      if (!behindOf(pack).verdict.has(question.id)) return undefined;
      const outcome = evaluate(verdictChoice(pack), supposing({ ...input.answers, [question.id]: value }));
      return outcome.known ? outcome.value : undefined;
    },
  });
  const now = base.scope(question.id);
  const others = tries.filter((value) => !now.known || value !== now.value);
  return foundIn(question, others, search, false);
}

/** Close to a limit only the verdict can turn: the dates are not read that finely. */
function turnedNearby(question: Question, tries: readonly AnswerValue[], search: Search): Found[] {
  return foundIn(question, tries, search, true);
}

interface Tried {
  readonly value: AnswerValue;
  readonly change: 'verdict' | 'sowing';
  readonly outcome: Outcome;
  readonly with: WouldChange['with'];
}

function foundIn(
  question: Question,
  tries: readonly AnswerValue[],
  search: Search,
  isNear: boolean,
): Found[] {
  const { base, input } = search;
  const { pack, units = 'metric' } = input;
  const found = tries.flatMap((value) => triedAt(question, value, search));
  if (found.length === 0) return [];
  const now = base.scope(question.id);
  const from = now.known && typeof now.value === 'number' ? now.value : undefined;
  const nearest = [...found].sort((a, b) =>
    from === undefined ? 0 : Math.abs(Number(a.value) - from) - Math.abs(Number(b.value) - from),
  );
  const firsts = new Map<string, Tried>();
  for (const each of nearest) {
    const key = each.change === 'verdict' ? `${each.outcome.title}` : wayOf(each.outcome, search.now);
    if (!firsts.has(key)) firsts.set(key, each);
  }
  const weight = found.reduce((sum, { change }) => sum + (change === 'verdict' ? 1 : SOWING_WORTH), 0);
  const changes = [...firsts.values()].map((each): WouldChange => {
    const { verdict, title, sowOn, knownTo } = each.outcome;
    return {
      questionId: question.id,
      label: question.label,
      effort: question.cost,
      isNear,
      value: each.value,
      answer: showAnswer(question, each.value, units),
      with: each.with,
      to: title,
      toId: verdict === undefined ? null : (pack.verdicts[verdict]?.id ?? null),
      changesVerdict: each.change === 'verdict',
      sowOn,
      knownTo,
    };
  });
  return [{ worth: weight / Math.max(1, tries.length) / pack.effort[question.cost], changes }];
}

/** A sowing that moves is half as much as another verdict. */
const SOWING_WORTH = 1 / 2;

const wayOf = ({ sowOn }: Outcome, now: Outcome): string =>
  sowOn === null || now.sowOn === null ? 'with or without' : sowOn < now.sowOn ? 'sooner' : 'later';

/** The change that an answer makes by itself, or else with one that it brings up. */
function triedAt(question: Question, value: AnswerValue, search: Search): Tried[] {
  const { input, outcomeOf, differs } = search;
  const answers = withAnswer(input.answers, question, value);
  if (clashesIn(input.pack, answers).length > 0) return [];
  const outcome = outcomeOf(answers);
  const change = differs(outcome);
  if (change !== undefined) return [{ value, change, outcome, with: [] }];
  const further = furtherChange(answers, search, MOST_DEEP);
  return further === undefined ? [] : [{ value, ...further }];
}

/** How many answers on may hang from one another: colour, tug test, grubs. */
const MOST_DEEP = 2;

/** Questions that come up with these answers and did not arise before, turned in their turn. */
function furtherChange(answers: Answers, search: Search, deep: number): Omit<Tried, 'value'> | undefined {
  const { base, input, supposing, outcomeOf, differs } = search;
  const { pack, today, units = 'metric' } = input;
  if (deep === 0) return undefined;
  const scope = supposing(answers);
  const arising = pack.questions.filter(
    (question) =>
      question.askWhen !== undefined &&
      givenTo(question, answers) === undefined &&
      isAsked(question, base.scope) !== true &&
      isAsked(question, scope) === true,
  );
  for (const question of arising) {
    const room = { thresholds: thresholdsOf(pack), today, bandOf: () => undefined };
    for (const value of turnsOf(question, room)) {
      const next = withAnswer(answers, question, value);
      const outcome = outcomeOf(next);
      const change = differs(outcome);
      const told = {
        questionId: question.id,
        label: question.label,
        answer: showAnswer(question, value, units),
      };
      if (change !== undefined) return { change, outcome, with: [told] };
      const further = furtherChange(next, search, deep - 1);
      if (further !== undefined) return { ...further, with: [told, ...further.with] };
    }
  }
  return undefined;
}

/** Measured parts give way to a single figure for the area. */
function withAnswer(answers: Answers, { id, kind }: Question, value: AnswerValue): Answers {
  const { lawnParts, ...others } = answers;
  const kept = kind === 'area' || lawnParts === undefined ? others : { ...others, lawnParts };
  return { ...kept, [id]: value };
}
