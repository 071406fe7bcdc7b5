/** What commonly goes wrong in the eight weeks after sowing, and when it can be met. */
import { describe, expect, it } from 'vitest';
import { troublesOn } from '../../src/planner/troubles.js';
import { scopeFor } from '../../src/planner/working-scope.js';
import { SLOT } from '../../src/rules/slots.js';
import { pack } from '../planner/any-lawn.js';

const EIGHT_WEEKS_IN_DAYS = 8 * 7;
const scopeWith = (answers: Record<string, boolean>) =>
  scopeFor({ pack, answers, today: '2027-03-13' as never, assume: 'nothing' });
const idsOn = (days: number, answers: Record<string, boolean> = {}): string[] =>
  troublesOn(pack, scopeWith(answers), days).map(({ id }) => id);

describe('the troubles', () => {
  it('cover each thing that the trade meets after sowing', () => {
    // Common practice, no source: the list that an old hand is asked about.
    const wanted =
      'nothing-up patchy washed birds slugs-or-damping-off weeds-come-up crust pulled-by-mower frost dog-patches-new too-dry';
    expect(pack.troubles.map(({ id }) => id)).toEqual(expect.arrayContaining(wanted.split(' ')));
  });

  it.each(pack.troubles)(
    '$id lies inside eight weeks, names tests by hand, and says what it rests on',
    (trouble) => {
      expect(trouble.toDay).toBeLessThanOrEqual(EIGHT_WEEKS_IN_DAYS);
      if (trouble.basis === 'published') expect(trouble.sources.length).toBeGreaterThan(0);
      const texts = [trouble.sees, trouble.normal, ...trouble.causes.flatMap((each) => Object.values(each))];
      for (const text of texts) {
        expect(text.replace(SLOT, ''), text).not.toMatch(/\d|!/);
      }
    },
  );

  it('are offered from their first day to their last, and on no other', () => {
    for (const { id, fromDay, toDay } of pack.troubles) {
      expect(idsOn(fromDay, { dog: true })).toContain(id);
      expect(idsOn(toDay, { dog: true })).toContain(id);
      expect(idsOn(fromDay - 1, { dog: true })).not.toContain(id);
      expect(idsOn(toDay + 1, { dog: true })).not.toContain(id);
    }
  });

  it('leave the dog out where there is none, and keep it where nobody knows', () => {
    expect(idsOn(20, { dog: false })).not.toContain('dog-patches-new');
    expect(idsOn(20)).toContain('dog-patches-new');
  });
});
