/**
 * The marks of an attempt. Each part is a share from 0 to 1, weighted by the marking scheme; a part that the drill
 * does not have leaves its weight to the others. A danger that was overlooked fails the case whatever the rest, and
 * so does a diagnosis that does not hold: sums and steps cannot make up for it.
 */
import type { Marking } from '../rules/schema-case.js';
import { type MarkedAmount, markAmount } from './amounts.js';
import { type Attempt, lookIds } from './attempt.js';
import { type Diagnosed, diagnosisMark, diagnosisOf, type GateFault, gateFaults } from './diagnosis.js';
import { opensGround } from './judge-look.js';
import { boundPairs, brokenPairs } from './step-order.js';
import { type Claim, claimsOf, lossOf } from './sureness.js';
import type { WorkedCase } from './worked-case.js';

export type PartId = keyof Marking['weights'];

/** Whether a danger was minded: seen, shown to them, never looked at, only after digging, done by a step or a dose. */
export type DangerFate = keyof Marking['dangerWords'];

export interface MarkedDanger {
  /** Of a dose, the id of the amount. */
  readonly look: string;
  readonly says: string;
  readonly fate: DangerFate;
  readonly isMissed: boolean;
}

export interface Marks {
  /** 0 to 100, hints taken off. */
  readonly total: number;
  readonly passed: boolean;
  readonly parts: Readonly<Partial<Record<PartId, number>>>;
  readonly hintsCost: number;
  readonly dangers: readonly MarkedDanger[];
  /** Why the diagnosis does not hold, which fails the case; empty where it holds, or was shown. */
  readonly gate: readonly GateFault[];
  readonly claims: readonly Claim[];
  /** Quadratic loss of what was said and left unsaid, 0 to 1; null where nothing was committed to. */
  readonly loss: number | null;
  readonly amounts: readonly MarkedAmount[];
  readonly diagnosis: Diagnosed;
  readonly steps: {
    readonly missed: readonly string[];
    readonly mistaken: readonly string[];
    readonly broken: readonly [string, string][];
  };
}

export function markAttempt(worked: WorkedCase, attempt: Attempt): Marks {
  const { lesson, marking } = worked;
  const diagnosis = diagnosisOf(worked, attempt);
  const steps = stepsOf(worked, attempt);
  const claims = claimsOf(worked, attempt, diagnosis);
  const loss = lossOf(worked, attempt, diagnosis);
  const amounts = lesson.amounts.map((asked) => markAmount(worked, asked, attempt.amounts[asked.id] ?? null));
  const isWhole = attempt.mode === 'whole';
  const parts: Partial<Record<PartId, number>> = {
    ...(isWhole && {
      looks: share([...worked.good].filter((id) => lookIds(attempt).includes(id)).length, worked.good.size),
      economy: economyOf(worked, attempt),
      diagnosis: attempt.commitment === undefined ? 0 : diagnosisMark(worked, diagnosis),
      sureness: loss === null ? 0 : 1 - loss,
    }),
    ...(amounts.length > 0 && { amounts: share(sum(amounts.map(({ mark }) => mark)), amounts.length) }),
    steps: stepsMark(worked, attempt, steps),
  };
  const hintsCost = sum(attempt.hints.map(({ rung }) => marking.hintCosts[rung]));
  const total = Math.max(0, 100 * weighted(parts, marking) - hintsCost);
  const dangers = [
    ...lesson.dangers.map((danger): MarkedDanger => {
      const fate = fateOf(worked, attempt, danger);
      return { look: danger.look, says: danger.says, fate, isMissed: fate !== 'seen' && fate !== 'shown' };
    }),
    ...overdoses(worked, amounts),
  ];
  const gate = isWhole ? gateFaults(worked, diagnosis) : [];
  const passed =
    total >= marking.passMark && gate.length === 0 && dangers.every((danger) => !danger.isMissed);
  return { total, passed, parts, hintsCost, dangers, gate, claims, loss, amounts, diagnosis, steps };
}

/** More of a product than its label allows does harm, whatever slip was behind it. */
function overdoses({ marking }: WorkedCase, amounts: readonly MarkedAmount[]): MarkedDanger[] {
  const { times, says } = marking.overdose;
  return amounts
    .filter(({ right, given }) => right.isLabelled && given !== null && given > times * right.value)
    .map(({ asked }) => ({
      look: asked.id,
      says: `${asked.ask} ${says}`,
      fate: 'overdosed',
      isMissed: true,
    }));
}

function fateOf(
  { pack }: WorkedCase,
  attempt: Attempt,
  { look, beforeDigging, neverSteps = [] }: WorkedCase['lesson']['dangers'][number],
): DangerFate {
  if (neverSteps.some((step) => attempt.order?.includes(step) === true)) return 'done';
  // Who finishes a case was shown its looks.
  if (attempt.mode !== 'whole') return 'shown';
  const seen = lookIds(attempt);
  const at = seen.indexOf(look);
  if (at < 0) return 'unseen';
  const dug = seen.findIndex((id) => {
    const question = pack.questionById.get(id);
    return question !== undefined && opensGround(question);
  });
  return beforeDigging === true && dug >= 0 && dug < at ? 'late' : 'seen';
}

/** 1 while nothing was wasted; 0 once the waste weighs as much as the good looks. */
function economyOf({ good, marking }: WorkedCase, { looks }: Attempt): number {
  const { lookCosts } = marking;
  const waste = sum(looks.map(({ kind }) => (kind === 'on-track' || kind === 'sound' ? 0 : lookCosts[kind])));
  return looks.length === 0 ? 0 : Math.max(0, 1 - waste / good.size);
}

function stepsOf({ lesson, plan }: WorkedCase, { order = [] }: Attempt): Marks['steps'] {
  return {
    missed: lesson.expected.steps.filter((id) => !order.includes(id)),
    mistaken: order.filter((id) => !plan.steps.some((step) => step.id === id)),
    broken: brokenPairs(plan, order),
  };
}

/** The key steps chosen, less the mistaken ones, times the share of bound pairs in the right order. */
function stepsMark(
  { lesson, plan }: WorkedCase,
  { order = [] }: Attempt,
  { missed, mistaken, broken }: Marks['steps'],
): number {
  const key = lesson.expected.steps.length;
  const chosen = Math.max(0, share(key - missed.length - mistaken.length, key));
  const pairs = boundPairs(plan, order).length;
  return chosen * (pairs === 0 ? 1 : 1 - broken.length / pairs);
}

function weighted(parts: Marks['parts'], { weights }: Marking): number {
  const had = Object.entries(parts) as [PartId, number][];
  return share(sum(had.map(([id, part]) => weights[id] * part)), sum(had.map(([id]) => weights[id])));
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
const share = (part: number, whole: number): number => (whole === 0 ? 0 : part / whole);
