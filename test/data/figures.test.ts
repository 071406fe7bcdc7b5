import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { PROGRAM_SIDE } from '../../src/cli/program-side.js';
import type { Figure } from '../../src/rules/schema.js';
import { figureSchema, sourceSchema } from '../../src/rules/schema.js';
import { PRINTED } from './printed-figures.js';

const folder = new URL('../../rules/', import.meta.url);
const read = (path: string): unknown => JSON.parse(readFileSync(new URL(path, folder), 'utf8'));

const files = readdirSync(new URL('figures/', folder)).filter((name) => name.endsWith('.json'));
const figures = files.flatMap((name) => z.array(figureSchema).parse(read(`figures/${name}`)));
const sources = z.array(sourceSchema).parse(read('sources.json'));
const standingOf = new Map(sources.map(({ id, standing }) => [id, standing]));

const namesOf = (faulty: readonly Figure[]) => faulty.map(({ id }) => id);
const repeated = (ids: readonly string[]) => ids.filter((id, index) => ids.indexOf(id) !== index);

const UNITS = new Set(
  [
    'mm, cm, m, km, m2, g/m2, L/m2, mL/m2, L, L/min, h, h/d, d, weeks, months, fraction, percent, times, C, C d',
    'km/h, m2/h, t/m3, m3/m3, g/L, count/m2, count, seeds/g, seeds/m2, points, deg, kg, s, mm/h, mm/d, pH',
    'mm/s, kPa, dB, min, min/L',
  ].flatMap((line) => line.split(', ')),
);

// Ends of ids that promise a unit. The first that fits decides, so the longer stand before the shorter.
const UNIT_BY_ENDING: readonly (readonly [string, string])[] = [
  ['-g-per-m2', 'g/m2'],
  ['-ml-per-m2', 'mL/m2'],
  ['-l-per-m2', 'L/m2'],
  ['-holes-per-m2', 'count/m2'],
  ['-m2-per-h', 'm2/h'],
  ['-mm-per-day', 'mm/d'],
  ['-mm-per-h', 'mm/h'],
  ['-mm-per-s', 'mm/s'],
  ['-l-per-min', 'L/min'],
  ['-km-h', 'km/h'],
  ['-percent', 'percent'],
  ['-fraction', 'fraction'],
  ['-seconds', 's'],
  ['-action-points', 'points'],
  ['-limit-points', 'points'],
  ['-months', 'months'],
  ['-weeks', 'weeks'],
  ['-hours', 'h'],
  ['-days', 'd'],
  ['-deg', 'deg'],
  ['-kpa', 'kPa'],
  ['-kg', 'kg'],
  ['-db', 'dB'],
  ['-mm', 'mm'],
  ['-km', 'km'],
  ['-cm', 'cm'],
  ['-m', 'm'],
  ['-l', 'L'],
  ['-c', 'C'],
  ['-h', 'h'],
];
const promisedUnit = (id: string) => UNIT_BY_ENDING.find(([ending]) => id.endsWith(ending))?.[1];

const decimalsOf = (value: number) => String(value).split('.')[1]?.length ?? 0;
const roundLike = (value: number, model: number) => Number(value.toFixed(decimalsOf(model)));

describe('the figures', () => {
  it('are many enough to plan with, and so are the sources', () => {
    expect(figures.length).toBeGreaterThanOrEqual(120);
    expect(sources.length).toBeGreaterThanOrEqual(40);
  });

  it('have each id once over all files, and so have the sources', () => {
    expect(repeated(figures.map(({ id }) => id))).toEqual([]);
    expect(repeated(sources.map(({ id }) => id))).toEqual([]);
  });

  it('cite only publications on the list, each once', () => {
    const cited = figures.flatMap((figure) => figure.sources.map((source) => `${figure.id} ${source.id}`));
    expect(cited.filter((pair) => !standingOf.has(pair.split(' ')[1] ?? ''))).toEqual([]);
    expect(repeated(cited)).toEqual([]);
  });

  it('spell their units in one way only', () => {
    expect(namesOf(figures.filter(({ unit }) => !UNITS.has(unit)))).toEqual([]);
  });

  it('carry the unit that the end of their id promises', () => {
    const wrong = figures.filter(({ id, unit }) => (promisedUnit(id) ?? unit) !== unit);
    expect(namesOf(wrong)).toEqual([]);
    expect(figures.filter(({ id }) => promisedUnit(id) !== undefined).length).toBeGreaterThan(60);
  });

  it('are not called published on the word of general pages alone', () => {
    const published = figures.filter(({ basis }) => basis === 'published');
    const weak = published.filter((figure) =>
      figure.sources.every((source) => standingOf.get(source.id) === 'general'),
    );
    expect(namesOf(weak)).toEqual([]);
    expect(published.length).toBeGreaterThan(100);
  });

  it('say why, where no publication stands behind them', () => {
    const silent = figures.filter(({ basis, note }) => basis !== 'published' && note === undefined);
    expect(namesOf(silent)).toEqual([]);
  });

  it('keep fractions between 0 and 1', () => {
    const beyond = figures.filter(
      ({ unit, range }) => unit === 'fraction' && (range.min < 0 || range.max > 1),
    );
    expect(namesOf(beyond)).toEqual([]);
  });

  it('mark doses of moss killer and wetting agent as for budgeting only, with the label above them', () => {
    const doses = figures.filter(({ id }) => /^(iron|wetting-agent)-.*per-m2$/.test(id));
    expect(doses).toHaveLength(2);
    for (const { note } of doses) expect(note).toMatch(/budgeting only.*label/i);
  });

  it('keep the bands of the answers in order', () => {
    const typical = (id: string) => figures.find((figure) => figure.id === id)?.typical ?? Number.NaN;
    const rising = (...ids: string[]) =>
      ids.map(typical).every((v, i, all) => i === 0 || (all[i - 1] ?? v) < v);
    expect(rising('cover-overseed-from', 'cover-renovate-from', 'cover-start-again-from')).toBe(true);
    expect(rising('thatch-useful-max', 'thatch-excess-from', 'thatch-two-stage-from')).toBe(true);
    expect(rising('thatch-if-firm', 'thatch-if-springy', 'thatch-if-very-springy')).toBe(true);
    expect(rising('sun-none-below', 'sun-weak-below', 'sun-good-from')).toBe(true);
    expect(rising('drought-stress-days-from', 'drought-days-from')).toBe(true);
    expect(rising('infiltration-clay', 'infiltration-clay-loam', 'infiltration-loam')).toBe(true);
    expect(rising('wind-spray-min-km-h', 'wind-spray-max-km-h', 'wind-stop-km-h')).toBe(true);
  });
});

describe('figures that the program reads by itself', () => {
  it('are all listed in program-side.ts for the check of the rules, and no others', () => {
    const src = readdirSync('src', { recursive: true, encoding: 'utf8' })
      .filter((file) => file.endsWith('.ts'))
      .map((file) => readFileSync(`src/${file}`, 'utf8'))
      .join('\n');
    const read = /(?:scope\('figures\.|figures\('|figureById\.get\(')([a-z0-9-]+)'/g;
    const named = [...new Set([...src.matchAll(read)].map(([, id]) => id))];
    expect([...PROGRAM_SIDE.figures].sort()).toEqual(named.sort());
  });
});

describe('what the publications print, in their own units', () => {
  it.each(PRINTED)('$figure $part: $source, $place', ({ figure: id, part, source, printed, unitFactor }) => {
    const figure = figures.find((one) => one.id === id);
    if (figure === undefined) throw new Error(`no figure ${id}`);
    const held = part === 'typical' ? figure.typical : figure.range[part];
    expect(held).toBe(roundLike(printed * unitFactor, held));
    expect(figure.sources.map((cited) => cited.id)).toContain(source);
  });
});
