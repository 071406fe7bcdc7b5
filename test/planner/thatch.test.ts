/** Thatch by its depth, and the surface opened and cleared before any seed. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyLawn, anyToday, pack, planIfAny } from './any-lawn.js';
import { planFor, step, stepsOf, wordsOf } from './plain-lawn.js';

const felt = (thatchDepthMm: number, more = {}) =>
  planFor({ thatchDepthMm, underfoot: 'springy', scarifier: 'petrol', areaM2: 170, ...more }, '2027-08-20');
const debrisL = (plan: ReturnType<typeof planFor>): number =>
  step(plan, 'scarify').amounts.find(({ materialId }) => materialId === 'debris')?.amount ?? Number.NaN;

describe('thick thatch', () => {
  // A gardening handbook, chapter 14: above 1 1/2 inch (38 mm) one pass each way, then wait for recovery.
  it('from 38 mm is not taken out in one go: one pass each way, no seed, the rest next year', () => {
    for (const depth of [38, 45, 50]) {
      const plan = felt(depth);
      expect(stepsOf(plan)).toContain('scarify');
      expect(stepsOf(plan)).not.toContain('sow');
      expect(stepsOf(plan)).not.toContain('patch-sow');
      expect(plan.verdict.title).toMatch(/two seasons/);
      expect(wordsOf(plan, 'scarify')).toMatch(/\b2\spasses in all/);
      expect(step(plan, 'second-half').startOn.slice(0, 7)).toBe('2028-08');
    }
    expect(stepsOf(felt(37))).toContain('sow');
    expect(wordsOf(felt(37), 'scarify')).toMatch(/\b3\spasses in all/);
  });

  it('is told with the honest alternative: strip it and sow new ground', () => {
    const { verdict, notDone } = felt(45);
    expect(verdict.because).toMatch(/cut the turf off and sow new ground/);
    expect(notDone.map(({ says }) => says).join(' ')).toMatch(/Stripping the turf/);
  });

  // Utah State University, FAQ 1971: extreme felt, 2 inches (51 mm) or more; that it is then cut off is our reading.
  it('of 51 mm and more is cut off with the turf, and the two-season way is told', () => {
    const plan = felt(70);
    expect(stepsOf(plan)).toEqual(expect.arrayContaining(['clear-old-turf', 'dig-over', 'sow']));
    expect(stepsOf(plan)).not.toContain('scarify');
    expect(plan.notDone.map(({ says }) => says).join(' ')).toMatch(/several seasons/);
    // 170 m2 times 70 mm, by hand.
    expect(step(plan, 'clear-old-turf').amounts[0]?.amount).toBe(11900);
  });

  it('gives more debris the deeper it is: 10 L/m2 a centimetre, by plain geometry, and never less than 12 L/m2', () => {
    expect(debrisL(felt(26))).toBe(170 * 26);
    expect(debrisL(felt(45))).toBe(170 * 45);
    // A mossy renovation on thin thatch: the assumed least of 12 L/m2.
    expect(debrisL(felt(9, { mossFraction: 0.4 }))).toBe(170 * 12);
  });

  it('of 13 to 25 mm alone is scarified lightly, and brings no seed and no nine weeks of keeping off', () => {
    for (const depth of [14, 19, 20, 24]) {
      const ids = stepsOf(felt(depth));
      expect(ids).toEqual(expect.arrayContaining(['low-cut', 'scarify', 'clear']));
      expect(ids.filter((id) => ['sow', 'cover-seed', 'keep-off', 'soil-bed'].includes(id))).toEqual([]);
      expect(wordsOf(felt(depth), 'scarify')).toMatch(/\b2\spasses in all/);
    }
    expect(stepsOf(felt(13))).not.toContain('scarify');
    expect(stepsOf(felt(14, { bareFraction: 0.22 }))).toContain('sow');
  });

  it('moves the verdict by one rung at most with each millimetre', () => {
    const rungs = ['care-only', 'overseed', 'renovate', 'start-again'];
    for (const more of [{}, { underfoot: 'very-springy' }, { bareFraction: 0.22 }, { mossFraction: 0.3 }]) {
      const found = Array.from({ length: 75 }, (_, depth) => rungs.indexOf(felt(depth, more).verdict.id));
      found.slice(1).forEach((rung, depth) => {
        expect(Math.abs(rung - (found[depth] as number)), `${depth + 1} mm`).toBeLessThanOrEqual(1);
      });
    }
  });
});

describe('overseeding', () => {
  it('on a thin lawn scratches the surface open and rakes out the dead before the seed', () => {
    const plan = planFor({ bareFraction: 0.22, gapsOverHand: true }, '2027-08-20');
    const days = ['low-cut', 'scratch', 'clear', 'sow'].map((id) => step(plan, id).startOn);
    expect(days).toEqual([...days].sort());
    expect(wordsOf(plan, 'scratch')).toMatch(/loose soil/);
    expect(wordsOf(plan, 'low-cut')).not.toMatch(/must reach the thatch/);
  });

  it('of a lawn that is 40 % dead rakes the dead grass out', () => {
    const plan = planFor(
      { lawnColour: 'brown-patches', tugTest: 'lifts', grubsInSquare: 0, bareFraction: 0.4 },
      '2027-08-20',
    );
    expect(stepsOf(plan)).toEqual(expect.arrayContaining(['scratch', 'clear', 'sow']));
    expect(wordsOf(plan, 'clear')).toMatch(/dead/);
  });

  it('clears dead patches before they are sown, where the rest is sound', () => {
    const plan = planFor(
      { lawnColour: 'brown-patches', tugTest: 'lifts', grubsInSquare: 0, bareFraction: 0.08 },
      '2027-08-20',
    );
    expect(step(plan, 'clear').startOn <= step(plan, 'patch-sow').startOn).toBe(true);
  });
});

describe('cores', () => {
  // Royal Horticultural Society, autumn lawn care: on clay sweep up the cores and rake a dressing into the holes.
  it.each(['clay', 'clay-loam'])('of %s are taken off and the holes filled', (soilTexture) => {
    const tight = { screwdriver: 'stops', soilCrumbs: 'solid', hardWear: true, lastRainDaysAgo: 1 };
    const plan = planFor({ ...tight, soilTexture, mossFraction: 0.4 }, '2027-08-20');
    expect(stepsOf(plan)).toContain('core');
    expect(stepsOf(plan)).toContain('cores-off');
    expect(stepsOf(plan)).not.toContain('brush-cores');
    expect(wordsOf(plan, 'core')).toMatch(/closer together than a hand is wide/);
  });
});

describe('over generated lawns', () => {
  const OPENS = ['scarify', 'rake-moss', 'scratch', 'core'];

  it('every sowing among old grass follows a step that opens the surface and one that clears it', () => {
    let among = 0;
    fc.assert(
      fc.property(anyLawn, anyToday, (lawn, today) => {
        const plan = planIfAny({ pack, answers: { ...lawn, sownOn: 'no' }, today, assumeAll: true });
        if (plan === undefined) return;
        const ids = stepsOf(plan);
        if (ids.includes('scarify') && Number(lawn.thatchDepthMm) >= 38) expect(ids).not.toContain('sow');
        if (!ids.includes('sow') || ids.includes('clear-old-turf')) return;
        among++;
        const sowing = step(plan, 'sow');
        expect(plan.steps.some(({ id, startOn }) => OPENS.includes(id) && startOn <= sowing.startOn)).toBe(
          true,
        );
        expect(step(plan, 'clear').startOn <= sowing.startOn).toBe(true);
      }),
      { numRuns: 250, seed: 20271107 },
    );
    expect(among).toBeGreaterThan(40);
  });
});
