/** The slip behind a wrong amount: wrong shapes, wrong units, a forgotten step of the sum. */
import { lawnPartsArea } from '../agronomy/area-parts.js';
import { AREA_IN_M2 } from '../base/units.js';
import type { Units } from '../base/us-units.js';
import type { LawnPart } from '../interview/answers.js';
import type { AskedAmount, Marking } from '../rules/schema-case.js';
import { type RightAmount, rightAmount } from './right-amount.js';
import type { WorkedCase } from './worked-case.js';

/** The slip that would turn the right value into this one; of several that come as near, the likeliest. */
export function slipOf(
  worked: WorkedCase,
  asked: AskedAmount,
  right: RightAmount,
  given: number,
): string | undefined {
  const { marking, answers, plan, units: read } = worked;
  const candidates = [
    ...(asked.find.kind === 'load'
      ? fullForLast(worked, asked)
      : areaSlips(answers.lawnParts, plan.lawn.areaM2, right)),
    ...marking.slips
      .filter(({ units, only = read }) => only === read && units.includes(right.unit))
      .flatMap(({ factor, says }) => [
        { value: right.value * factor, says },
        { value: right.value / factor, says },
      ]),
    ...nitrogenForProduct(worked, asked, right),
    ...rateAlone(plan.lawn.areaM2, right, read),
  ];
  const ends = right.range === null ? [] : [right.range.min, right.range.max].map((end) => end / right.value);
  const fits = (value: number): boolean => [1, ...ends].some((end) => isNear(given, value * end, marking));
  // Of several that come near, the nearest: a rate for 1000 square feet is not far from a lawn of nearly that size.
  const [nearest] = candidates
    .filter(({ value }) => isNear(given, value, marking))
    .sort((a, b) => Math.abs(given / a.value - 1) - Math.abs(given / b.value - 1));
  return (nearest ?? candidates.find(({ value }) => fits(value)))?.says;
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

/** The last load has its own water; product for a full tank makes it too strong. */
function fullForLast({ plan }: WorkedCase, asked: AskedAmount): Slip[] {
  if (asked.find.kind !== 'load' || asked.find.which !== 'last') return [];
  const full = rightAmount(plan, { ...asked, find: { ...asked.find, which: 'full' } });
  if (full === undefined) return [];
  return [{ value: full.value, says: 'That is a full load. The last one is only what is left over.' }];
}

/** The nitrogen that is wanted is less than the feed that holds it. */
function nitrogenForProduct(
  { plan, answers }: WorkedCase,
  { find }: AskedAmount,
  right: RightAmount,
): Slip[] {
  if (find.kind !== 'amount' || typeof answers.feedFirstNumber !== 'number') return [];
  const amount = plan.steps
    .find(({ id }) => id === find.step)
    ?.amounts.find(({ materialId }) => materialId === find.material);
  if (amount?.formula !== 'nitrogen-product') return [];
  return [
    {
      value: (right.value * answers.feedFirstNumber) / 100,
      says: 'That is the nitrogen, not the feed: divide by the share of nitrogen in the bag.',
    },
  ];
}

/** The area that a rate is told for. */
const RATE_AREA: Readonly<Record<Units, { readonly m2: number; readonly says: string }>> = {
  metric: { m2: 1, says: 'That is the rate for one square metre: multiply by the area.' },
  us: {
    m2: AREA_IN_M2.ft2 * 1000,
    says: 'That is the rate for 1000 square feet: multiply by the area, in thousands of them.',
  },
};

function rateAlone(areaM2: number, right: RightAmount, units: Units): Slip[] {
  if (!['g', 'mL', 'L'].includes(right.unit)) return [];
  const { m2, says } = RATE_AREA[units];
  return [{ value: (right.value * m2) / areaM2, says }];
}
