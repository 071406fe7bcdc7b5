/** The slip behind a wrong amount: wrong shapes, wrong units, a forgotten step of the sum. The words are the pack's. */
import { lawnPartsArea } from '../agronomy/area-parts.js';
import { productMl } from '../agronomy/tank-loads.js';
import { AREA_IN_M2 } from '../base/units.js';
import type { Units } from '../base/us-units.js';
import type { LawnPart } from '../interview/answers.js';
import type { AskedAmount, Marking } from '../rules/schema-case.js';
import { loadsOf, type RightAmount } from './right-amount.js';
import type { WorkedCase } from './worked-case.js';

/** The slip that would turn the right value into this one; of several that come as near, the likeliest. */
export function slipOf(
  worked: WorkedCase,
  asked: AskedAmount,
  right: RightAmount,
  given: number,
): string | undefined {
  const { marking, units: read } = worked;
  const candidates = [
    ...(asked.slips ?? []),
    ...ownSlips(worked, asked, right),
    ...marking.slips
      .filter(({ units, only = read }) => only === read && units.includes(right.unit))
      .flatMap(({ factor, says }) => [
        { value: right.value * factor, says },
        { value: right.value / factor, says },
      ]),
    ...nitrogenForProduct(worked, asked, right),
    ...rateAlone(worked, right),
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

/** Those of its own kind: of the loads, or of the shapes that the area is made of. */
const ownSlips = (worked: WorkedCase, asked: AskedAmount, right: RightAmount): Slip[] =>
  asked.find.kind === 'load' ? loadSlips(worked, asked) : areaSlips(worked, right);

/** Whatever is in proportion to the area goes wrong with it. */
const SCALED_BY_AREA = ['m2', 'g', 'mL', 'L', 'loads'];

function areaSlips({ answers, plan, marking }: WorkedCase, right: RightAmount): Slip[] {
  const { lawnParts: parts } = answers;
  if (!Array.isArray(parts) || !SCALED_BY_AREA.includes(right.unit)) return [];
  const lawnParts = parts as readonly LawnPart[];
  const { bedsForgotten, diameterForRadius, bedsAdded } = marking.slipWords;
  const slips = [
    { parts: lawnParts.filter(({ minus }) => minus !== true), says: bedsForgotten },
    {
      parts: lawnParts.map((part) =>
        part.shape === 'circle' ? { ...part, diameterM: part.diameterM * 2 } : part,
      ),
      says: diameterForRadius,
    },
    {
      parts: lawnParts.flatMap((part) => (part.minus === true ? [{ ...part, minus: false }] : [part])),
      says: bedsAdded,
    },
  ];
  return slips.flatMap(({ parts: wrong, says }) => {
    const share = areaOf(wrong) / plan.lawn.areaM2;
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

/** A tank filled to the mark with water leaves no room for the product; what suits all loads is far too strong in one. */
function loadSlips({ plan, answers, marking }: WorkedCase, { find }: AskedAmount): Slip[] {
  if (find.kind !== 'load') return [];
  const { noRoom, allForOne } = marking.slipWords;
  const isWater = find.of === 'water';
  const { tankL, labelWaterLPerM2: waterLPerM2, labelRateMlPerM2: rateMlPerM2 } = answers;
  const all = (loadsOf(plan, find.step) ?? []).reduce(
    (sum, { count, waterL, product }) => sum + count * (isWater ? waterL : product),
    0,
  );
  const full = isWater
    ? tankL
    : numeric(tankL) && numeric(waterLPerM2) && numeric(rateMlPerM2)
      ? productMl({ waterL: tankL, waterLPerM2, rateMlPerM2 })
      : undefined;
  return [
    ...(numeric(full) ? [{ value: full, says: noRoom }] : []),
    ...(all > 0 ? [{ value: all, says: allForOne }] : []),
  ];
}

const numeric = (value: unknown): value is number => typeof value === 'number';

/** The nitrogen that is wanted is less than the feed that holds it. */
function nitrogenForProduct(
  { plan, answers, marking }: WorkedCase,
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
      says: marking.slipWords.nitrogenForProduct,
    },
  ];
}

/** The area that a rate is told for, m2. */
const RATE_AREA_M2: Readonly<Record<Units, number>> = { metric: 1, us: AREA_IN_M2.ft2 * 1000 };

function rateAlone({ plan, marking, units }: WorkedCase, right: RightAmount): Slip[] {
  if (!['g', 'mL', 'L'].includes(right.unit)) return [];
  const { perSquareMetre, perThousandSquareFeet } = marking.slipWords;
  const value = (right.value * RATE_AREA_M2[units]) / plan.lawn.areaM2;
  return [{ value, says: units === 'us' ? perThousandSquareFeet : perSquareMetre }];
}
