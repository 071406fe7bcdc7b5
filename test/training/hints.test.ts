/** Hints after the commit: point, teach, tell; each rung costs once. */
import { describe, expect, it } from 'vitest';
import type { TakenHint } from '../../src/training/attempt.js';
import { amountHint, orderHint, withHint } from '../../src/training/hints.js';
import { markAttempt } from '../../src/training/marks.js';
import { perfectAttempt } from '../../src/training/perfect.js';
import { boundPairs } from '../../src/training/step-order.js';
import { byId, worked } from './book.js';

describe('a hint for an amount', () => {
  it.each(worked)('of $lesson.id tells the working on the third rung only', (each) => {
    for (const asked of each.lesson.amounts) {
      let taken: TakenHint[] = [];
      const said: string[] = [];
      for (let count = 0; count < 4; count++) {
        const hint = amountHint(each, asked, taken);
        said.push(hint.says);
        taken = withHint(taken, hint);
      }
      expect(taken.map(({ rung }) => rung)).toEqual(['point', 'teach', 'tell']);
      expect(said.slice(0, 2)).not.toContain(asked.byHand.working);
      expect(said.slice(2)).toEqual([asked.byHand.working, asked.byHand.working]);
      expect(said.join(' ')).not.toContain('{');
    }
  });
});

describe('a hint for the order', () => {
  it.each(worked)('of $lesson.id leads to every key step after those it waits for', (each) => {
    let taken: TakenHint[] = [];
    const told: string[] = [];
    for (let hint = orderHint(each, taken); hint !== undefined; hint = orderHint(each, taken)) {
      if (hint.rung === 'tell') told.push(hint.id);
      taken = withHint(taken, hint);
    }
    expect(new Set(told)).toEqual(new Set(each.lesson.expected.steps));
    for (const [first, then] of boundPairs(each.plan, told))
      expect(told.indexOf(first)).toBeLessThan(told.indexOf(then));
  });

  it('costs what the scheme says', () => {
    const each = byId('spongy-green');
    const hint = orderHint(each, []);
    expect(hint?.rung).toBe('point');
    const hints = hint === undefined ? [] : withHint([], hint);
    expect(markAttempt(each, { ...perfectAttempt(each), hints }).total).toBeCloseTo(99, 9);
  });
});
