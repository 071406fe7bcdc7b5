/**
 * A drill for a trainee who works in US units: told, typed, marked and explained in them.
 * Factors: NIST Handbook 44 (2024), appendix C, exact: 0.3048 m, 453.592 37 g, 3.785 411 784 L, 29.573 529 562 5 mL.
 */
import { describe, expect, it } from 'vitest';
import { debriefOf } from '../../src/document/debrief.js';
import { handoutOf, keyOf } from '../../src/document/handout.js';
import { markdownOf } from '../../src/document/markdown.js';
import { markAmount } from '../../src/training/amounts.js';
import { freshAttempt } from '../../src/training/attempt.js';
import { amountHint } from '../../src/training/hints.js';
import { whatIsSeen } from '../../src/training/looks.js';
import { markAttempt } from '../../src/training/marks.js';
import { perfectAttempt } from '../../src/training/perfect.js';
import { readAmount } from '../../src/training/read-amount.js';
import { bareUnit, type RightAmount, rightAmount } from '../../src/training/right-amount.js';
import { suppose } from '../../src/training/suppose.js';
import { type WorkedCase, workOut } from '../../src/training/worked-case.js';
import { pack } from '../planner/any-lawn.js';
import { book, worked as inMetric } from './book.js';

const worked = book.cases.map((lesson) => workOut(lesson, pack, book.marking, 'us'));
const cases = worked.map((each, index) => ({
  id: each.lesson.id,
  each,
  metric: inMetric[index] as WorkedCase,
}));
const byId = (id: string): WorkedCase => worked.find(({ lesson }) => lesson.id === id) as WorkedCase;

const right = (unit: string, value: number, loose = false): RightAmount => ({
  value,
  unit,
  loose,
  range: null,
  working: '',
  isLabelled: false,
});

/** A metric measure, but for one in brackets behind its US reading, as a label has it. */
const METRIC = /\d[\s\u00a0](?:mm|cm|m|km|m2|m²|g|kg|mL|L|g\/m²|mL\/m²|L\/m²)(?![\w²/])/;
const withoutBrackets = (text: string): string => text.replace(/\([^()]*\)/g, '');

describe('a drill in US units', () => {
  it.each(cases)('$id tells no metric measure and leaves no braces', ({ each }) => {
    const attempt = perfectAttempt(each);
    const told = [
      ...each.lesson.story,
      ...each.looks.map((question) => whatIsSeen(each, question)),
      ...[handoutOf(each), keyOf(each), debriefOf(each, attempt, markAttempt(each, attempt))].map(markdownOf),
    ];
    for (const text of told) {
      expect(text).not.toMatch(/[{}]/);
      const where = METRIC.exec(withoutBrackets(text))?.index ?? -1;
      // Where a working turns a metric figure into inches it says so.
      const around = withoutBrackets(text).slice(Math.max(0, where - 30), where + 40);
      if (where >= 0) expect(around).toMatch(/13 mm is 0\.512 in|5 cm is 1\.97 in/);
    }
  });

  it.each(cases)('$id says the same in metric as it is written, without braces', ({ metric }) => {
    expect(JSON.stringify({ ...metric.lesson, answers: {} })).not.toMatch(/\{\d/);
  });

  it.each(cases.filter(({ each }) => each.lesson.amounts.length > 0))(
    '$id has workings whose own result is marked right',
    ({ each, metric }) => {
      for (const [index, asked] of each.lesson.amounts.entries()) {
        const amount = rightAmount(each, asked) as RightAmount;
        const results =
          asked.byHand.working.match(
            /\d[\d.\u00a0]*[\s\u00a0](?:ft²|ft³|fl oz|gal|lb|oz|days)|(?:\d+[\s\u00a0])?\d+\/\d+[\s\u00a0]in\b/g,
          ) ?? [];
        const marks = results.map((text) => {
          const read = readAmount(
            (amount.unit === 'mm'
              ? text.replace(/\u00a0/g, ' ')
              : text.replace(/(\d)\u00a0(\d)/g, '$1$2')
            ).replace(/²|³/, (power) => (power === '²' ? '2' : '3')),
            amount,
            'us',
          );
          return read.ok ? markAmount(each, asked, read.value).mark : 0;
        });
        // Counts, minutes and waits say the same in all units.
        if (['loads', 'd', 'min', 'each'].includes(amount.unit)) {
          const same = metric.lesson.amounts[index];
          const { working } = asked.byHand;
          const isSaid =
            working === same?.byHand.working || working.includes(String(Math.round(amount.value)));
          expect(isSaid || amount.unit === 'loads', working).toBe(true);
        } else expect(marks, asked.byHand.working).toContain(1);
      }
    },
  );

  it.each(cases)('$id gives one who is right the same marks as in metric', ({ each, metric }) => {
    expect(markAttempt(each, perfectAttempt(each)).total).toBeCloseTo(
      markAttempt(metric, perfectAttempt(metric)).total,
      6,
    );
  });
});

describe('an amount typed by a US trainee', () => {
  it.each([
    ['898', right('m2', 83.4), 898 * 0.3048 ** 2, '898 ft²'],
    ['40 x 25', right('m2', 83.4), 1000 * 0.3048 ** 2, '1000 ft² (40 ft x 25 ft)'],
    ['84 m2', right('m2', 83.4), 84, '904 ft² (84 m2)'],
    ['5', right('g', 144), (5 * 453.59237) / 16, '5 oz'],
    ['5', right('g', 1440), 5 * 453.59237, '5 lb'],
    ['0.5 lb', right('g', 144), 0.5 * 453.59237, '8 oz (0.5 lb)'],
    ['28', right('mL', 834), 28 * 29.5735295625, '28 fl oz'],
    ['2 gal', right('mL', 834), 2 * 3785.411784, '2 gal'],
    ['200', right('L', 780), 200 * 3.785411784, '200 gal'],
    ['12', right('L', 340, true), 12 * 0.3048 ** 3 * 1000, '12 ft³'],
    ['2 weeks', right('d', 14), 14, '14 days'],
    ['3', right('loads', 3), 3, '3'],
  ])('%s is meant in the unit asked for', (typed, amount, value, understood) => {
    const read = readAmount(typed, amount, 'us');
    expect(read.ok).toBe(true);
    if (!read.ok) return;
    expect(read.value).toBeCloseTo(value, 6);
    expect(read.understood.replace(/\u00a0/g, ' ')).toBe(understood);
  });

  it('asks for square feet, ounces or pounds, fluid ounces or gallons, cubic feet of soil', () => {
    const units = [right('m2', 84), right('g', 90), right('g', 5100), right('mL', 834), right('mL', 9000)];
    expect(units.map((each) => bareUnit(each, 'us'))).toEqual(['ft2', 'oz', 'lb', 'fl oz', 'gal']);
    expect(
      [right('L', 3), right('L', 300, true), right('d', 14)].map((each) => bareUnit(each, 'us')),
    ).toEqual(['gal', 'ft³', 'd']);
    expect(bareUnit(right('g', 5100), 'metric')).toBe('g');
  });
});

describe('a slip of a US trainee', () => {
  const slip = (id: string, amount: string, typed: string): string | null => {
    const each = byId(id);
    const asked = each.lesson.amounts.find((one) => one.id === amount);
    if (asked === undefined) throw new Error(`no amount ${amount}`);
    const read = readAmount(typed, rightAmount(each, asked) as RightAmount, 'us');
    if (!read.ok) throw new Error(read.says);
    return markAmount(each, asked, read.value).slip;
  };

  // 12 m × 8 m less a circle 4 m across is 898 ft²; 10 mL/m2 is 31.4 fl oz/1000 ft²: 28.2 fl oz in all.
  it.each([
    ['area', '1033', /beds away/],
    ['area', '8083', /square yards/],
    ['area', '100', /square yards|square feet/],
    ['moss-killer', '31.4', /1000 square feet/],
    ['moss-killer', '282', /ten times/],
    ['moss-killer', '28.2 gal', /fluid ounces taken for gallons/],
    // Half of 2.2 gal is 1.1 gal, 4.4 quarts.
    ['one-load', '4.4', /quarts/],
    ['moss-wait', '2', /weeks/],
  ])('%s of %s is named', (amount, typed, says) => {
    expect(slip('spongy-green', amount, typed)).toMatch(says);
  });

  // 20 m × 9 m with a 12 % feed: 11.2 lb.
  it.each([
    ['179 lb', /ounces/],
    ['11.2 oz', /ounces/],
    ['1.35 lb', /nitrogen, not the feed/],
  ])('a feed of %s is named', (typed, says) => {
    expect(slip('thin-and-yellow', 'feed', typed)).toMatch(says);
  });

  it('of gallons is not laid at the door of one who works in litres', () => {
    const metric = inMetric.find(({ lesson }) => lesson.id === 'spongy-green') as WorkedCase;
    const asked = metric.lesson.amounts.find(({ id }) => id === 'moss-killer');
    expect(asked && markAmount(metric, asked, 834 * 128).slip).toBeNull();
  });
});

describe('help in US units', () => {
  it('teaches in feet and thousands of square feet', () => {
    const each = byId('spongy-green');
    const said = each.lesson.amounts.flatMap((asked) => {
      let { hints } = freshAttempt('whole');
      return ['point', 'teach', 'tell'].map(() => {
        const hint = amountHint(each, asked, hints);
        hints = [...hints, hint];
        return hint.says;
      });
    });
    expect(said.join('\n')).toMatch(/in feet: length times width/);
    expect(said.join('\n')).toMatch(/the rate for 1000 square feet/);
    expect(said.join('\n')).not.toMatch(/metre|litre/);
  });

  it('hears and tells a supposed answer in them', () => {
    const each = byId('spongy-green');
    expect(suppose(each, 'over', 'thatch depth 1/4')[0]).toBe('Suppose for now: thatch depth, 1/4 in.');
    expect(suppose(each, 'over', 'thatch depth 30 ft')[0]).toContain('5.9 in');
  });
});
