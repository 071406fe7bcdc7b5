import { describe, expect, it } from 'vitest';
import { RECKONERS } from '../../src/reckon/reckon.js';
import { CHECKS } from '../reckon/checks.js';
import { run } from './run.js';

const pairs = (typed: Readonly<Record<string, string>>): string[] =>
  Object.entries(typed).map(([key, value]) => `${key}=${value}`);

const widest = (text: string): number => Math.max(...text.split('\n').map((line) => [...line].length));

describe('reckon', () => {
  it('answers first, then shows the equation with its numbers, what was read, and the source by its title', () => {
    const { code, out, err } = run(['reckon', 'seed', 'areaM2=84', 'rateGPerM2=30', '--width', '200']);
    expect([code, err]).toEqual([0, '']);
    const lines = out.trimEnd().split('\n');
    expect(lines[0]).toBe('2520 g');
    expect(lines).toContain('Equation: mass = area × rate ÷ pure live share');
    expect(lines).toContain('Working: 84 m2 × 30 g/m2 = 2520 g');
    expect(lines).toContain('Read: areaM2 84 m2');
    expect(out).toContain('Source: Seeding rates (Safe Sports Fields). Cornell University: ');
  });

  it('shows how a value with a unit was understood', () => {
    // 8,000 × 0.09290304 m2, exact.
    const { out } = run(['reckon', 'seed', 'areaM2=8000 sq ft', 'rateGPerM2=30', '--width', '200']);
    expect(out).toContain('Read: areaM2 "8000 sq ft" as 743.224 m2');
  });

  it('means the US gallon, and says soil by the cubic foot, where US units are read', () => {
    const rates = ['areaM2=84', 'waterLPerM2=0.1', 'tankL=2 gal', 'rateMlPerM2=10', '--width', '200'];
    // 1 US gal is 3.785411784 L, exact; 1 ft3 is 28.316846592 L.
    expect(run(['reckon', 'tank-loads', ...rates, '--units', 'us']).out).toContain(
      'tankL "2 gal" as 7.57082 L',
    );
    const asked = run(['reckon', 'tank-loads', ...rates]);
    expect([asked.code, asked.err]).toEqual([
      3,
      expect.stringContaining('2 US gal (2 US gal = 7.57 L) or 2 UK gal'),
    ]);
    const soil = ['reckon', 'top-dressing', 'areaM2=84', 'depthMm=4'];
    expect(run([...soil, '--units', 'us']).out).toMatch(/^336 L \(11\.9 ft³\)\n/);
  });

  it('refuses a number that no computer holds as what it is', () => {
    const { code, err } = run(['reckon', 'seed', 'areaM2=1e400', 'rateGPerM2=30']);
    expect([code, err]).toEqual([
      3,
      '"areaM2" is "1e400". That is more than can be reckoned with. Type it again.\n',
    ]);
  });

  // One run of the program for each name; the same values are checked against print in test/reckon.
  it.each(RECKONERS.map(({ name }) => ({ name })))(
    'gives $name as JSON with a number and its unit',
    ({ name }) => {
      const check = CHECKS.find((each) => each.name === name);
      if (check === undefined) throw new Error(`${name} is not checked`);
      const { code, out, err } = run([
        'reckon',
        name,
        ...pairs(check.typed),
        '--format',
        'json',
        '--units',
        'us',
      ]);
      expect([code, err]).toEqual([0, '']);
      const result = JSON.parse(out);
      expect(result).toMatchObject({
        name,
        unit: check.unit,
        equation: expect.stringMatching(/\S/),
        working: expect.stringContaining('='),
        more: expect.any(Object),
        inputs: expect.arrayContaining([
          {
            key: expect.any(String),
            typed: expect.any(String),
            value: expect.anything(),
            unit: expect.any(String),
          },
        ]),
        sources: expect.arrayContaining([
          expect.objectContaining({
            id: expect.any(String),
            title: expect.any(String),
            publisher: expect.any(String),
            at: expect.any(String),
          }),
        ]),
        notes: expect.any(Array),
      });
      expect(result.value).toBeCloseTo(check.value, check.digits);
    },
  );

  it.each(RECKONERS.map(({ name }) => ({ name })))('writes $name within 40 columns', ({ name }) => {
    const { typed = {} } = CHECKS.find((each) => each.name === name) ?? {};
    const { code, out } = run(['reckon', name, ...pairs(typed), '--width', '40']);
    expect(code).toBe(0);
    expect(widest(out)).toBeLessThanOrEqual(40);
  });

  it('lists every name with every key, within 40 columns', () => {
    const { code, out, err } = run(['reckon', '--list', '--width', '40']);
    expect([code, err]).toEqual([0, '']);
    expect(widest(out)).toBeLessThanOrEqual(40);
    for (const { name, keys } of RECKONERS) {
      expect(out).toMatch(new RegExp(`^${name}: `, 'm'));
      for (const key of keys) expect(out).toMatch(new RegExp(`^  \\[?${key.name}\\]?: `, 'm'));
    }
  });

  it('reads numbers below 0 in key=value', () => {
    const { code, out } = run(['reckon', 'sun', 'latitudeDeg=-20', 'date=2027-09-03', '--format', 'json']);
    expect(code).toBe(0);
    // FAO-56 example 8.
    expect(JSON.parse(out).value).toBeCloseTo(32.2, 1);
  });

  // Exact by NIST Handbook 44: 453.59237 g, 28.349523125 g, 0.09290304 m2, 28.316846592 L to the cubic foot, 25.4 mm.
  it.each<[string[], string]>([
    [['seed', 'areaM2=45.359237', 'rateGPerM2=20'], '907 g (2 lb)'],
    [['seed', 'areaM2=1', 'rateGPerM2=28.349523125'], '28.3 g (1 oz)'],
    [['area-triangle', 'sidesM=3 ft,4 ft,5 ft'], '0.557 m2 (6 ft2)'],
    [['top-dressing', 'areaM2=1', 'depthMm=28.316846592'], '28.3 L (1 ft³)'],
    [['degree-days', 'tMinC=10', 'tMaxC=20', 'baseC=5'], '10 C day'],
  ])('%j with --units us begins with %s', (args, first) => {
    const { code, out } = run(['reckon', ...args, '--units', 'us']);
    expect([code, out.split('\n')[0]]).toEqual([0, first]);
    expect(run(['reckon', ...args]).out.split('\n')[0]).not.toContain('(');
  });

  it('gives water in inches too', () => {
    const args = ['reckon', 'water-use', 'latitudeDeg=45.72', 'date=2027-07-15', 'tMinC=14.8', 'tMaxC=26.6'];
    // FAO-56 example 20: 5.0 mm/day, and 5.0 ÷ 25.4 is 0.2 in.
    expect(run([...args, '--units', 'us']).out.split('\n')[0]).toMatch(
      /^5(\.0\d)? mm\/day \(0\.1[89]\d in\/day\)$/,
    );
  });

  it.each<[string[], number, RegExp]>([
    [['reckon'], 2, /takes a name/],
    [['reckon', 'sed'], 2, /Did you mean "seed"/],
    [['reckon', 'seed', 'areaM2'], 2, /no key=value/],
    [['reckon', 'seed', '=84'], 2, /no key=value/],
    [['reckon', 'seed', 'areaM2=84'], 2, /"rateGPerM2" is missing/],
    [['reckon', 'seed', 'areM2=84', 'rateGPerM2=1'], 2, /Did you mean "areaM2"/],
    [['reckon', 'seed', 'areaM2=84', 'areaM2=85', 'rateGPerM2=1'], 2, /given twice/],
    [['reckon', 'seed', '__proto__=1', 'areaM2=84', 'rateGPerM2=1'], 2, /no key "__proto__"/],
    [['reckon', 'seed', 'areaM2=-1', 'rateGPerM2=1'], 3, /must be above 0/],
    [['reckon', 'seed', 'areaM2=1,234', 'rateGPerM2=1'], 3, /more than one way/],
    [
      ['reckon', 'tank-loads', 'areaM2=84', 'waterLPerM2=0.1', 'tankL=2 gal', 'rateMlPerM2=10'],
      3,
      /US gal.*UK gal/,
    ],
    [['reckon', 'area-outline', 'pointsM=0,0 2,2 2,0 0,2'], 3, /cross/],
    [['reckon', 'germination', 'species=ryegrass', 'soilC=2'], 3, /above 3\.6/],
    [['reckon', 'seed', 'areaM2=1', 'rateGPerM2=1', '--format', 'xml'], 2, /Allowed: text, json/],
    [['reckon', 'seed', 'areaM2=1', 'rateGPerM2=1', '--units', 'imperial'], 2, /Allowed: metric, us/],
  ])('%j exits with %i', (args, code, says) => {
    const ran = run(args);
    expect([ran.code, ran.out]).toEqual([code, '']);
    expect(ran.err).toMatch(says);
  });
});
