/** Turf that lifts like a carpet: what is under it is named and counted, and nothing is sown or torn open over it. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyLawn, anyToday, pack, planIfAny } from './any-lawn.js';
import { foundIn, planFor, step, stepsOf, wordsOf } from './plain-lawn.js';

/** Steps that tear turf open, pull at it or put seed on it. */
const TEARS_OR_SOWS =
  'sow patch-sow scarify rake-moss scratch low-cut core fork soil-bed cover-seed clear-old-turf'.split(' ');

const torn = { lawnColour: 'brown-patches', tugTest: 'carpet', bareFraction: 0.15, gapsOverHand: true };
const surrey = (changes: Parameters<typeof planFor>[0]) => planFor({ ...torn, ...changes }, '2027-09-05');

describe('turf that rolls back like a carpet, in early September', () => {
  it.each([0, 2, 5, 7, 'unknown', undefined])(
    'is found out about with %s grubs counted and no kind told',
    (grubs) => {
      const plan = surrey({ grubsInSquare: grubs });
      expect(stepsOf(plan)).not.toEqual(
        expect.arrayContaining([expect.stringMatching(`^(${TEARS_OR_SOWS.join('|')})$`)]),
      );
      expect(plan.verdict.title).toMatch(/find out first/);
      expect(foundIn(plan)).toContain('root-grubs');
      expect(step(plan, 'name-the-grubs').startOn).toBe('2027-09-05');
      expect(step(plan, 'look-again').startOn > '2027-09-05').toBe(true);
    },
  );

  it.each(['legs', 'legless', 'both'])(
    'is never sown or scarified over with %s told, however many',
    (grubKind) => {
      for (const grubsInSquare of [0.25, 0.5, 0.75, 2, 2.25, 5, 7, 30])
        expect(
          stepsOf(surrey({ grubsInSquare, grubKind })).filter((id) => TEARS_OR_SOWS.includes(id)),
        ).toEqual([]);
    },
  );

  it('says what else lifts turf, for whoever finds no grub in four squares', () => {
    const words = wordsOf(surrey({ grubsInSquare: 0 }), 'name-the-grubs');
    expect(words).toMatch(/no grub/i);
    expect(words).toMatch(/bitten short/i);
    expect(words).toMatch(/rough meadow-grass/);
    expect(words).toMatch(/not rooted/);
  });

  it('takes one empty square for no count', () => {
    expect(wordsOf(surrey({ grubsInSquare: 0 }), 'name-the-grubs')).toMatch(
      /one square alone proves nothing/,
    );
    const question = pack.questionById.get('grubsInSquare');
    expect(question?.text).toMatch(/mean of four/);
    expect(question?.help).toMatch(/an empty one proves nothing/);
  });
});

describe('chafers and leatherjackets have thresholds of their own', () => {
  // umass-grub-thresholds: European chafer from 3 a square foot (32 a square metre), which is 0.7 in 15 x 15 cm.
  it('holds chafers to be too many from three in four squares', () => {
    expect(foundIn(surrey({ grubsInSquare: 0.75, grubKind: 'legs' }))).toContain('chafers');
    expect(foundIn(surrey({ grubsInSquare: 0.5, grubKind: 'legs' }))).not.toContain('chafers');
  });

  // Farmers Weekly, 22 March 1996: a million leatherjackets a hectare, 100 a square metre, which is 2.25 in 15 x 15 cm.
  it('holds leatherjackets to bar seed from 100 a square metre', () => {
    const ids = (grubsInSquare: number) =>
      stepsOf(surrey({ tugTest: 'lifts', grubsInSquare, grubKind: 'legless' }));
    expect(ids(2.25)).toContain('count-again');
    expect(ids(2.25)).not.toContain('sow');
    expect(ids(2)).toContain('sow');
  });

  it('bars seed for one chafer where three leatherjackets would be let be', () => {
    const ids = (grubKind: string) => stepsOf(surrey({ tugTest: 'lifts', grubsInSquare: 1, grubKind }));
    expect(ids('legs')).not.toContain('sow');
    expect(ids('legless')).toContain('sow');
  });

  it('finds out first where the kind is not known and there are as many as chafers do harm with', () => {
    for (const grubKind of ['unknown', 'other', undefined])
      expect(stepsOf(surrey({ tugTest: 'lifts', grubsInSquare: 0.75, grubKind }))).toContain(
        'name-the-grubs',
      );
  });

  it('has each treated in its own weeks, and counted again before anything is sown', () => {
    // Nematode weeks as printed for Britain: chafers late July to September, leatherjackets late August to October.
    const july = { ...torn, grubsInSquare: 5 };
    const chafers = planFor({ ...july, grubKind: 'legs' }, '2027-07-01');
    expect(step(chafers, 'treat-chafers').startOn.slice(5) >= '07-20').toBe(true);
    expect(step(chafers, 'treat-chafers').startOn.slice(5) <= '09-30').toBe(true);
    const leatherjackets = planFor({ ...july, grubKind: 'legless' }, '2027-07-01');
    expect(step(leatherjackets, 'treat-leatherjackets').startOn.slice(5) >= '08-25').toBe(true);
    expect(stepsOf(leatherjackets)).not.toContain('treat-chafers');
    for (const plan of [chafers, leatherjackets])
      expect(step(plan, 'count-again').startOn > plan.madeOn).toBe(true);
  });

  it('counts in spring, and treats only the next summer, what is found in late October', () => {
    const plan = planFor({ ...torn, grubsInSquare: 2, grubKind: 'legs' }, '2027-10-25');
    expect(step(plan, 'count-again').startOn.slice(0, 7)).toBe('2028-05');
    expect(step(plan, 'treat-chafers').startOn.slice(0, 7)).toBe('2028-07');
  });

  it('puts down no living nematodes under a hosepipe ban, and says why', () => {
    const plan = surrey({ grubsInSquare: 5, grubKind: 'legs', wateringBan: true });
    expect(stepsOf(plan)).not.toContain('treat-chafers');
    expect(plan.notDone.map(({ says }) => says).join(' ')).toMatch(/No living nematodes.*ban/);
  });

  it('names no product, defers to label and licensed person, and spares the badgers', () => {
    const plan = surrey({ grubsInSquare: 5, grubKind: 'legs' });
    expect(step(plan, 'treat-chafers').cautions).toEqual(
      expect.arrayContaining(['label-first', 'no-chemical-down-drain']),
    );
    expect(wordsOf(plan, 'treat-chafers')).toMatch(/licensed person/);
    expect(plan.cautions.map(({ line }) => line).join(' ')).toMatch(/badgers and their setts are protected/);
  });

  it('does not take turf laid four weeks ago for eaten', () => {
    const plan = surrey({ sownOn: '2027-08-08', sownAs: 'turf', grubsInSquare: 0 });
    expect(foundIn(plan)).not.toContain('root-grubs');
    expect(wordsOf(plan, 'root-turf')).toMatch(/no corner lifts/i);
  });
});

describe('over generated lawns', () => {
  it('no plan sows over, rakes, scarifies or spikes a carpet', () => {
    const carpets = anyLawn.map((lawn) => ({ ...lawn, tugTest: 'carpet' }));
    const brown = fc.constantFrom('brown-patches', 'brown-all');
    let seen = 0;
    fc.assert(
      fc.property(carpets, brown, anyToday, (lawn, lawnColour, today) => {
        const plan = planIfAny({ pack, answers: { ...lawn, lawnColour }, today, assumeAll: true });
        if (plan === undefined) return;
        seen++;
        expect(stepsOf(plan).filter((id) => TEARS_OR_SOWS.includes(id))).toEqual([]);
      }),
      { numRuns: 250, seed: 20271105 },
    );
    expect(seen).toBeGreaterThan(200);
  });
});
