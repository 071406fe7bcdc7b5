/** Marks that can be trusted: who does all right has them all, and nobody else. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { freshAttempt } from '../../src/training/attempt.js';
import { markAttempt } from '../../src/training/marks.js';
import { perfectAttempt } from '../../src/training/perfect.js';
import { times } from '../depth.js';
import {
  asksEverything,
  byId,
  byLot,
  cannotDiagnose,
  cannotReckon,
  isGood,
  looksIn,
  namesEverything,
  worked,
  wrongVerdicts,
} from './book.js';

const cases = worked.map((each) => ({ id: each.lesson.id, each }));
const RANDOM_TRAINEES = times(10, 40);

describe('the marks', () => {
  it.each(cases)('$id: the perfect trainee has 100 and passes', ({ each }) => {
    const marks = markAttempt(each, perfectAttempt(each));
    expect(marks.parts).toEqual(Object.fromEntries(Object.keys(marks.parts).map((id) => [id, 1])));
    expect(marks.total).toBeCloseTo(100, 9);
    expect(marks.passed).toBe(true);
  });

  it.each(cases)('$id: the one who asks everything, and is right all the same, has 85 to 90', ({ each }) => {
    const marks = markAttempt(each, asksEverything(each));
    expect(marks.total).toBeLessThanOrEqual(90);
    // No more can be lost by looking than the weight of wasted looks.
    expect(marks.total).toBeGreaterThanOrEqual(100 - each.marking.weights.economy);
  });

  it('are low for trainees who choose by lot: under 30 on average, and fewer than one in a hundred passes', () => {
    const marks = worked.flatMap((each) =>
      fc.sample(byLot(each), { numRuns: RANDOM_TRAINEES, seed: 1950 }).map((lot) => markAttempt(each, lot)),
    );
    const mean = marks.reduce((sum, { total }) => sum + total, 0) / marks.length;
    expect(mean).toBeLessThan(30);
    expect(marks.filter(({ passed }) => passed).length / marks.length).toBeLessThan(0.01);
  });

  // Every margin is what a part is worth in the scheme: who shows nothing of a skill loses what it can earn.
  it.each(cases)(
    '$id: who cannot diagnose never passes, and loses all that the diagnosis is worth',
    ({ each }) => {
      const good = markAttempt(each, isGood(each));
      expect(good.passed).toBe(true);
      for (const verdict of wrongVerdicts(each))
        for (const sure of [0, 0.5, 1]) {
          const marks = markAttempt(each, cannotDiagnose(each, verdict, sure));
          expect(marks.passed, `${verdict} ${sure}`).toBe(false);
          expect(marks.gate).toContain('verdict');
          const nothingToName = each.lesson.expected.findings.length === 0;
          const { diagnosis } = each.marking.weights;
          expect(good.total - marks.total).toBeGreaterThanOrEqual(nothingToName ? diagnosis / 2 : diagnosis);
        }
    },
  );

  it.each(cases)(
    '$id: who has the verdict and fewer than half of the key findings never passes',
    ({ each }) => {
      const key = each.lesson.expected.findings;
      const good = isGood(each);
      const named = (count: number) => ({
        ...good,
        commitment: {
          verdict: each.lesson.expected.verdict,
          sure: 0.8,
          findings: key.slice(0, count).map((id) => ({ id, sure: 0.8 })),
        },
      });
      for (let count = 0; count <= key.length; count++)
        expect(markAttempt(each, named(count)).gate.includes('findings'), String(count)).toBe(
          2 * count < key.length,
        );
    },
  );

  it.each(cases)(
    '$id: who cannot reckon passes, below the good one and above who cannot diagnose',
    ({ each }) => {
      const { weights } = each.marking;
      const good = markAttempt(each, isGood(each));
      for (const how of ['left out', 'a tenth'] as const) {
        const reckons = markAttempt(each, cannotReckon(each, how));
        expect(reckons.passed).toBe(true);
        expect(good.total - reckons.total).toBeCloseTo(weights.amounts, 9);
        for (const verdict of wrongVerdicts(each)) {
          const blind = markAttempt(each, cannotDiagnose(each, verdict, 0.5));
          expect(reckons.total).toBeGreaterThan(blind.total);
        }
      }
    },
  );

  it.each(cases)(
    '$id: who types the whole list stands below the good one, and never passes without a diagnosis',
    ({ each }) => {
      const { looks } = asksEverything(each);
      const good = markAttempt(each, isGood(each));
      const lister = markAttempt(each, { ...isGood(each), looks });
      // One who never chose has shown less than half of what choosing is worth.
      expect(good.total - lister.total).toBeGreaterThan(each.marking.weights.economy / 2);
      for (const verdict of wrongVerdicts(each)) {
        const marks = markAttempt(each, { ...cannotDiagnose(each, verdict, 0.5), looks });
        expect(marks.passed).toBe(false);
        expect(lister.total).toBeGreaterThan(marks.total);
      }
    },
  );

  it.each(cases)('$id: who names everything there is to name never passes', ({ each }) => {
    for (const sure of [0.05, 0.5, 1])
      expect(markAttempt(each, namesEverything(each, sure)).gate).toContain('listed');
  });

  it.each(cases)(
    '$id: a verdict chosen at 0 % and nothing named earns less than half of the sureness',
    ({ each }) => {
      for (const verdict of wrongVerdicts(each)) {
        const { parts } = markAttempt(each, cannotDiagnose(each, verdict, 0));
        const { sureness = 0 } = markAttempt(each, isGood(each)).parts;
        expect(parts.sureness).toBeLessThan(sureness);
        if (each.lesson.expected.findings.length > 0) expect(parts.sureness).toBeLessThan(1 / 2);
      }
    },
  );

  it('take nothing from doubt about what cannot be told yet, and something from certainty', () => {
    const each = byId('kiln-lane');
    const good = isGood(each);
    const naming = (sure: number) => {
      const findings = [...(good.commitment?.findings ?? []), { id: 'compacted', sure }];
      return markAttempt(each, {
        ...good,
        commitment: { verdict: each.lesson.expected.verdict, sure: 0.8, findings },
      });
    };
    // The ground is dry: the screwdriver proves nothing, and nobody has lifted a slice.
    const [doubtful, certain] = [naming(0.3), naming(0.9)];
    expect(doubtful.diagnosis).toMatchObject({ doubted: ['compacted'], wrong: [] });
    expect(doubtful.total).toBeCloseTo(markAttempt(each, good).total, 9);
    expect(certain.diagnosis).toMatchObject({ doubted: [], wrong: ['compacted'], tooSoon: ['compacted'] });
    expect(certain.total).toBeLessThan(doubtful.total);
  });

  it('give nothing for true trifles: named or not, they change neither sureness nor diagnosis', () => {
    for (const each of worked) {
      const good = isGood(each);
      const trifles = [...each.found].filter((id) => !each.lesson.expected.findings.includes(id));
      const { commitment } = good;
      if (commitment === undefined || trifles.length === 0) continue;
      const findings = [...commitment.findings, ...trifles.map((id) => ({ id, sure: 1 }))];
      const marks = markAttempt(each, { ...good, commitment: { ...commitment, findings } });
      expect(marks.total).toBeCloseTo(markAttempt(each, good).total, 9);
    }
  });

  it.each(cases)('$id: every danger fails the case when it alone is overlooked', ({ each }) => {
    for (const { look } of each.lesson.dangers) {
      const perfect = perfectAttempt(each);
      const ids = perfect.looks.map(({ question }) => question.id).filter((id) => id !== look);
      const marks = markAttempt(each, { ...perfect, looks: looksIn(each, ids) });
      expect(marks.passed).toBe(false);
    }
  });

  it.each(cases)('$id: a step that does the harm fails the case whatever the rest', ({ each }) => {
    for (const step of each.lesson.dangers.flatMap(({ neverSteps = [] }) => neverSteps)) {
      const perfect = perfectAttempt(each);
      const marks = markAttempt(each, { ...perfect, order: [...(perfect.order ?? []), step] });
      expect(marks.passed).toBe(false);
    }
  });

  it('fail who digs first and asks about the cable afterwards, where a cable is', () => {
    const each = byId('hard-as-the-road');
    const perfect = perfectAttempt(each);
    const late = ['screwdriver', 'lastRainDaysAgo', 'footprints', 'buriedServices'];
    expect(markAttempt(each, { ...perfect, looks: looksIn(each, late) }).passed).toBe(false);
    expect(markAttempt(each, perfect).passed).toBe(true);
  });

  it('tell how a danger was overlooked: never asked, asked too late, or done by a step', () => {
    const each = byId('hard-as-the-road');
    const perfect = perfectAttempt(each);
    const ids = ['screwdriver', 'lastRainDaysAgo', 'footprints'];
    const fateOf = (change: Partial<typeof perfect>) =>
      markAttempt(each, { ...perfect, ...change }).dangers.map(({ fate }) => fate);
    expect(fateOf({})).toEqual(['seen']);
    expect(fateOf({ mode: 'finish', looks: [] })).toEqual(['shown']);
    expect(fateOf({ looks: looksIn(each, ids) })).toEqual(['unseen']);
    expect(fateOf({ looks: looksIn(each, [...ids, 'buriedServices']) })).toEqual(['late']);
    expect(fateOf({ order: [...(perfect.order ?? []), 'core'] })).toEqual(['done']);
  });

  it('fail who overdoses a product by its label, and not who gives too little or is a little over', () => {
    const each = byId('spongy-green');
    const perfect = perfectAttempt(each);
    // 83.4 m2 × 10 mL is 834 mL.
    const passes = (given: number): boolean =>
      markAttempt(each, { ...perfect, amounts: { ...perfect.amounts, 'moss-killer': given } }).passed;
    expect([834, 83.4, 960, 1668, 8340].map(passes)).toEqual([true, true, true, false, false]);
  });

  it.each(cases)('$id: who guesses right without one look does not pass', ({ each }) => {
    const marks = markAttempt(each, { ...perfectAttempt(each), looks: [] });
    expect(marks.total).toBeLessThan(each.marking.passMark);
    expect(marks.passed).toBe(false);
  });

  it('give nothing to one who does nothing', () => {
    for (const each of worked) {
      const marks = markAttempt(each, freshAttempt('whole'));
      expect(marks.total).toBe(0);
      expect(marks.passed).toBe(false);
    }
  });

  it('take hints off openly', () => {
    const each = byId('spongy-green');
    const hinted = {
      ...perfectAttempt(each),
      hints: [{ towards: 'look' as const, id: 'dog', rung: 'tell' as const }],
    };
    expect(markAttempt(each, hinted).total).toBeCloseTo(100 - each.marking.hintCosts.tell, 9);
  });

  it('lie between 0 and 100 for anything that can be done', () => {
    for (const each of worked) {
      fc.assert(
        fc.property(byLot(each), (lot) => {
          const { total, parts } = markAttempt(each, lot);
          expect(total).toBeGreaterThanOrEqual(0);
          expect(total).toBeLessThanOrEqual(100);
          for (const part of Object.values(parts)) expect(part).toBeGreaterThanOrEqual(0);
          for (const part of Object.values(parts)) expect(part).toBeLessThanOrEqual(1);
        }),
        { numRuns: 10 },
      );
    }
  });
});
