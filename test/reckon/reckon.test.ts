/** Every reckoner against print, through typed text, as a person would ask it. */
import { describe, expect, it } from 'vitest';
import { RECKONERS, reckon } from '../../src/reckon/reckon.js';
import { pack } from '../planner/any-lawn.js';

const figures = (id: string): number => pack.figureById.get(id)?.typical as number;
const answer = (name: string, typed: Record<string, string>) => {
  const reckoning = reckon(name, typed, figures);
  if (!reckoning.ok) throw new Error(reckoning.problems.join(' '));
  return reckoning.result;
};

interface Check {
  readonly name: string;
  readonly typed: Record<string, string>;
  readonly value: number;
  readonly unit: string;
  /** Digits after the point that the print allows. */
  readonly digits: number;
  readonly source: string;
}

const CHECKS: readonly Check[] = [
  {
    name: 'area-offsets',
    typed: { spacingM: '10', offsetsM: '2.5,3.5,5.0,4.6,3.2,2.4,5.6,6.2,3.8,1.8,0.9', rule: 'trapezoid' },
    value: 378,
    unit: 'm2',
    digits: 6,
    source: 'solved exercise on offsets from a chain line (askfilo), trapezoidal 378.0',
  },
  {
    name: 'area-offsets',
    typed: { spacingM: '10', offsetsM: '2.5,3.5,5.0,4.6,3.2,2.4,5.6,6.2,3.8,1.8,0.9', rule: 'simpson' },
    value: 375.33,
    unit: 'm2',
    digits: 2,
    source: 'the same exercise, Simpson 375.33',
  },
  {
    name: 'area-offsets',
    typed: { distancesM: '0,10,30', offsetsM: '2,4,6', rule: 'trapezoid' },
    value: 130,
    unit: 'm2',
    digits: 9,
    source: 'by hand: 10 × 3 + 20 × 5',
  },
  {
    name: 'area-outline',
    typed: { pointsM: '3,4 5,11 12,8 9,5 5,6' },
    value: 30,
    unit: 'm2',
    digits: 9,
    source: 'Rosetta Code, shoelace formula: 30',
  },
  {
    name: 'area-triangle',
    typed: { sidesM: '3,4,5' },
    value: 6,
    unit: 'm2',
    digits: 9,
    source: 'FAO Better Farming: 3-4-5 is a right angle, half of 3 × 4',
  },
  {
    name: 'pure-live-seed',
    typed: { purityFraction: '0.95', germinationFraction: '0.85' },
    value: 0.81,
    unit: 'fraction',
    digits: 2,
    source: 'Cornell, Safe Sports Fields: 95 % and 85 % give 81 %',
  },
  {
    name: 'seed',
    typed: { areaM2: '20000 sq ft', rateGPerM2: '1 lb/1000 ft2', pureLiveFraction: '0.384' },
    value: 52.08 * 453.59237,
    unit: 'g',
    digits: -1,
    source: 'LSU AgCenter steps with 48 % and 80 %, unrounded: 52.08 lb (printed 52.6 after early rounding)',
  },
  {
    name: 'nitrogen-product',
    typed: { areaM2: '6000 sq ft', nitrogenGPerM2: '1 lb/1000 ft2', nitrogenFraction: '0.28' },
    value: 21.42 * 453.59237,
    unit: 'g',
    digits: -2,
    source: 'University of Nebraska-Lincoln Extension arithmetic: 21.42 lb of 28-3-6',
  },
  {
    name: 'label-nutrients',
    typed: { massG: '100', n: '0', p2o5: '20', k2o: '10' },
    value: 0,
    unit: 'g',
    digits: 9,
    source: 'no nitrogen in 0-20-10',
  },
  {
    name: 'lime',
    typed: { limeGPerM2: '75 lb/1000 ft2', neutralisingFraction: '80%' },
    value: 94 * 4.88243,
    unit: 'g/m2',
    digits: -1,
    source: 'Penn State: 75 lb at 80 % is 94 lb',
  },
  {
    name: 'iron-product',
    typed: { ironGPerM2: '0.2 lb/1000 ft2', salt: 'heptahydrate' },
    value: 4.86,
    unit: 'g/m2',
    digits: 2,
    source: 'iron share 20.09 % of the heptahydrate (IUPAC weights, S45 prints M 278): 0.9765 ÷ 0.2009',
  },
  {
    name: 'spray-volume',
    typed: { flowLPerMin: '0.6', speedKmPerH: '2.4', swathM: '0.75' },
    value: 200,
    unit: 'L/ha',
    digits: 6,
    source: 'Pesticidewise example: 200 L/ha at 2.4 km/h over 0.75 m',
  },
  {
    name: 'tank-loads',
    typed: { areaM2: '180', waterLPerM2: '0.1', tankL: '5', rateMlPerM2: '10' },
    value: 4,
    unit: 'loads',
    digits: 9,
    source: 'by hand: 18 L in fills of 5 L is three full and 3 L',
  },
  {
    name: 'top-dressing',
    typed: { areaM2: '150', depthMm: '6' },
    value: 900,
    unit: 'L',
    digits: 9,
    source: 'identity: 1 mm is 1 L/m2',
  },
  {
    name: 'work-rate',
    typed: { speedKmPerH: '5', widthM: '2.5', efficiencyFraction: '0.85' },
    value: 1.06,
    unit: 'ha/h',
    digits: 2,
    source: 'effective field capacity, worked row: 1.06 ha/h',
  },
  {
    name: 'vibration',
    typed: { vibrationMPerS2: '5', hours: '3' },
    value: 150,
    unit: 'points',
    digits: 9,
    source: 'HSE ready-reckoner: 5 m/s2 for 3 h is 150 points',
  },
  {
    name: 'sun',
    typed: { latitudeDeg: '-20', date: '2027-09-03' },
    value: 32.2,
    unit: 'MJ/m2/day',
    digits: 1,
    source: 'FAO-56 example 8',
  },
  {
    name: 'water-use',
    typed: { latitudeDeg: '45.72', date: '2027-07-15', tMinC: '14.8', tMaxC: '26.6' },
    value: 5.0,
    unit: 'mm/day',
    digits: 1,
    source: 'FAO-56 example 20, Hargreaves',
  },
  {
    name: 'degree-days',
    typed: { tMinC: '6,3,1,9,12', tMaxC: '18,15,9,21,24', baseC: '10' },
    value: 15,
    unit: 'C day',
    digits: 9,
    source: 'by hand: 2 + 0 + 0 + 5 + 8',
  },
  {
    name: 'soil-temperature',
    typed: {
      meanC: '10',
      amplitudeC: '8',
      depthM: '0',
      diffusivityM2PerS: '5e-7',
      dayOfYear: '15',
      coldestDay: '15',
    },
    value: 2,
    unit: 'C',
    digits: 6,
    source: 'by hand: mean less amplitude at the surface on the coldest day',
  },
  {
    name: 'germination',
    typed: { species: 'ryegrass', soilC: '13.6' },
    value: 6.39,
    unit: 'd',
    digits: 2,
    source: 'Larsen and Bibby 2005: 63.9 C day over 3.6 C, at 10 C above base',
  },
  {
    name: 'sprinkler',
    typed: { catchesMl: '47,42,45,24,13,26,33,34,27,30,40,44,32,12,12' },
    value: 0.4962039,
    unit: 'fraction',
    digits: 6,
    source: 'spreval help page: DU 49.62039 %',
  },
  {
    name: 'plug-cover',
    typed: { hits: '21', points: '50' },
    value: 0.42,
    unit: 'fraction',
    digits: 9,
    source: 'by hand: hits ÷ points',
  },
];

describe('each reckoner', () => {
  it.each(CHECKS)('$name: $source', ({ name, typed, value, unit, digits }) => {
    const result = answer(name, typed);
    expect(result.value).toBeCloseTo(value, digits);
    expect(result.unit).toBe(unit);
  });

  it('is checked at least once', () => {
    expect(
      RECKONERS.map(({ name }) => name).filter((name) => !CHECKS.some((check) => check.name === name)),
    ).toEqual([]);
  });

  it('has the names and keys of the contract', () => {
    const keys = Object.fromEntries(RECKONERS.map((each) => [each.name, each.keys.map(({ name }) => name)]));
    expect(keys).toEqual({
      'area-offsets': ['spacingM', 'distancesM', 'offsetsM', 'rule'],
      'area-outline': ['pointsM'],
      'area-triangle': ['sidesM'],
      'plug-cover': ['hits', 'points'],
      'pure-live-seed': ['purityFraction', 'germinationFraction'],
      seed: ['areaM2', 'rateGPerM2', 'pureLiveFraction'],
      'nitrogen-product': ['areaM2', 'nitrogenGPerM2', 'nitrogenFraction'],
      'label-nutrients': ['massG', 'n', 'p2o5', 'k2o'],
      lime: ['limeGPerM2', 'neutralisingFraction', 'areaM2'],
      'iron-product': ['ironGPerM2', 'salt'],
      'spray-volume': ['flowLPerMin', 'speedKmPerH', 'swathM'],
      'tank-loads': ['areaM2', 'waterLPerM2', 'tankL', 'rateMlPerM2'],
      'top-dressing': ['areaM2', 'depthMm', 'bulkDensityTPerM3'],
      'work-rate': ['speedKmPerH', 'widthM', 'efficiencyFraction', 'areaM2', 'passes'],
      vibration: ['vibrationMPerS2', 'hours'],
      sun: ['latitudeDeg', 'date'],
      'water-use': [
        'latitudeDeg',
        'date',
        'tMinC',
        'tMaxC',
        'altitudeM',
        'rhMaxFraction',
        'rhMinFraction',
        'windMPerS',
        'windHeightM',
        'sunshineH',
      ],
      'degree-days': ['tMinC', 'tMaxC', 'baseC'],
      'soil-temperature': ['meanC', 'amplitudeC', 'depthM', 'diffusivityM2PerS', 'dayOfYear', 'coldestDay'],
      germination: ['species', 'soilC'],
      sprinkler: ['catchesMl'],
    });
  });
});

describe('what comes beside the headline', () => {
  it.each<[string, Record<string, string>, string, number, number]>([
    // Penn State: 20 % P2O5 is 8.8 % P as printed (8.73 exact), 10 % K2O is 8.3 % K.
    ['label-nutrients', { massG: '100', n: '0', p2o5: '20', k2o: '10' }, 'p', 8.73, 2],
    ['label-nutrients', { massG: '100', n: '0', p2o5: '20', k2o: '10' }, 'k', 8.3, 1],
    ['tank-loads', { areaM2: '180', waterLPerM2: '0.1', tankL: '5', rateMlPerM2: '10' }, 'lastWater', 3, 6],
    [
      'tank-loads',
      { areaM2: '84', waterLPerM2: '0.1', tankL: '5', rateMlPerM2: '10' },
      'lastProduct',
      340,
      6,
    ],
    ['vibration', { vibrationMPerS2: '5', hours: '3' }, 'a8', 3.06, 2],
    // FAO-56 example 9: N 11.7 h at 20 S on 3 September.
    ['sun', { latitudeDeg: '-20', date: '2027-09-03' }, 'dayLength', 11.7, 1],
    ['top-dressing', { areaM2: '150', depthMm: '6', bulkDensityTPerM3: '1.2' }, 'mass', 1080, 6],
    [
      'work-rate',
      { speedKmPerH: '3', widthM: '0.35', efficiencyFraction: '0.6', areaM2: '300', passes: '2' },
      'hours',
      57 / 60,
      2,
    ],
  ])('%s %j: %s is %s', (name, typed, more, value, digits) => {
    expect(answer(name, typed).more?.[more]?.value).toBeCloseTo(value, digits);
  });

  it('says of iron that the label decides', () => {
    expect(answer('iron-product', { ironGPerM2: '1', salt: 'monohydrate' }).notes?.join(' ')).toMatch(
      /no instruction to dose.*label/,
    );
  });

  it('says which fall-backs and which latitude make water use rough', () => {
    const notes = answer('water-use', {
      latitudeDeg: '60.1',
      date: '2027-01-15',
      tMinC: '0',
      tMaxC: '5',
      altitudeM: '80',
      windMPerS: '4',
    }).notes?.join(' ');
    expect(notes).toMatch(/Stood in for/);
    expect(notes).toMatch(/55 degrees/);
  });
});

describe('typed values', () => {
  it.each([
    ['8000 sq ft', 743.22432],
    ['12 ft 6 in x 25 ft', 29.0322],
    ['12 x 7', 84],
    ['84', 84],
  ])('%s is an area', (areaM2, m2) => {
    expect(answer('seed', { areaM2, rateGPerM2: '1' }).value).toBeCloseTo(m2, 4);
  });

  it('takes 1,5 and 1.5 for the same', () => {
    expect(answer('top-dressing', { areaM2: '10', depthMm: '1,5' }).value).toBe(
      answer('top-dressing', { areaM2: '10', depthMm: '1.5' }).value,
    );
  });

  it.each<[string, Record<string, string>, RegExp]>([
    ['an ambiguous thousand', { areaM2: '1,234', rateGPerM2: '1' }, /1,234/],
    ['a word', { areaM2: 'big', rateGPerM2: '1' }, /"areaM2" is "big"/],
    ['a negative area', { areaM2: '-5', rateGPerM2: '1' }, /areaM2/],
  ])('refuses %s with what to type', (_, typed, says) => {
    const reckoning = reckon('seed', typed, figures);
    expect(reckoning).toMatchObject({ ok: false, kind: 'values' });
    if (!reckoning.ok) expect(reckoning.problems.join(' ')).toMatch(says);
  });

  it('asks which gallon', () => {
    const reckoning = reckon(
      'tank-loads',
      { areaM2: '84', waterLPerM2: '0.1', tankL: '2 gal', rateMlPerM2: '10' },
      figures,
    );
    expect(reckoning).toMatchObject({ ok: false, kind: 'values' });
    if (!reckoning.ok) expect(reckoning.problems.join(' ')).toMatch(/US gal.*UK gal|UK gal.*US gal/);
  });

  it('hints at a percent given as a whole number', () => {
    const reckoning = reckon(
      'nitrogen-product',
      { areaM2: '100', nitrogenGPerM2: '3', nitrogenFraction: '28' },
      figures,
    );
    expect(reckoning).toMatchObject({ ok: false, kind: 'values' });
  });
});

describe('names and keys', () => {
  it.each<[string, Record<string, string>, RegExp]>([
    ['sed', {}, /Did you mean "seed"\?/],
    ['seed', { areM2: '84', rateGPerM2: '1' }, /Did you mean "areaM2"\?[\s\S]*"areaM2" is missing/],
    ['iron-product', { ironGPerM2: '1' }, /"salt" is missing/],
  ])('%s %j is a fault of usage', (name, typed, says) => {
    const reckoning = reckon(name, typed, figures);
    expect(reckoning).toMatchObject({ ok: false, kind: 'usage' });
    if (!reckoning.ok) expect(reckoning.problems.join(' ')).toMatch(says);
  });

  it('cites only sources that the rules know', () => {
    for (const { sources } of RECKONERS)
      for (const { id } of sources) expect(pack.sourceById.has(id), id).toBe(true);
  });
});
