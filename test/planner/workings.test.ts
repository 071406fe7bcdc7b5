/**
 * Every working in a plan, read back as arithmetic by a small calculator of its own: what stands left of the
 * last "=" must come to what stands right of it, in metric and in US units, and no metric unit is left in a US plan.
 * Unit factors: NIST Handbook 44 (2024), appendix C, exact.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseIsoDate } from '../../src/base/dates.js';
import { documentOf } from '../../src/document/from-plan.js';
import { markdownOf } from '../../src/document/markdown.js';
import { assemblePlan } from '../../src/planner/assemble-plan.js';
import type { Plan } from '../../src/planner/plan.js';
import { times } from '../depth.js';
import { anyAnswers, anyToday, pack, planIfAny } from './any-lawn.js';

const planOf = (folder: string, units: 'metric' | 'us'): Plan => {
  const read = (name: string) => JSON.parse(readFileSync(`transcripts-examples/${folder}/${name}`, 'utf8'));
  const today = parseIsoDate(read('journey.json').today);
  return assemblePlan({ pack, answers: read('answers.json').answers, today, assumeAll: true, units });
};
const journeys = readdirSync('transcripts-examples').filter((folder) =>
  existsSync(`transcripts-examples/${folder}/answers.json`),
);

const M2_PER_1000_FT2 = 92.90304;
/** Each printed unit in g, mL, L or m2, or in one of them to the square metre. */
const FACTORS: readonly [RegExp, string][] = [
  [/fl oz\/1000 ft²/g, `* (29.5735295625 / ${M2_PER_1000_FT2})`],
  [/ft³\/1000 ft²/g, `* (28.316846592 / ${M2_PER_1000_FT2})`],
  [/gal\/1000 ft²/g, `* (3.785411784 / ${M2_PER_1000_FT2})`],
  [/lb\/1000 ft²/g, `* (453.59237 / ${M2_PER_1000_FT2})`],
  [/(?:g|mL|L)\/m²/g, ''],
  [/ft²/g, '* 0.09290304'],
  [/m²/g, ''],
  [/(\d+) % (?=×)/g, '($1 / 100) '],
  [/fl oz/g, '* 29.5735295625'],
  [/\boz/g, '* 28.349523125'],
  [/\blb/g, '* 453.59237'],
  [/ft³/g, '* 28.316846592'],
  [/\bin\b(?=$| )/g, '* 25.4'],
  [/\bmm\b/g, ''],
  [/\bkg\b/g, '* 1000'],
  [/\b(?:mL|L|g)\b/g, ''],
];

/** The value of printed arithmetic in base units; throws on anything that is no arithmetic. */
function worth(text: string, unit: string): number {
  let sum = text
    .replace(/\u00a0/g, '')
    .replace(/\(\d[\d.]* (?:mL|g|L)(?:\/m²)?\)/g, '')
    .replace(/ (?:of nitrogen|everywhere|more where no grass stands|by your label)/g, '')
    .replace(/(\d+(?:\.\d+)?) % (?:nitrogen in the bag|neutralising value)/g, '($1 / 100)');
  // Litres of a pourable amount: mL and L and gallons are told in mL there.
  if (unit === 'mL') sum = sum.replace(/\bgal\b(?!\/)/g, '* 3785.411784').replace(/(\d) L$/g, '$1 * 1000');
  else sum = sum.replace(/\bgal\b(?!\/)/g, '* 3.785411784');
  for (const [printed, factor] of FACTORS) sum = sum.replace(printed, factor);
  sum = sum
    .replace(/×/g, '*')
    .replace(/÷/g, '/')
    .replace(/(\d)\s*$/, '$1');
  if (!/^[\d.\s()*/+-]+$/.test(sum)) throw new Error(`no arithmetic: "${text}" became "${sum}"`);
  return new Function(`return (${sum});`)() as number;
}

describe.each(journeys.flatMap((name) => (['metric', 'us'] as const).map((units) => [name, units] as const)))(
  'the plan of %s in %s units',
  (name, units) => {
    const plan = planOf(name, units);
    const amounts = plan.steps.flatMap((step) => step.amounts).filter(({ amount }) => amount !== null);

    it('shows a working for every amount, and it comes out by hand', () => {
      for (const { working, unit, amount } of amounts) {
        const [left = '', right = ''] = working.replace(/ \(1 (?:mm|in).*\)$/, '').split(' = ');
        const [by, printed] = [worth(left, unit), worth(right, unit)];
        // Up to four numbers of three digits each were rounded for the eye: half a hundredth each.
        expect(Math.abs(by / printed - 1), working).toBeLessThan(0.02);
        expect(Math.abs((amount as number) / printed - 1), working).toBeLessThan(0.006);
      }
    });

    it('keeps every amount inside its range', () => {
      for (const { amount, range } of amounts) {
        expect(range?.min).toBeLessThanOrEqual(amount as number);
        expect(range?.max).toBeGreaterThanOrEqual(amount as number);
      }
    });
  },
);

describe('a plan in US units', () => {
  /** What keeps its metric measure: a label, a legal limit, and the words of a source, as printed. */
  const AS_PRINTED = / \(\d[\d.\u00a0]* (?:mL|g|kg|L|m|m²)(?:\/m²)?\)/g;
  const METRIC =
    /\d[\d\u00a0]* ?(?:mm|cm|m|km|m²|m2|L|mL|kg|g|t|km\/h|°C|C)(?![\w²³])|\b(?:litre|metre|gram|kilogram)s?\b/;

  it.each(journeys)('of %s has no metric measure left but those on a label or in law', (name) => {
    const text = markdownOf(documentOf(planOf(name, 'us'))).split('\n## Sources')[0] as string;
    const left = text.split('\n').filter((line) => METRIC.test(line.replace(AS_PRINTED, '')));
    expect(left).toEqual([]);
    expect(text).toContain('ft²');
  });

  it('of any lawn has none left either', () => {
    fc.assert(
      fc.property(anyAnswers, anyToday, (answers, today) => {
        const plan = planIfAny({
          pack,
          answers: { ...answers, lawnName: 'unknown' },
          today,
          assumeAll: true,
          units: 'us',
        });
        if (plan === undefined) return;
        const text = markdownOf(documentOf(plan)).split('\n## Sources')[0] as string;
        expect(text.split('\n').filter((line) => METRIC.test(line.replace(AS_PRINTED, '')))).toEqual([]);
      }),
      { numRuns: times(40, 200) },
    );
  });

  it('differs from the metric one in words and rounding alone', () => {
    for (const name of journeys) {
      const [metric, us] = [planOf(name, 'metric'), planOf(name, 'us')];
      expect(us.steps.map(({ id, startOn, endOn }) => [id, startOn, endOn])).toEqual(
        metric.steps.map(({ id, startOn, endOn }) => [id, startOn, endOn]),
      );
      const amountsOf = (plan: Plan) =>
        plan.steps.flatMap((step) => step.amounts.map(({ amount }) => amount));
      amountsOf(metric).forEach((amount, index) => {
        const exact = amountsOf(us)[index];
        if (amount === null) expect(exact).toBeNull();
        else expect(Math.abs((exact as number) / amount - 1)).toBeLessThan(0.006);
      });
    }
  });
});
