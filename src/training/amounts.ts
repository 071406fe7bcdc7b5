/** Amounts that a trainee works out: the right value from the case's own plan, the tolerance, the likely slip. */
import { lawnPartsArea } from '../agronomy/area-parts.js';
import type { LawnPart } from '../interview/answers.js';
import type { Plan, PlanAmount } from '../planner/plan.js';
import type { AskedAmount, Marking } from '../rules/schema-case.js';
import type { WorkedCase } from './worked-case.js';

export interface RightAmount {
  readonly value: number;
  readonly unit: string;
  /** The plan's own range, where the figures behind it have one and no label rules. */
  readonly range: { readonly min: number; readonly max: number } | null;
  /** The equation with the numbers in it. */
  readonly working: string;
}

export interface MarkedAmount {
  readonly asked: AskedAmount;
  readonly right: RightAmount;
  /** Null: not given. */
  readonly given: number | null;
  /** 0 to 1. */
  readonly mark: number;
  readonly slip: string | null;
}

/** The right value, or undefined when the plan has no such amount. */
export function rightAmount(plan: Plan, { find, byHand }: AskedAmount): RightAmount | undefined {
  const plain = (value: number | undefined | null, unit: string): RightAmount | undefined =>
    value === undefined || value === null ? undefined : { value, unit, range: null, working: byHand.working };
  switch (find.kind) {
    case 'area':
      return plain(plan.lawn.areaM2, 'm2');
    case 'wait':
      return plain(stepOf(plan, find.to)?.after.find(({ step }) => step === find.from)?.minDays, 'd');
    case 'amount': {
      const amount = stepOf(plan, find.step)?.amounts.find((each) => each.materialId === find.material);
      if (amount === undefined || amount.amount === null) return undefined;
      const range = amount.basis === 'label' ? null : amount.range;
      return { value: amount.amount, unit: amount.unit, range, working: amount.working };
    }
    case 'loads': {
      const loads = loadsOf(plan, find.step);
      return (
        loads &&
        plain(
          loads.reduce((sum, { count }) => sum + count, 0),
          'loads',
        )
      );
    }
    case 'load': {
      const loads = loadsOf(plan, find.step);
      const load = find.which === 'full' ? loads?.[0] : loads?.at(-1);
      if (load === undefined) return undefined;
      return find.of === 'water' ? plain(load.waterL, 'L') : plain(load.product, load.unit);
    }
    default:
      return find satisfies never;
  }
}

/** Marks what was given, in the unit of the right value. */
export function markAmount(worked: WorkedCase, asked: AskedAmount, given: number | null): MarkedAmount {
  const right = rightAmount(worked.plan, asked);
  if (right === undefined) throw new Error(`the plan of "${worked.lesson.id}" has no amount "${asked.id}"`);
  if (given === null) return { asked, right, given, mark: 0, slip: null };
  const { tolerance } = worked.marking;
  const off = Math.abs(given - right.value);
  const inRange = right.range !== null && given >= right.range.min && given <= right.range.max;
  if (inRange || off <= tolerance.right * right.value) return { asked, right, given, mark: 1, slip: null };
  const mark = off <= tolerance.near * right.value ? tolerance.nearMark : 0;
  return { asked, right, given, mark, slip: slipOf(worked, right, given) ?? null };
}

/** The slip that would turn the right value into this one; the likeliest first. */
function slipOf(worked: WorkedCase, right: RightAmount, given: number): string | undefined {
  const { marking, answers, plan } = worked;
  const candidates = [
    ...areaSlips(answers.lawnParts, plan.lawn.areaM2, right),
    ...marking.slips
      .filter(({ units }) => units.includes(right.unit))
      .flatMap(({ factor, says }) => [
        { value: right.value * factor, says },
        { value: right.value / factor, says },
      ]),
    ...perSquareMetre(plan.lawn.areaM2, right),
  ];
  const ends = right.range === null ? [] : [right.range.min, right.range.max].map((end) => end / right.value);
  const fits = (value: number): boolean => [1, ...ends].some((end) => isNear(given, value * end, marking));
  return (
    candidates.find(({ value }) => isNear(given, value, marking))?.says ??
    candidates.find(({ value }) => fits(value))?.says
  );
}

const isNear = (given: number, value: number, { tolerance }: Marking): boolean =>
  Math.abs(given - value) <= tolerance.slip * value;

interface Slip {
  readonly value: number;
  readonly says: string;
}

/** Whatever is in proportion to the area goes wrong with it. */
const SCALED_BY_AREA = ['m2', 'g', 'mL', 'L', 'loads'];

function areaSlips(parts: unknown, areaM2: number, right: RightAmount): Slip[] {
  if (!Array.isArray(parts) || !SCALED_BY_AREA.includes(right.unit)) return [];
  const lawnParts = parts as readonly LawnPart[];
  const slips = [
    { parts: lawnParts.filter(({ minus }) => minus !== true), says: 'You forgot to take the beds away.' },
    {
      parts: lawnParts.map((part) =>
        part.shape === 'circle' ? { ...part, diameterM: part.diameterM * 2 } : part,
      ),
      says: 'You took the distance across the circle for its radius: halve it first.',
    },
    {
      parts: lawnParts.flatMap((part) => (part.minus === true ? [{ ...part, minus: false }] : [part])),
      says: 'You added the beds instead of taking them away.',
    },
  ];
  return slips.flatMap(({ parts: wrong, says }) => {
    const share = areaOf(wrong) / areaM2;
    return Number.isFinite(share) && share !== 1 ? [{ value: right.value * share, says }] : [];
  });
}

/** The area of a list that a slip made, which may be no lawn at all. */
function areaOf(lawnParts: readonly LawnPart[]): number {
  try {
    return lawnPartsArea({ lawnParts }).areaM2;
  } catch {
    return Number.NaN;
  }
}

function perSquareMetre(areaM2: number, right: RightAmount): Slip[] {
  if (!['g', 'mL', 'L'].includes(right.unit)) return [];
  return [
    { value: right.value / areaM2, says: 'That is the rate for one square metre: multiply by the area.' },
  ];
}

const stepOf = (plan: Plan, id: string): Plan['steps'][number] | undefined =>
  plan.steps.find((step) => step.id === id);

function loadsOf(plan: Plan, step: string): PlanAmount['loads'] | undefined {
  return stepOf(plan, step)?.amounts.find(({ loads }) => loads.length > 0)?.loads;
}
