/**
 * Every sum that a plan prints, in every form it can be had in, read back as a person with a calculator would: what is
 * multiplied must come to what stands behind the "=", digit for digit; the same amount is the same number everywhere;
 * water, minutes and days agree. Unit factors: NIST Handbook 44 (2024), appendix C, exact.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { addDays, formatDay, parseIsoDate } from '../../src/base/dates.js';
import { FORMATS, rendered } from '../../src/cli/render-plan.js';
import type { Answers } from '../../src/interview/answers.js';
import type { Plan } from '../../src/planner/plan.js';
import { anyAnswers, pack, planIfAny } from './any-lawn.js';

type Units = 'metric' | 'us';
const journeys = readdirSync('transcripts-examples').filter((folder) =>
  existsSync(`transcripts-examples/${folder}/answers.json`),
);
const answersOf = (folder: string): Answers =>
  JSON.parse(readFileSync(`transcripts-examples/${folder}/answers.json`, 'utf8')).answers;
const mossy = answersOf('mossy-family-lawn');
const sized = (more: Answers): Answers => ({ ...mossy, lawnParts: 'unknown', ...more });

/** Sizes, labels and feeds whose sums do not come out even. */
const LAWNS: Readonly<Record<string, Answers>> = {
  ...Object.fromEntries(journeys.map((name) => [name, answersOf(name)])),
  'ten and a half': sized({ areaM2: 10.5 }),
  'twelve and a half': sized({ areaM2: 12.5, labelRateMlPerM2: 12.5, labelWaterLPerM2: 0.15 }),
  'of shapes': {
    ...mossy,
    lawnParts: [
      { shape: 'rectangle', lengthM: 12, widthM: 8 },
      { shape: 'circle', diameterM: 4, minus: true },
    ],
  },
  'an odd label': sized({
    areaM2: 88.5,
    labelRateMlPerM2: 15,
    labelWaterLPerM2: 0.2,
    tankL: 8,
    bareFraction: 0.137,
  }),
  'four thousand square feet': sized({ areaM2: 371.612, labelRateMlPerM2: 0.9549, tankL: 7.57 }),
  large: sized({ areaM2: 1234.56, feedFirstNumber: 7, thatchDepthMm: 8 }),
  sprinkled: sized({ areaM2: 36, watering: 'sprinkler', hoseLPerMin: 11 }),
};

const today = parseIsoDate('2027-03-13');
const planOf = (answers: Answers, units: Units): Plan | undefined =>
  planIfAny({ pack, answers, today, assumeAll: true, units });

const M2_PER_1000_FT2 = 92.90304;
/** Printed units: what measure they are of, and how many of its base unit (g, mL, m2, mm, or those to the m2). */
const UNITS: Readonly<Record<string, readonly [string, number]>> = {
  'm²': ['area', 1],
  'ft²': ['area', 0.09290304],
  g: ['mass', 1],
  kg: ['mass', 1000],
  oz: ['mass', 28.349523125],
  lb: ['mass', 453.59237],
  mL: ['volume', 1],
  L: ['volume', 1000],
  'fl oz': ['volume', 29.5735295625],
  gal: ['volume', 3785.411784],
  'ft³': ['volume', 28316.846592],
  mm: ['depth', 1],
  in: ['depth', 25.4],
  'g/m²': ['rate', 1],
  'mL/m²': ['rate', 1],
  'L/m²': ['rate', 1000],
  'lb/1000 ft²': ['rate', 453.59237 / M2_PER_1000_FT2],
  'oz/1000 ft²': ['rate', 28.349523125 / M2_PER_1000_FT2],
  'fl oz/1000 ft²': ['rate', 29.5735295625 / M2_PER_1000_FT2],
  'gal/1000 ft²': ['rate', 3785.411784 / M2_PER_1000_FT2],
  'ft³/1000 ft²': ['rate', 28316.846592 / M2_PER_1000_FT2],
};
const UNIT = Object.keys(UNITS)
  .sort((a, b) => b.length - a.length)
  .join('|');
const NUMBER = '\\d[\\d\\u00a0]*(?:\\.\\d+)?';
/** `84 m² × 10 mL/m² by your label = 840 mL (1 mm is 1 L/m²)`, as far as a bracket with a factor in it. */
const SUM = new RegExp(
  `(${NUMBER} (?:m²|ft²) [×÷] [^=\\n|]*?) = (${NUMBER}) (${UNIT})(?![\\w/²³])(?: \\(1 in on 1000 ft² is (${NUMBER}) (gal|ft³)\\))?`,
  'g',
);
const plain = (figure: string): number => Number(figure.replace(/\u00a0/g, ''));

/** What the left side comes to, in the base unit of the result. */
function worth(left: string, perInch: number | undefined): number {
  const sum = left
    // A label's own metric figure beside the US one is the same factor told twice.
    .replace(/ \(\d[\d.]* (?:mL|g)\/m²\)/g, '')
    .replace(/ (?:of nitrogen|everywhere|more where no grass stands|by your label)/g, '')
    .replace(/ % (?:nitrogen in the bag|neutralising value)/g, ' %')
    .replace(new RegExp(`(${NUMBER}) (${UNIT})(?![\\w/²³])`, 'g'), (_, figure: string, unit: string) => {
      const [measure, factor] = UNITS[unit] as readonly [string, number];
      // A layer: 1 mm on 1 m2 is 1 L; in inches by the factor that is printed beside it.
      const inches = perInch === undefined ? 1000 : perInch / M2_PER_1000_FT2 / 25.4;
      return `(${plain(figure)} * ${factor}${measure === 'depth' ? ` * ${inches}` : ''})`;
    })
    .replace(new RegExp(`(${NUMBER}) %`, 'g'), '($1 / 100)')
    .replace(/×/g, '*')
    .replace(/÷/g, '/');
  if (!/^[\d.\se()*/+-]+$/.test(sum)) throw new Error(`no arithmetic: "${left}" became "${sum}"`);
  return new Function(`return (${sum});`)() as number;
}

/** Digit for digit: to three digits, areas from 1000 on whole; what a label allows is cut after the fourth. */
function comesOut(left: string, result: string, unit: string, factor?: string, factorUnit?: string): boolean {
  const perInch =
    factor === undefined ? undefined : plain(factor) * (UNITS[factorUnit as string]?.[1] as number);
  const exact = worth(left, perInch) / (UNITS[unit]?.[1] as number);
  const dustless = Number(exact.toPrecision(12));
  const printed = plain(result);
  if (left.includes('by your label')) {
    const step = 10 ** (Math.floor(Math.log10(dustless)) - 3);
    return Math.abs(Math.floor(Number((dustless / step).toPrecision(9))) * step - printed) < step * 1e-6;
  }
  if (UNITS[unit]?.[0] === 'area' && dustless >= 1000) return Math.round(dustless) === printed;
  return Number(dustless.toPrecision(3)) === printed;
}

/** The text of each form, without its tags, folds and quotes. */
const TEXT: Readonly<Record<string, (text: string) => string>> = {
  md: (text) => text.replace(/\\([\\`*_{}[\]()#+.!~|-])/g, '$1'),
  html: (text) => text.replace(/<[^>]*>/g, ' ').replace(/&nbsp;|&#xA0;/g, '\u00a0'),
  ics: (text) =>
    text
      .replace(/\r\n /g, '')
      .replace(/\\n/g, '\n')
      .replace(/\\([,;\\])/g, '$1'),
  csv: (text) => text,
  json: (text) => text,
  svg: (text) => text,
};
const formsOf = async (plan: Plan): Promise<[string, string][]> =>
  Promise.all(
    FORMATS.map(async (format): Promise<[string, string]> => {
      const text = await rendered(plan, format);
      return [format, (TEXT[format] as (text: string) => string)(text)];
    }),
  );

const sumsIn = (text: string): string[][] => [...text.matchAll(SUM)].map((match) => [...match]);

async function expectSums(plan: Plan): Promise<void> {
  const workings = plan.steps
    .flatMap(({ amounts }) => amounts)
    .filter(({ amount }) => amount !== null)
    .map(({ working }) => working);
  for (const [format, text] of await formsOf(plan)) {
    const sums = sumsIn(text);
    for (const [whole = '', left = '', result = '', unit = '', factor, factorUnit] of sums)
      expect(comesOut(left, result, unit, factor, factorUnit), `${format}: ${whole}`).toBe(true);
    // Nothing that ought to be read back has slipped through the reader.
    if (['md', 'html', 'csv', 'json'].includes(format))
      expect(sums.length, format).toBeGreaterThanOrEqual(workings.length);
  }
}

const EACH = Object.keys(LAWNS).flatMap((name) =>
  (['metric', 'us'] as const).map((units) => [name, units] as const),
);

describe.each(EACH)('the plan of a lawn "%s" in %s units', (name, units) => {
  const plan = planOf(LAWNS[name] as Answers, units) as Plan;

  it('prints sums that multiply out in every form', async () => {
    expect(plan).toBeDefined();
    await expectSums(plan);
  });

  it('tells each amount by the same number in the list, the step, the table and the calendar', async () => {
    const forms = Object.fromEntries(await formsOf(plan));
    const lines = (forms.md as string).split('\n');
    for (const { amounts, doneOn } of plan.steps) {
      for (const { title, amount, working } of amounts) {
        if (amount === null || doneOn !== null) continue;
        const [, told = ''] = /= (.*?)(?: \(1 (?:mm|in).*\))?$/.exec(working) ?? [];
        expect(told).not.toBe('');
        expect(forms.md).toContain(`${title}: ${told}`);
        expect(forms.ics).toContain(`${title}: ${told}`);
        const [figure = ''] = told.split(' ');
        const rows = lines.filter((line) => line.startsWith(`| ${title} `));
        for (const row of rows) expect(row.split('|')[2]?.trim(), title).toBe(told);
        if (units === 'us') {
          const row = (forms.csv as string).split('\r\n').find((line) => line.includes(title));
          expect(row, title).toContain(
            `,${plain(figure)},${told.replace(/ \(.*/, '').split(' ').slice(1).join(' ')},`,
          );
        }
      }
    }
  });

  it('weighs out lots that add up to the amount', () => {
    for (const { amounts } of plan.steps)
      for (const { working, note } of amounts) {
        const lots = new RegExp(
          `lots(?:: (${NUMBER}) (${UNIT}) for each of (\\d) passes .*, and (${NUMBER}) (${UNIT}) for|(?<= (\\d) lots) of (${NUMBER}) (${UNIT}))`,
        ).exec(note ?? '');
        if (lots === null) continue;
        const [
          ,
          each = '',
          eachIn = '',
          passes = '',
          rest = '',
          restIn = '',
          count = '',
          even = '',
          evenIn = '',
        ] = lots;
        const inBase = (figure: string, unit: string): number => plain(figure) * (UNITS[unit]?.[1] as number);
        const all =
          even === ''
            ? Number(passes) * inBase(each, eachIn) + inBase(rest, restIn)
            : Number(count) * inBase(even, evenIn);
        const [, told = '', toldIn = ''] = new RegExp(`= (${NUMBER}) (${UNIT})$`).exec(working) ?? [];
        // Half a thousandth: pounds and ounces stand in one sum.
        expect(Math.abs(all / inBase(told, toldIn) - 1), `${working}. ${note}`).toBeLessThanOrEqual(0.0005);
      }
  });

  it('says nowhere "at most" beside what is bought', async () => {
    for (const [format, text] of await formsOf(plan)) {
      const shop =
        format === 'md' ? (/## Shopping list[\s\S]*?### (?:To hire|Tools)/.exec(text)?.[0] ?? '') : '';
      expect(shop).not.toMatch(/at most/i);
      if (format === 'csv') expect(text).not.toMatch(/at ?most/i);
    }
  });

  it('waters as deep, as much and as long as it says', async () => {
    const text = Object.fromEntries(await formsOf(plan)).md as string;
    const areaM2 = plan.lawn.areaM2;
    const flow = plan.answers.hoseLPerMin;
    for (const { mmPerTurn, litresPerTurn, means } of plan.watering) {
      expect(Number((areaM2 * mmPerTurn).toPrecision(6)) / litresPerTurn).toBeCloseTo(1, 2);
      if (units === 'metric') {
        const row = new RegExp(`\\| ([\\d.]+) mm, (${NUMBER}) L +\\|`).exec(
          text.split('\n').find((line) => line.includes(` ${String(mmPerTurn)} mm, `)) ?? '',
        );
        const [, mm = '', litres = ''] = row ?? [];
        expect(Number((plain(mm) * areaM2).toPrecision(3))).toBe(plain(litres));
      }
      if (means === null || typeof flow !== 'number' || means.includes('can')) continue;
      const [, h = '0', min = '0', s = '0'] =
        /^(?:(\d+) h ?)?(?:([\d.]+) min ?)?(?:(\d+) s)?/.exec(means) ?? [];
      const ranL = (Number(h) * 60 + Number(min) + Number(s) / 60) * flow;
      // Some of a sprinkler's water blows off: it says what it runs, and that holds by the figure in the rules.
      const efficiency = pack.figureById.get('sprinkler-efficiency')?.typical as number;
      const drawnL = means.includes('sprinkler') ? litresPerTurn / efficiency : litresPerTurn;
      expect(Math.abs(ranL / drawnL - 1), means).toBeLessThanOrEqual(0.05);
      const [, drawn, unit = ''] = new RegExp(`runs (${NUMBER}) (L|gal) `).exec(means) ?? [];
      expect(drawn === undefined).toBe(!means.includes('sprinkler'));
      if (drawn !== undefined)
        expect((plain(drawn) * (UNITS[unit]?.[1] as number)) / 1000 / drawnL).toBeCloseTo(1, 2);
    }
  });

  it('ends the watering on one day in table, step, drawing and calendar', async () => {
    const last = plan.watering.at(-1);
    const step = plan.steps.find(({ id }) => id === 'water-in');
    if (last === undefined || step === undefined) return;
    const forms = Object.fromEntries(await formsOf(plan));
    const day = formatDay(step.endOn).replace(/ \d{4}$/, '');
    const heading = (forms.md as string)
      .split('\n')
      .find((line) => line.startsWith('### ') && line.includes(step.title));
    expect(heading).toContain(`to ${day}`);
    expect(forms.svg).toMatch(new RegExp(`${step.title}: [^.]* to ${day}`));
    if (step.parts.length > 1) {
      expect(forms.md).toContain(`the last part is watered until ${formatDay(step.endOn)}`);
      return;
    }
    expect(last.untilOn).toBe(step.endOn);
    const events = new ICAL.Component(ICAL.parse(await rendered(plan, 'ics'))).getAllSubcomponents('vevent');
    const ends = events
      .filter((event) => String(event.getFirstPropertyValue('summary')).startsWith('Water'))
      .map((event) => String(event.getFirstPropertyValue('dtend')));
    // The end of an all-day event is the day after (RFC 5545, 3.6.1).
    expect(ends.toSorted().at(-1)).toBe(addDays(step.endOn, 1));
  });
});

describe('the loads of a tank', () => {
  it.each(Object.keys(LAWNS))('of "%s" fit, are alike, belong to a piece of lawn and add up', (name) => {
    const answers = LAWNS[name] as Answers;
    for (const units of ['metric', 'us'] as const) {
      const plan = planOf(answers, units) as Plan;
      for (const { loads, amount } of plan.steps.flatMap(({ amounts }) => amounts)) {
        if (loads.length === 0) continue;
        const tankL = answers.tankL as number;
        const total = (of: 'areaM2' | 'waterL' | 'product'): number =>
          loads.reduce((sum, load) => sum + load.count * load[of], 0);
        for (const { waterL, product } of loads) expect(waterL + product / 1000).toBeLessThanOrEqual(tankL);
        const waters = loads.map(({ waterL }) => waterL);
        expect(Math.max(...waters) - Math.min(...waters)).toBeLessThanOrEqual(0.1 + 1e-9);
        expect(total('areaM2')).toBeCloseTo(plan.lawn.areaM2, 6);
        expect(total('waterL')).toBeCloseTo(plan.lawn.areaM2 * (answers.labelWaterLPerM2 as number), 6);
        if (units === 'metric') expect(total('product')).toBeCloseTo(amount as number, 6);
        else expect(Math.abs(total('product') / (amount as number) - 1)).toBeLessThan(0.0011);
      }
    }
  });

  it('are those that one sprayer of 5 L takes for 84 m²', () => {
    // By hand: 8.4 L and 840 mL are 9.24 L, two fills; half of each is 4.2 L and 420 mL for 42 m2.
    const plan = planOf(
      sized({ areaM2: 84, labelRateMlPerM2: 10, labelWaterLPerM2: 0.1, tankL: 5 }),
      'metric',
    );
    expect(
      plan?.steps.flatMap(({ amounts }) => amounts).find(({ loads }) => loads.length > 0)?.loads,
    ).toEqual([{ count: 2, areaM2: 42, waterL: 4.2, product: 420, unit: 'mL' }]);
  });
});

describe('lots of seed and feed', () => {
  it('are told in numbers: for each pass, and for what is bare', () => {
    const plan = planOf(sized({ areaM2: 84 }), 'metric') as Plan;
    const notes = plan.steps.flatMap(({ amounts }) => amounts.map(({ note }) => note ?? '')).join(' ');
    // By hand: 84 m2 × 15 g/m2 are 1260 g in two passes of 630 g; half of 84 m2 × 15 g/m2 more are 630 g.
    expect(notes).toContain('630 g for each of 2 passes over the whole, and 630 g for');
    // 84 m2 × 2.4 g/m2 ÷ 12 % are 1680 g.
    expect(notes).toContain('2 lots of 840 g');
  });
});

describe('what the measuring leaves open', () => {
  const told = (measuredBy: string) =>
    planOf(sized({ areaM2: 84, measuredBy, labelRateMlPerM2: 10 }), 'metric') as Plan;

  it('is told once, with what to do and what it would change', async () => {
    const plan = told('paces');
    const text = (Object.fromEntries(await formsOf(plan)).md as string).split('\n## Sources')[0] as string;
    // A tenth more than 84 m2 is 92 m2: at 10 mL to the m2 920 mL.
    expect(text).toMatch(/Measure it with a tape before you pour.*If it is 92 m², you need 920 mL of/);
    expect(text.match(/\b92 m²/g)?.length).toBeLessThanOrEqual(3);
    expect(text).not.toMatch(/\b(?:924|930) mL/);
  });

  it('buys soil and seed for the largest it may be, and no product', () => {
    const [paced, taped] = [told('paces'), told('tape')];
    const bought = (plan: Plan, id: string): number =>
      plan.shopping
        .find(({ materialId }) => materialId === id)
        ?.packs.reduce((sum, { size, count }) => sum + size * count, 0) ?? Number.NaN;
    // 84 m2 by 4 mm are 336 L; a tenth more is 370 L.
    expect(bought(paced, 'topsoil')).toBeGreaterThanOrEqual(369.6);
    expect(bought(taped, 'topsoil')).toBeLessThan(369.6);
    for (const id of ['moss-product', 'starter-feed']) expect(bought(paced, id)).toBe(bought(taped, id));
    for (const plan of [paced, taped])
      expect(plan.shopping.find(({ materialId }) => materialId === 'moss-product')?.need).toMatchObject({
        amount: 840,
        toBuy: 840,
      });
  });
});

describe('any lawn', () => {
  it('prints no sum that does not multiply out', async () => {
    await fc.assert(
      fc.asyncProperty(
        anyAnswers,
        fc.constantFrom('metric' as const, 'us' as const),
        async (answers, units) => {
          const plan = planOf({ ...answers, lawnName: 'unknown' }, units);
          if (plan !== undefined) await expectSums(plan);
        },
      ),
      { numRuns: 40, seed: 12 },
    );
  });
});
