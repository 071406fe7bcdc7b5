/** Every reckoner against print, through typed text, as a person would ask it. */
import { describe, expect, it } from 'vitest';
import { RECKONERS } from '../../src/reckon/reckon.js';
import { pack } from '../planner/any-lawn.js';
import { answer } from './asked.js';
import { CHECKS } from './checks.js';

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

  it.each(CHECKS)(
    '$name $typed has every field, with one number as value and its unit',
    ({ name, typed }) => {
      const result = answer(name, typed);
      expect(JSON.parse(JSON.stringify(result))).toEqual(result);
      expect(Object.keys(result).sort()).toEqual(
        ['name', 'value', 'unit', 'more', 'equation', 'working', 'inputs', 'sources', 'notes'].sort(),
      );
      for (const { value, unit } of [result, ...Object.values(result.more)]) {
        expect(Number.isFinite(value)).toBe(true);
        expect(unit).toMatch(/\S/);
      }
      expect(result.inputs.map((input) => [input.key, input.typed]).sort()).toEqual(
        Object.entries(typed).sort(),
      );
      for (const input of result.inputs) expect(input).toHaveProperty('unit');
      expect(result.sources.length).toBeGreaterThan(0);
      for (const { at } of result.sources) expect(at).toMatch(/\S/);
      expect(result.working).toMatch(/=/);
      expect(result.working).not.toMatch(/undefined|NaN|\[object/);
    },
  );

  it('cites only sources that the rules know', () => {
    for (const { sources } of RECKONERS)
      for (const { id } of sources) expect(pack.sourceById.has(id), id).toBe(true);
  });

  it('says of every key what it is and what is allowed', () => {
    for (const { keys } of RECKONERS)
      for (const { says, range } of keys)
        expect([says, range]).toEqual([expect.stringMatching(/\S/), expect.stringMatching(/\S/)]);
  });

  it('puts every number that was typed into the working', () => {
    expect(answer('seed', { areaM2: '1234.5', rateGPerM2: '30', pureLiveFraction: '80%' }).working).toMatch(
      /^1234\.5 m2 × 30 g\/m2 ÷ 0\.8 = /,
    );
    expect(
      answer('area-offsets', { distancesM: '0,10,30', offsetsM: '2,4,6', rule: 'trapezoid' }).working,
    ).toBe('10 × (2 + 4) ÷ 2 + 20 × (4 + 6) ÷ 2 = 130 m2');
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

describe('optional keys', () => {
  it('are those in brackets in the contract', () => {
    const optional = Object.fromEntries(
      RECKONERS.map(({ name, keys }): [string, string[]] => [
        name,
        keys.filter(({ isOptional }) => isOptional === true).map((key) => key.name),
      ]).filter(([, keys]) => keys.length > 0),
    );
    expect(optional).toEqual({
      // One of the two, never both.
      'area-offsets': ['spacingM', 'distancesM'],
      seed: ['pureLiveFraction'],
      lime: ['areaM2'],
      'top-dressing': ['bulkDensityTPerM3'],
      'work-rate': ['areaM2', 'passes'],
      'water-use': ['altitudeM', 'rhMaxFraction', 'rhMinFraction', 'windMPerS', 'windHeightM', 'sunshineH'],
    });
  });
});

describe('what comes beside the headline', () => {
  it.each<[string, Record<string, string>, string, number, number]>([
    // Penn State: 20 % P2O5 is 8.8 % P as printed (8.73 exact), 10 % K2O is 8.3 % K.
    ['label-nutrients', { massG: '100', n: '0', p2o5: '20', k2o: '10' }, 'p', 8.73, 2],
    ['label-nutrients', { massG: '100', n: '0', p2o5: '20', k2o: '10' }, 'k', 8.3, 1],
    // By hand: 18 L and 1.8 L in four fills of 5 L are 4.5 L and 450 mL each.
    ['tank-loads', { areaM2: '180', waterLPerM2: '0.1', tankL: '5', rateMlPerM2: '10' }, 'lastWater', 4.5, 6],
    [
      'tank-loads',
      { areaM2: '84', waterLPerM2: '0.1', tankL: '5', rateMlPerM2: '10' },
      'lastProduct',
      420,
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
    // Newcombe 1998, table I, method 3 (from memory): 15 in 148 is 0.0624 to 0.1605, 81 in 263 is 0.2553 to 0.3662.
    ['plug-cover', { hits: '15', points: '148' }, 'low', 0.0624, 4],
    ['plug-cover', { hits: '15', points: '148' }, 'high', 0.1605, 4],
    ['plug-cover', { hits: '81', points: '263' }, 'low', 0.2553, 4],
    ['plug-cover', { hits: '81', points: '263' }, 'high', 0.3662, 4],
    // By hand: mean 2.5, deviations 1.5 + 0.5 + 0.5 + 1.5, so 1 − 4 ÷ 10.
    ['sprinkler', { catchesMl: '1,2,3,4' }, 'coefficient', 0.6, 9],
    // By hand: the same rate without the area.
    ['lime', { limeGPerM2: '100', neutralisingFraction: '80%', areaM2: '84' }, 'rate', 125, 9],
    // IUPAC weights by hand: 55.845 ÷ 278.006.
    ['iron-product', { ironGPerM2: '1', salt: 'heptahydrate' }, 'ironShare', 0.20088, 5],
    [
      'tank-loads',
      { areaM2: '84', waterLPerM2: '0.1', tankL: '5', rateMlPerM2: '10' },
      'firstProduct',
      420,
      6,
    ],
    // By hand: 10 L and 1 L in three fills of 5 L; 3.4 + 3.3 + 3.3 L are 10 L.
    ['tank-loads', { areaM2: '100', waterLPerM2: '0.1', tankL: '5', rateMlPerM2: '10' }, 'lastWater', 3.3, 9],
    // HSE: the action and limit values as A(8).
    ['vibration', { vibrationMPerS2: '2.5', hours: '8' }, 'a8', 2.5, 9],
    ['vibration', { vibrationMPerS2: '5', hours: '8' }, 'a8', 5, 9],
  ])('%s %j: %s is %s', (name, typed, more, value, digits) => {
    expect(answer(name, typed).more?.[more]?.value).toBeCloseTo(value, digits);
  });

  it('says of iron that the label decides', () => {
    for (const salt of ['heptahydrate', 'monohydrate', 'anhydrous']) {
      const notes = answer('iron-product', { ironGPerM2: '1', salt }).notes.join(' ');
      expect(notes).toMatch(/no instruction to dose.*label decides/);
    }
  });

  it('says of tank loads that the rates come off the label', () => {
    const typed = { areaM2: '84', waterLPerM2: '0.1', tankL: '5', rateMlPerM2: '10' };
    expect(answer('tank-loads', typed).notes.join(' ')).toMatch(/rates come off the product's own label/);
  });

  it('names the strip that was taken as a trapezium: the seventh of seven, the last', () => {
    const offsetsM = '0,2.65,3.80,3.75,4.65,3.60,5.00,5.80';
    const notes = (rule: string) => answer('area-offsets', { spacingM: '30', offsetsM, rule }).notes;
    expect(notes('simpson').join(' ')).toMatch(/Taken as a trapezium: strip 7,/);
    expect(notes('trapezoid')).toEqual([]);
  });

  const winterDay = { latitudeDeg: '60.1', date: '2027-01-15', tMinC: '0', tMaxC: '5' };
  const caution = /do not hold beyond 55 degrees in winter/;

  it('says in words what stood in for weather that was not given', () => {
    const notes = answer('water-use', { ...winterDay, windMPerS: '4' }).notes.join(' ');
    expect(notes).toMatch(/Stood in for.*sea level; .*dew point; .*taken as 2 m; sunshine/);
    const given = {
      altitudeM: '80',
      rhMaxFraction: '0.9',
      rhMinFraction: '0.5',
      windMPerS: '4',
      windHeightM: '2',
    };
    expect(answer('water-use', { ...winterDay, ...given, sunshineH: '1' }).notes.join(' ')).not.toMatch(
      /Stood in/,
    );
  });

  it('warns beyond 55 degrees in winter, on either half of the earth, and not in summer', () => {
    expect(answer('water-use', winterDay).notes.join(' ')).toMatch(caution);
    expect(answer('sun', { latitudeDeg: '60', date: '2027-12-01' }).notes.join(' ')).toMatch(caution);
    expect(answer('sun', { latitudeDeg: '-60', date: '2027-07-01' }).notes.join(' ')).toMatch(caution);
    expect(answer('sun', { latitudeDeg: '60', date: '2027-07-01' }).notes).toEqual([]);
    expect(answer('sun', { latitudeDeg: '55', date: '2027-12-01' }).notes).toEqual([]);
  });

  it('stretches the dish days for the field by the figure of the rules, and calls that an assumption', () => {
    for (const species of ['ryegrass', 'fescue', 'meadow-grass']) {
      const { value, more, notes } = answer('germination', { species, soilC: '12' });
      expect(more.dish?.value).toBe(value);
      // Lincoln University 1996: ryegrass took 15.5 days; at 12 C the dish needs 63.9 ÷ 8.4 = 7.6, so about twice.
      expect((more.field?.value as number) / value).toBeCloseTo(15.5 / 7.6, 0);
      expect(notes.join(' ')).toMatch(/an assumption: ryegrass took 15\.5 days/);
      if (species !== 'ryegrass') expect(notes.join(' ')).toMatch(/stretches alike is assumed/);
    }
  });

  it('says so beyond the 8 to 24 C that were tested', () => {
    const notes = (soilC: string) => answer('germination', { species: 'ryegrass', soilC }).notes.join(' ');
    expect(notes('6')).toMatch(/Beyond what was tested, 8 to 24 C/);
    expect(notes('30')).toMatch(/Beyond what was tested/);
    expect(notes('8')).not.toMatch(/Beyond/);
  });

  it.each([
    ['2', /^Under the action value/],
    ['8', /^At or over the action value, under the limit/],
    ['24', /^At or over the action value, under the limit/],
  ])('places 2.5 m/s2 for %s h between the action and limit values of the law', (hours, says) => {
    expect(answer('vibration', { vibrationMPerS2: '2.5', hours }).notes[0]).toMatch(says);
  });

  it('places 5 m/s2 at the limit after 8 h and over it after 9', () => {
    const note = (hours: string) => answer('vibration', { vibrationMPerS2: '5', hours }).notes[0];
    expect(note('8')).toMatch(/^At the limit value/);
    expect(note('9')).toMatch(/^Over the limit value/);
  });
});
