/** All the water that the lawn takes, and what it costs where a price of water is known: it is on no shop's bill. */
import { daysBetween, formatDay } from '../base/dates.js';
import { quantity } from '../base/quantity-words.js';
import { convert, LENGTH_IN_M } from '../base/units.js';
import type { View } from '../interview/reasons.js';
import { roundedFor } from './amounts.js';
import { worded } from './explain-words.js';
import { WATER } from './not-bought.js';
import type { PlanStep, PlanWater, PlanWatering } from './plan.js';
import type { PriceList } from './price-list.js';
import { lastWateredOn, sprinklerShare } from './watering.js';
import { wateringWorkSays } from './watering-work.js';

interface WaterInput extends View {
  readonly watering: readonly PlanWatering[];
  readonly steps: readonly PlanStep[];
  readonly prices: PriceList | undefined;
  readonly note: (figureId: string) => void;
}

/** Null where nothing is watered. */
export function waterOf(input: WaterInput): PlanWater | null {
  const { watering, units = 'metric' } = input;
  if (watering.length === 0) return null;
  const share = sprinklerShare(input);
  const rounded = (value: number): number => roundedFor(units, value);
  const totalOf = (litresOf: (period: PlanWatering) => number): number =>
    watering.reduce((sum, period) => sum + litresOf(period) * daysOf(period), 0);
  const dry = totalOf(({ litresPerDay }) => litresPerDay);
  const normal = totalOf(({ litresPerDay, mmPerDay, rainMmPerDay }) =>
    mmPerDay > 0 ? Math.max(0, litresPerDay * (1 - (rainMmPerDay ?? 0) / mmPerDay)) : 0,
  );
  const stepLitres = otherWaterL(input.steps);
  const price = cheapestWater(input.prices);
  const costOf = (litres: number): number | null =>
    price === undefined
      ? null
      : Math.round(((litres / share + stepLitres) * price.hundredths) / price.litres) / HUNDREDTHS;
  const hasRain = normal < dry;
  const water = {
    litres: rounded(dry),
    litresAfterRain: hasRain ? rounded(normal) : null,
    drawnLitres: rounded(dry / share),
    stepLitres: rounded(stepLitres),
    cost: costOf(dry),
    costAfterRain: hasRain ? costOf(normal) : null,
  };
  return { ...water, ...sentencesOf(water, input, price, wateringWorkSays(input)) };
}

const HUNDREDTHS = 100;
const daysOf = ({ fromOn, untilOn }: PlanWatering): number => daysBetween(fromOn, untilOn) + 1;

/** What single steps pour beside the watering table, such as a soak before coring. */
const otherWaterL = (steps: readonly PlanStep[]): number =>
  steps
    .filter(({ doneOn }) => doneOn === null)
    .flatMap(({ amounts }) => amounts)
    .reduce((sum, { materialId, amount }) => sum + (materialId === WATER ? (amount ?? 0) : 0), 0);

interface WaterPrice {
  readonly hundredths: number;
  readonly litres: number;
}

/** Water runs from the tap: it is paid by the litre and not by the pack, so the best rate counts. */
function cheapestWater(prices: PriceList | undefined): WaterPrice | undefined {
  const rates = (prices?.packs.get(WATER) ?? []).flatMap(({ size, price }) =>
    price === null ? [] : [{ hundredths: price, litres: size }],
  );
  return rates.sort((a, b) => a.hundredths / a.litres - b.hundredths / b.litres)[0];
}

function sentencesOf(
  water: Omit<PlanWater, 'says' | 'costSays' | 'eachPart'>,
  { pack, units = 'metric', steps, watering }: WaterInput,
  price: WaterPrice | undefined,
  workSays: readonly string[],
): Pick<PlanWater, 'says' | 'costSays' | 'eachPart'> {
  const { litres, litresAfterRain, drawnLitres, stepLitres, cost, costAfterRain } = water;
  const said = (amountL: number): string => quantity(amountL, 'L', units);
  const rate =
    price === undefined
      ? {}
      : { price: (price.hundredths / HUNDREDTHS).toFixed(2), size: said(price.litres) };
  const costs = {
    ...rate,
    dry: cost?.toFixed(2) ?? '',
    normal: costAfterRain?.toFixed(2) ?? '',
  };
  const sown = steps.find(({ id }) => id === 'sow')?.parts ?? [];
  // Each area has rows of its own in the table.
  const parts = sown.some(({ area }) => area !== undefined) ? 1 : sown.length;
  const lastOn = lastWateredOn(watering, sown);
  const eachPart =
    parts < 2 || lastOn === undefined
      ? null
      : worded(pack, 'eachPartWatered', { parts: String(parts), until: formatDay(lastOn) });
  return {
    eachPart,
    says: [
      units === 'metric'
        ? worded(pack, 'waterDepth')
        : worded(pack, 'waterDepthUs', { volume: INCH_OF_WATER }),
      worded(pack, 'dryDays'),
      litresAfterRain === null
        ? worded(pack, 'waterTotal', { dry: said(litres) })
        : worded(pack, 'waterTotalRain', { dry: said(litres), normal: said(litresAfterRain) }),
      ...(drawnLitres > litres ? [worded(pack, 'waterDrawn', { drawn: said(drawnLitres) })] : []),
      ...(stepLitres > 0 ? [worded(pack, 'waterSteps', { litres: said(stepLitres) })] : []),
      ...workSays,
      ...(cost === null ? [] : [worded(pack, costAfterRain === null ? 'waterCost' : 'waterCostRain', costs)]),
      ...(eachPart === null ? [] : [eachPart]),
    ],
    costSays:
      cost === null ? null : worded(pack, costAfterRain === null ? 'waterApart' : 'waterApartRain', costs),
  };
}

const INCH_OF_WATER = quantity(convert(LENGTH_IN_M, 1, { from: 'in', to: 'mm' }), 'L/m2', 'us');
