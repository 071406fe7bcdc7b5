import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseIsoDate } from '../../src/base/dates.js';
import type { Answers } from '../../src/interview/answers.js';
import { assemblePlan } from '../../src/planner/assemble-plan.js';
import type { Plan } from '../../src/planner/plan.js';
import { type PriceList, readPriceRows } from '../../src/planner/price-list.js';
import { anyAnswers, pack, planIfAny } from './any-lawn.js';

const today = parseIsoDate('2027-03-13');
const lawn: Answers = JSON.parse(
  readFileSync('transcripts-examples/mossy-family-lawn/answers.json', 'utf8'),
).answers;

function pricesOf(...lines: string[]): PriceList {
  const names = ['material', 'size', 'unit', 'price', 'stock', 'have', 'how'];
  const rows = lines.map((line, index) => ({
    at: `line ${index}`,
    cells: Object.fromEntries(line.split(',').map((cell, at) => [names[at] as string, cell])),
  }));
  const read = readPriceRows(rows, pack);
  if (!read.ok) throw new Error(read.faults.join('\n'));
  return read.prices;
}

const planOf = (more: Answers, prices?: PriceList): Plan =>
  assemblePlan({ pack, answers: { ...lawn, ...more }, today, assumeAll: true, prices });
const lineOf = (plan: Plan, id: string) => {
  const line = plan.shopping.find(({ materialId }) => materialId === id);
  if (line === undefined) throw new Error(`no ${id} on the list`);
  return line;
};

describe('the shopping list', () => {
  it('names no money where none was given, and packs that are typical', () => {
    const plan = planOf({});
    for (const { cost, packs, packsAre } of plan.shopping) {
      expect(cost).toBeNull();
      for (const { price } of packs) expect(price).toBeNull();
      if (packs.length > 0) expect(packsAre).toBe('typical');
    }
    expect(plan.shopping.filter(({ packs }) => packs.length > 0).length).toBeGreaterThan(3);
    expect(plan.budget).toBeNull();
  });

  it('wants of each material what its steps use together', () => {
    const plan = planOf({});
    for (const { materialId, need } of plan.shopping) {
      if (need === null) continue;
      const used = plan.steps
        .flatMap(({ amounts }) => amounts)
        .filter((amount) => amount.materialId === materialId)
        .reduce((sum, { amount }) => sum + (amount ?? 0), 0);
      expect(need.amount).toBeCloseTo(used, 6);
    }
    // 12 m by 7 m at 10 mL to the m2 by the label.
    expect(lineOf(plan, 'moss-product').need?.amount).toBe(840);
  });

  it('covers every need on any lawn, with nothing left over that a smaller count would save', () => {
    fc.assert(
      fc.property(anyAnswers, fc.constantFrom('metric' as const, 'us' as const), (answers, units) => {
        const plan = planIfAny({ pack, answers, today, assumeAll: true, units });
        for (const { need, packs, leftOver } of plan?.shopping ?? []) {
          if (need === null || packs.length === 0) continue;
          const bought = packs.reduce((sum, { size, count }) => sum + size * count, 0);
          expect(bought).toBeGreaterThanOrEqual(need.toBuy * (1 - 1e-9));
          expect(leftOver).toBeCloseTo(bought - need.amount, 6);
          // One pack fewer would not do.
          expect(bought - need.toBuy).toBeLessThan(Math.min(...packs.map(({ size }) => size)) + 1e-6);
          for (const { count } of packs) expect(Number.isInteger(count) && count > 0).toBe(true);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('takes what is in the shed off the purchase, and buys nothing where it is enough', () => {
    const some = lineOf(planOf({}, pricesOf('topsoil,25,L,4.50,,,', 'topsoil,,L,,,100,')), 'topsoil');
    const bought = some.packs.reduce((sum, { size, count }) => sum + size * count, 0);
    expect(bought + 100).toBeGreaterThanOrEqual(some.need?.toBuy as number);
    expect(bought + 100 - 25).toBeLessThan(some.need?.toBuy as number);
    expect(some.leftOver).toBeCloseTo(bought + 100 - (some.need?.amount as number), 6);
    const enough = lineOf(planOf({}, pricesOf('topsoil,,L,,,5000,')), 'topsoil');
    expect([enough.packs, enough.cost, enough.have]).toEqual([[], 0, 5000]);
  });

  it('adds up to the price of its packs', () => {
    const plan = planOf(
      {},
      pricesOf('topsoil,25,L,4.50,,,', 'topsoil,40,L,6.99,3,,', 'seed-ryegrass-mix,1,kg,9.99,,,'),
    );
    for (const id of ['topsoil', 'seed-ryegrass-mix']) {
      const { packs, cost } = lineOf(plan, id);
      expect(cost).toBeCloseTo(
        packs.reduce((sum, { count, price }) => sum + count * (price as number), 0),
        6,
      );
    }
  });

  it('says so where the stock of the price list falls short, and invents no pack', () => {
    const line = lineOf(planOf({}, pricesOf('topsoil,25,L,4.50,2,,')), 'topsoil');
    expect([line.packs, line.cost]).toEqual([[], null]);
    expect(line.note).toMatch(/stock/);
  });
});

describe('a pack too heavy to lift', () => {
  // Topsoil at 1.0 to 1.5 t/m3 (US Army, table 2-15, moist and packed: 1.52): 20 L weigh up to 30 kg, 50 L up to 75.
  it('is not among the common sizes while a smaller one will do', () => {
    const { packs, note } = lineOf(planOf({ maxLiftKg: 30 }), 'topsoil');
    expect(packs.map(({ size }) => size)).toEqual([20]);
    expect(note).toBeNull();
  });

  it("of a person's own gets a caution, and the lighter packs with what they cost", () => {
    const prices = pricesOf('topsoil,50,L,5.00,,,', 'topsoil,10,L,3.00,,,');
    const { packs, note } = lineOf(planOf({ maxLiftKg: 15 }, prices), 'topsoil');
    expect(packs[0]?.size).toBe(50);
    expect(note).toMatch(
      /Caution: a pack of 50 L, moist, weighs up to 75 kg, more than the 15 kg that you can lift.*second person, or take \d+ × 10 L instead, for \d+\.00/,
    );
  });

  it('without a lighter one calls for a second person', () => {
    const { note } = lineOf(planOf({ maxLiftKg: 5 }), 'seed-cover');
    expect(note).toMatch(/second person, or have it opened/);
  });

  it('is told by the guide weight where nobody said what can be lifted', () => {
    expect(lineOf(planOf({}), 'topsoil').note).toMatch(/the guide of 16 kg for one person/);
  });
});

describe('hire or buy', () => {
  const costOf = (...lines: string[]) => lineOf(planOf({}, pricesOf(...lines)), 'scarifier-electric');
  it('takes the cheaper, and hire where they are the same', () => {
    expect(costOf('scarifier-electric,,,38,,,hire', 'scarifier-electric,,,120,,,buy').cost).toBe(38);
    expect(costOf('scarifier-electric,,,130,,,hire', 'scarifier-electric,,,120,,,buy')).toMatchObject({
      cost: 120,
    });
    expect(costOf('scarifier-electric,,,120,,,hire', 'scarifier-electric,,,120,,,buy').note).toMatch(/^Hire/);
    expect(costOf('scarifier-electric,,,,,1,')).toMatchObject({ cost: 0, have: 1 });
  });
});

describe('the budget', () => {
  const prices = pricesOf(
    'topsoil,25,L,4.50,,,',
    'seed-cover,30,L,5.10,,,',
    'seed-ryegrass-mix,500,g,7.99,,,',
    'scarifier-electric,,,38,,,hire',
  );

  it('is set against what has a price, and says what has none', () => {
    const { budget, shopping } = planOf({ budget: 1000 }, prices);
    const sum = shopping.reduce((all, { cost }) => all + (cost ?? 0), 0);
    expect(budget).toMatchObject({ limit: 1000, over: 0, leaveOut: [] });
    expect(budget?.total).toBeCloseTo(sum, 6);
    expect(budget?.unpriced).toContain('starter-feed');
  });

  it('gone over names what to leave out first, what it saves and what that costs the lawn', () => {
    const full = planOf({ budget: 0 }, prices).budget;
    expect(full?.over).toBe(full?.total);
    expect(full?.leaveOut.map(({ stepId }) => stepId)).toEqual(['soil-bed', 'cover-seed']);
    const topsoil = lineOf(planOf({}, prices), 'topsoil').cost;
    expect(full?.leaveOut[0]?.saves).toBe(topsoil);
    for (const { loses } of full?.leaveOut ?? []) expect(loses.length).toBeGreaterThan(20);
    const near = planOf({ budget: Math.ceil((full?.total as number) - 5) }, prices).budget;
    expect(near?.leaveOut.map(({ stepId }) => stepId)).toEqual(['soil-bed']);
  });

  it('fits nothing and invents nothing where no price is known', () => {
    expect(planOf({ budget: 100 }).budget).toMatchObject({ total: null, over: null, leaveOut: [] });
  });
});

describe('the way home', () => {
  it('weighs what is bought and counts the trips of an ordinary car', () => {
    const { haul, shopping } = planOf({});
    const litres = shopping
      .filter(({ loose, materialId }) => loose && materialId !== 'debris')
      .flatMap(({ packs }) => packs)
      .reduce((sum, { size, count }) => sum + size * count, 0);
    const grams = shopping
      .flatMap(({ packs }) => packs)
      .filter(({ unit }) => unit === 'g')
      .reduce((sum, { size, count }) => sum + size * count, 0);
    // Topsoil at 1.2 t/m3 (bulk-density-topsoil), and 300 kg in a car (car-load-kg).
    expect(haul?.kg).toBeCloseTo(litres * 1.2 + grams / 1000, 6);
    expect([haul?.carKg, haul?.trips]).toEqual([300, Math.ceil((litres * 1.2 + grams / 1000) / 300)]);
    // 4 mm and 2 mm on 84 m2 are 504 L: one bulk bag holds both, since the cover may be topsoil too.
    expect(haul?.bulk.map(({ materialId, size, need }) => [materialId, size, need])).toEqual([
      ['topsoil', 700, 504],
    ]);
  });

  it('is one trip for a small lawn, and then no lorry is spoken of', () => {
    expect(planOf({ areaM2: 20 }).haul).toMatchObject({ trips: 1, bulk: [] });
  });

  it('is told with the need beside each bulk bag, so that nobody orders one for each', () => {
    const plan = planOf({});
    const { haul } = plan;
    expect(haul?.says).toHaveLength(2);
    expect(haul?.says[0]).toContain(`${haul?.trips} trips`);
    // The car's load is an assumption in rules/figures, and is called one.
    expect(haul?.says[0]).toContain('(assumption;');
    const needOf = (id: string): number => lineOf(plan, id).need?.amount ?? Number.NaN;
    for (const { need } of haul?.bulk ?? []) {
      expect(need).toBe(needOf('topsoil') + needOf('seed-cover'));
      expect(haul?.says[1]).toContain(`for a need of ${need}`);
    }
  });

  it('never names a bulk bag as what one person could lift instead', () => {
    for (const { note } of planOf({}).shopping) expect(note ?? '').not.toMatch(/700/);
  });

  it('is by lorry for a lawn that takes more soil than a car, in few bulk bags', () => {
    // 600 m2 by 4 mm are 2400 L: four bags of 700 L leave 400 L, within a fifth; 2 mm are 1200 L: two leave 200 L.
    const plan = planOf({ areaM2: 600, lawnParts: 'unknown' });
    const packsOf = (id: string) => lineOf(plan, id).packs.map(({ size, count }) => [size, count]);
    expect(packsOf('topsoil')).toEqual([[700, 4]]);
    expect(packsOf('seed-cover')).toEqual([[700, 2]]);
    expect(plan.haul).toMatchObject({ trips: 1, bulk: [] });
  });

  it('leaves out what a lorry brings', () => {
    const prices = pricesOf('topsoil,700,L,60,,,', 'seed-cover,700,L,60,,,');
    expect(planOf({}, prices).haul?.kg).toBeLessThan(20);
    expect(lineOf(planOf({}, prices), 'topsoil').note).toMatch(/^The bulk bags come by lorry/);
  });
});

describe('packs for whoever reads US units', () => {
  it('are those of US shops', () => {
    const plan = assemblePlan({ pack, answers: lawn, today, assumeAll: true, units: 'us' });
    // 4.17 lb of seed: one bag of 5 lb, 453.59237 g to the pound (NIST Handbook 44, appendix C).
    expect(lineOf(plan, 'seed-ryegrass-mix').packs).toEqual([
      { size: 5 * 453.59237, unit: 'g', count: 1, price: null },
    ]);
    expect(lineOf(plan, 'topsoil').packs[0]?.size).toBeCloseTo(0.5 * 28.316846592, 9);
  });
});
