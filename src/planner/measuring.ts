/** What to do about a size that is not known better: measure before anything is poured, and what it would change. */
import { asShown, quantity, ROUGH_DIGITS, roughArea } from '../base/quantity-words.js';
import type { Units } from '../base/us-units.js';
import type { Answers } from '../interview/answers.js';
import type { Scope } from '../rules/evaluate.js';
import type { Pack } from '../rules/pack.js';
import type { Material } from '../rules/schema.js';
import { amountWords } from './amount-words.js';
import { roundedFor } from './amounts.js';
import { listed, worded, wordedInside } from './explain-words.js';
import type { Plan, PlanShoppingLine, PlanStep } from './plan.js';
import type { Ledger } from './provenance.js';
import { answered } from './steps.js';

/** The size as it counts, and how far the measuring may be out. */
export function lawnOf(
  answers: Answers,
  scope: Scope,
  ledger: Ledger,
  units: Units,
): Omit<Plan['lawn'], 'says'> {
  const area = scope('facts.areaM2');
  const areaM2 = area.known ? (area.value as number) : 0;
  if (area.known)
    for (const name of area.from)
      if (name.startsWith('figures.')) ledger.noteFigure(name.slice('figures.'.length));
  const isGiven = Array.isArray(answers.lawnParts) || typeof answers.areaM2 === 'number';
  return {
    areaM2,
    areaUncertaintyM2: area.known ? roundedFor(units, (area.most ?? areaM2) - areaM2) : 0,
    areaAssumed: !isGiven,
    measuredBy: String(answered(scope, 'measuredBy') ?? 'paces'),
  };
}

/** The largest that the lawn may be, as it is told and reckoned with. */
const largestM2 = (
  { areaM2, areaUncertaintyM2 }: Pick<Plan['lawn'], 'areaM2' | 'areaUncertaintyM2'>,
  units: Units,
): number => asShown(areaM2 + areaUncertaintyM2, 'm2', units, ROUGH_DIGITS);

interface MeasuringInput {
  readonly pack: Pack;
  readonly units: Units;
  readonly steps: readonly PlanStep[];
  readonly shopping: readonly PlanShoppingLine[];
}

/** Empty where nothing is measured out, or the size is as good as certain. */
export function measuringWords(
  lawn: Omit<Plan['lawn'], 'says'>,
  { pack, units, steps, shopping }: MeasuringInput,
): string[] {
  const largest = largestM2(lawn, units);
  const told = (areaM2: number): string => roughArea(areaM2, units);
  if (told(largest) === told(lawn.areaM2)) return [];
  const lines = shopping.flatMap((line) => (line.need === null ? [] : [{ line, need: line.need }]));
  const bought = lines.filter(
    ({ line, need }) =>
      isSpare(line, pack) && line.packs.length > 0 && (line.leftOver ?? 0) >= need.toBuy - need.amount,
  );
  const poured = lines.filter(
    ({ line, need }) => line.kind === 'buy' && !isSpare(line, pack) && need.unit !== 'L',
  );
  const times = largest / lawn.areaM2;
  const amounts = poured.map(({ line, need }) =>
    wordedInside(pack, 'areaAmount', {
      amount: amountWords({ ...need, loose: line.loose }, largestNeed(line, steps, times), units),
      title: small(line.title),
    }),
  );
  const size = quantity(lawn.areaM2, 'm2', units);
  const isTaped = lawn.measuredBy === TAPE;
  return [
    ...(amounts.length === 0 || isTaped
      ? []
      : [worded(pack, 'areaMeasure', { size, largest: told(largest), amounts: listed(pack, amounts) })]),
    ...(bought.length > 0
      ? [
          worded(pack, 'areaPacks', {
            titles: listed(
              pack,
              bought.map(({ line }) => small(line.title)),
            ),
            largest: told(largest),
          }),
        ]
      : []),
  ];
}

/** The way of measuring that leaves nothing better to advise. */
const TAPE = 'tape';

const isSpare = ({ materialId }: PlanShoppingLine, pack: Pack): boolean =>
  (pack.materialById.get(materialId) as Material).spareForArea === true;

const largestNeed = ({ materialId }: PlanShoppingLine, steps: readonly PlanStep[], times: number): number =>
  steps
    .flatMap(({ amounts }) => amounts)
    .reduce((sum, each) => sum + (each.materialId === materialId ? (each.amount ?? 0) * times : 0), 0);

const small = (title: string): string => `${title.charAt(0).toLowerCase()}${title.slice(1)}`;
