/** Amounts: the tolerance, and the slip behind a wrong one. Right values worked by hand, beside each. */
import { describe, expect, it } from 'vitest';
import { markAmount } from '../../src/training/amounts.js';
import type { WorkedCase } from '../../src/training/worked-case.js';
import { book, byId, worked } from './book.js';

const mark = (each: WorkedCase, id: string, given: number | null) => {
  const asked = each.lesson.amounts.find((amount) => amount.id === id);
  if (asked === undefined) throw new Error(`no amount ${id}`);
  return markAmount(each, asked, given);
};

// 12 m × 8 m less a circle 4 m across: 96 − π·2² = 83.43 m2; label 10 mL/m2 in 0.1 L/m2, tank 5 L.
const green = byId('spongy-green');
// 20 m × 9 m, feed with 12 % nitrogen.
const hungry = byId('thin-and-yellow');

describe('an amount', () => {
  it.each([
    ['area', 83.4],
    ['area', 84],
    ['moss-killer', 834],
    // 8.34 L and 0.83 L in two fills of 5 L.
    ['one-load', 4.17],
    ['one-load', 4.2],
    ['moss-wait', 14],
  ])('%s of %d is right', (id, given) => {
    expect(mark(green, id, given)).toMatchObject({ mark: 1, slip: null });
  });

  it('is right anywhere in the range that the figures allow, where no label rules', () => {
    // 2.4 to 4.4 g of nitrogen on a square metre: 3.6 to 6.6 kg of a 12 % feed.
    for (const given of [3700, 5100, 6500]) expect(mark(hungry, 'feed', given).mark).toBe(1);
    expect(mark(hungry, 'feed', 9000).mark).toBe(0);
  });

  it('is near within fifteen in a hundred, and worth half', () => {
    expect(mark(green, 'moss-killer', 930).mark).toBe(0.5);
    expect(mark(green, 'moss-killer', 990).mark).toBe(0);
  });

  it('that was left out has no mark and no slip', () => {
    expect(mark(green, 'area', null)).toMatchObject({ mark: 0, slip: null, given: null });
  });

  it.each([
    ['area', 96, /beds away/],
    ['area', 108.57, /added the beds/],
    // 96 − π·4² = 45.7: the 4 m across taken for the radius.
    ['area', 45.73, /radius/],
    ['area', 834, /ten times/],
    ['area', 898, /square feet/],
    ['area', 273.7, /one side measured in feet/],
    ['moss-killer', 8340, /ten times/],
    ['moss-killer', 83.4, /ten times/],
    ['moss-killer', 960, /beds away/],
    ['moss-killer', 1668, /two passes/],
    ['moss-killer', 834_000, /thousand times/],
    ['moss-killer', 10, /one square metre/],
    ['one-load', 5, /product has to go in too/],
    ['moss-wait', 98, /weeks/],
    ['moss-wait', 2, /weeks/],
  ])('%s of %d is wrong, and the slip is named', (id, given, slip) => {
    const marked = mark(green, id, given);
    expect(marked.mark).toBeLessThan(1);
    expect(marked.slip).toMatch(slip);
  });

  it.each([
    // 180 m2 × 3.4 g = 612 g of nitrogen.
    [612, /nitrogen, not the feed/],
    [51, /hundred times/],
    [5100 * 16, /ounces/],
    [5100 / 16, /ounces/],
    [28.3, /one square metre/],
  ])('a feed of %d g is wrong, and the slip is named', (given, slip) => {
    expect(mark(hungry, 'feed', given).slip).toMatch(slip);
  });

  it.each([
    // 60 m2 × 13 mm = 780 L at 12 L a minute.
    ['july-straw', 'hose', 65, null],
    ['july-straw', 'hose', 780, /litres/],
    // 7 m × 6 m less 2 m × 1.5 m is 39 m2; 50 mm on it is 1,950 L.
    ['bakehouse-yard', 'bark', 1950, null],
    ['bakehouse-yard', 'bark', 2100, /beds away/],
    ['bakehouse-yard', 'bark', 195, /ten times out/],
    // A third off leaves two: 40 ÷ 2 × 3.
    ['billiard-table', 'mow-at', 60, null],
    ['billiard-table', 'mow-at', 53, /a third of what stays/],
    // 12 m × (8 − 1) m: of the 2 m strip 1 m is bank.
    ['grey-lawn', 'fed-area', 84, null],
    ['grey-lawn', 'fed-area', 96, /whole lawn/],
    ['grey-lawn', 'fed-area', 72, /bank/],
    // 14 ÷ 0.15² = 622.
    ['torn-up', 'grubs-per-m2', 622, null],
    ['torn-up', 'grubs-per-m2', 93, /divided by the side/],
    // 14 × 9 − π·2.5² = 106.4 m2; 14 in 100 of it × 30 g = 447 g.
    ['tussocks', 'area', 106.4, null],
    ['tussocks', 'area', 126, /beds away/],
    ['tussocks', 'area', 47.5, /radius/],
    ['tussocks', 'seed', 447, null],
    // 30 − 7 days.
    ['wharf-cottages', 'days-to-sow', 23, null],
    ['wharf-cottages', 'days-to-sow', 30, /day of spraying/],
  ])('of %s: %s of %d', (caseId, id, given, slip) => {
    const marked = mark(byId(caseId), id, given);
    if (slip === null) expect(marked).toMatchObject({ mark: 1, slip: null });
    else expect(marked.slip).toMatch(slip);
  });

  it('for one load of three is not taken for all of them', () => {
    // 8.34 L in all, half of it in each load.
    expect(mark(green, 'one-load', 8.34).slip).toMatch(/all the loads together/);
    // 73.9 m2 × 15 mL = 1,108 mL in all, half of it in each load.
    expect(mark(byId('kiln-lane'), 'one-load', 1108).slip).toMatch(/all the loads together/);
  });

  it('that fits no slip says so by saying nothing', () => {
    expect(mark(green, 'area', 60).slip).toBeNull();
  });

  it('agrees with pencil and paper in every case', () => {
    const all = worked.flatMap((each) => each.lesson.amounts.map((asked) => markAmount(each, asked, null)));
    expect(all.length).toBeGreaterThanOrEqual(worked.length);
    for (const { asked, right } of all) {
      expect(right.value).toBeGreaterThanOrEqual(asked.byHand.least);
      expect(right.value).toBeLessThanOrEqual(asked.byHand.most);
      // Pencil and paper must say something: no wider than the tolerance of a near answer, but for rates in a band.
      if (right.range === null) expect(asked.byHand.most / asked.byHand.least).toBeLessThan(1.1);
    }
    expect(book.marking.tolerance.right).toBeLessThan(book.marking.tolerance.near);
  });
});

describe('a sum of seed', () => {
  it.each(
    worked.flatMap((each) =>
      each.lesson.amounts
        .filter(({ find }) => find.kind === 'amount' && find.material.startsWith('seed'))
        .map((asked) => ({ id: each.lesson.id, asked })),
    ),
  )('$id: names the rate, so that it can be done with pencil and paper', ({ asked }) => {
    expect(asked.ask).toMatch(/\d g\/m²/);
  });
});
