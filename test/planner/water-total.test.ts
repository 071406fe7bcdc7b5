/** How much water the plan takes and what it costs; sums worked by hand from the table beside them. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parseIsoDate } from '../../src/base/dates.js';
import type { Answers } from '../../src/interview/answers.js';
import { assemblePlan, plannedScope } from '../../src/planner/assemble-plan.js';
import type { Plan, PlanWater } from '../../src/planner/plan.js';
import { type PriceRow, readPriceRows } from '../../src/planner/price-list.js';
import { waterOf as waterTotal } from '../../src/planner/water-total.js';
import { pack } from './any-lawn.js';

const lawn: Answers = JSON.parse(
  readFileSync('transcripts-examples/mossy-family-lawn/answers.json', 'utf8'),
).answers;

const planOf = (more: Answers, rows: readonly PriceRow['cells'][] = [], units?: 'us'): Plan => {
  const read = readPriceRows(
    rows.map((cells, index) => ({ at: `line ${index + 2}`, cells })),
    pack,
  );
  if (!read.ok) throw new Error(read.faults.join('\n'));
  const prices = rows.length === 0 ? undefined : read.prices;
  const today = parseIsoDate('2027-03-13');
  return assemblePlan({
    pack,
    answers: { ...lawn, ...more },
    today,
    assumeAll: true,
    prices,
    ...(units && { units }),
  });
};
const waterOf = (...asked: Parameters<typeof planOf>): PlanWater => planOf(...asked).water as PlanWater;
const WATER = { material: 'water', size: '1', unit: 'm3', price: '3.60' };
/** Litres are said to three digits. */
const isAbout =
  (wanted: number) =>
  (found: number): boolean =>
    Math.abs(found / wanted - 1) < 0.005;
const GARDEN_HOSE: Answers = { watering: 'hose', wateringBan: false };

describe('the water of a plan', () => {
  it('is the litres of every day of the table', () => {
    const { watering, water } = planOf(GARDEN_HOSE);
    // Weeks 1, 2 and 3 have 7 days each, weeks 4 to 6 have 21.
    const [one, two, three, later] = watering.map(({ litresPerDay }) => litresPerDay) as [
      number,
      number,
      number,
      number,
    ];
    expect(water?.litres).toSatisfy(isAbout(7 * (one + two + three) + 21 * later));
    expect(water?.drawnLitres).toBe(water?.litres);
  });

  it('is less by the rain of a normal year, as far as that reaches', () => {
    const days = (from: string, until: string) => ({
      fromOn: parseIsoDate(from),
      untilOn: parseIsoDate(until),
    });
    const from = { formula: 'seedbed-water', figures: [], answers: [], basis: 'published' } as const;
    const period = {
      weeks: '',
      turnsPerDay: 1,
      mmPerTurn: 1,
      litresPerTurn: 1,
      workMinPerDay: 10,
      means: null,
      aim: '',
      from,
    };
    const input = { pack, answers: lawn, today: parseIsoDate('2027-03-13'), assumeAll: true };
    const water = waterTotal({
      pack,
      scope: plannedScope(input),
      watering: [
        {
          ...period,
          ...days('2027-04-03', '2027-04-16'),
          mmPerDay: 4,
          litresPerDay: 336,
          rainMmPerDay: null,
        },
        { ...period, ...days('2027-04-17', '2027-05-14'), mmPerDay: 10, litresPerDay: 280, rainMmPerDay: 4 },
      ],
      steps: [],
      prices: undefined,
      note: () => undefined,
    });
    // By hand: 14 days of 336 L and 28 days of 280 L are 12,544 L; rain takes 4 of 10 mm, 40 %, off the 7,840 L.
    expect(water?.says).toContain(
      'In all that is 12\u00a0500 L without rain, about 9410 L with the rain of a normal year.',
    );
  });

  it('is given without money where no price of water is known, and nobody is asked for one', () => {
    for (const rows of [[], [{ material: 'topsoil', size: '25', unit: 'L', price: '4.50' }]]) {
      const water = waterOf(GARDEN_HOSE, rows);
      expect([water.cost, water.costAfterRain, water.costSays]).toEqual([null, null, null]);
      expect(water.says.join(' ')).not.toMatch(/cost/);
    }
  });

  it('costs its cubic metres times their price, dry and with the rain of a normal year', () => {
    const water = waterOf({ ...GARDEN_HOSE, place: 'Oxford' }, [WATER]);
    // 1 m3 is 1000 L; 3.60 for each.
    expect(water.cost).toSatisfy(isAbout(((water.litres + water.stepLitres) / 1000) * 3.6));
    expect(water.costAfterRain).toSatisfy(
      isAbout((((water.litresAfterRain ?? 0) + water.stepLitres) / 1000) * 3.6),
    );
    expect(water.costAfterRain).toBeLessThan(water.cost as number);
    expect(water.says.at(-1)).toContain(
      `At the 3.60 for 1000 L in your price list that costs about ${water.cost?.toFixed(2)}`,
    );
  });

  it('through a sprinkler is more at the meter than on the ground: divide by 0.75 (FAO training manual 4, table 8)', () => {
    const water = waterOf({ watering: 'sprinkler', wateringBan: false, place: 'unknown' }, [WATER]);
    expect(water.drawnLitres).toSatisfy(isAbout(water.litres / 0.75));
    expect(water.cost).toSatisfy(isAbout(((water.litres / 0.75 + water.stepLitres) / 1000) * 3.6));
  });

  it('under a ban comes in cans, which lose nothing on the way', () => {
    const water = waterOf({ watering: 'sprinkler', wateringBan: true, areaM2: 20 });
    expect(water.drawnLitres).toBe(water.litres);
  });

  it('goes by the better of two rates, in whatever unit', () => {
    const cost = (row: PriceRow['cells'][]): number => waterOf(GARDEN_HOSE, row).cost as number;
    const dear = { material: 'water', size: '10', unit: 'L', price: '1.00' };
    expect(cost([dear, WATER])).toBe(cost([WATER]));
    // 264.172 US gallons to the cubic metre, from 231 cubic inches to the gallon.
    const gallons = { material: 'water', size: '264.172', unit: 'US gal', price: '3.60' };
    expect(cost([gallons])).toBeCloseTo(cost([WATER]), 1);
  });

  it('is in no shop, so neither the list nor the budget holds it', () => {
    const soil = { material: 'topsoil', size: '25', unit: 'L', price: '4.50' };
    const [plan, dry] = [planOf({ budget: 60 }, [soil, WATER]), planOf({ budget: 60 }, [soil])];
    expect(plan.shopping).toEqual(dry.shopping);
    expect(plan.budget).toEqual(dry.budget);
    expect(plan.water?.costSays).toMatch(/^Water is not in this: at 3\.60 for 1000 L it comes to about \d/);
  });

  it('is nothing where nothing is sown, or where there is none at hand', () => {
    expect(planOf({ watering: 'none' }).water).toBeNull();
  });

  it('is said in US measures to who reads those', () => {
    const says = waterOf(GARDEN_HOSE, [WATER], 'us').says.join(' ');
    expect(says).toContain('At the 3.60 for 264 gal in your price list that costs');
    expect(says).not.toMatch(/\d (L|m²)\b/);
  });
});

describe('a line for water in a price list', () => {
  const faultsOf = (cells: PriceRow['cells']): string => {
    const read = readPriceRows([{ at: 'line 2', cells }], pack);
    return read.ok ? '' : read.faults.join(' ');
  };

  it.each<[PriceRow['cells'], RegExp]>([
    [{ material: 'water', unit: 'm3', price: '3.60' }, /line 2: water has a price for a size/],
    [{ material: 'water', size: '1', unit: 'm3' }, /line 2: water has a price for a size/],
    [{ ...WATER, have: '200' }, /line 2: have is not counted for water\. Leave it empty/],
    [{ ...WATER, stock: '2' }, /line 2: stock is not counted for water/],
    [{ ...WATER, unit: 'kg' }, /line 2: unit is "kg"\. Allowed for water: .*m3/],
    [{ ...WATER, size: '0' }, /line 2: size is "0"/],
    [{ material: 'old-turf', size: '1', unit: 'm3', price: '20' }, /line 2: old-turf is not bought/],
  ])('%j is refused with its line and what is allowed', (cells, says) => {
    expect(faultsOf(cells)).toMatch(says);
  });
});
