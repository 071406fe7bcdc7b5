/** What may be typed for a reckoner, and what is said where it cannot be. */
import { describe, expect, it } from 'vitest';
import { answer, refusal } from './asked.js';

const load = { areaM2: '84', waterLPerM2: '0.1', tankL: '5', rateMlPerM2: '10' };

describe('typed values', () => {
  // Factors: NIST Handbook 44, appendix C; the products by hand.
  it.each<[string, Record<string, string>, string, number, number]>([
    ['seed', { areaM2: '8000 sq ft', rateGPerM2: '1' }, 'areaM2', 743.22432, 6],
    ['seed', { areaM2: '12 ft 6 in x 25 ft', rateGPerM2: '1' }, 'areaM2', 29.0322, 4],
    ['seed', { areaM2: '12 x 7', rateGPerM2: '1' }, 'areaM2', 84, 9],
    ['seed', { areaM2: '1', rateGPerM2: '0.75 lb/1000 ft2' }, 'rateGPerM2', 3.66182, 4],
    ['seed', { areaM2: '1', rateGPerM2: '1', pureLiveFraction: '80 %' }, 'pureLiveFraction', 0.8, 9],
    ['seed', { areaM2: '1', rateGPerM2: '1', pureLiveFraction: '1' }, 'pureLiveFraction', 1, 9],
    ['top-dressing', { areaM2: '10', depthMm: '1,5' }, 'depthMm', 1.5, 9],
    ['top-dressing', { areaM2: '10', depthMm: '1/4 in' }, 'depthMm', 6.35, 9],
    [
      'top-dressing',
      { areaM2: '10', depthMm: '6', bulkDensityTPerM3: '1.2 t/m3' },
      'bulkDensityTPerM3',
      1.2,
      9,
    ],
    ['tank-loads', { ...load, tankL: '2 US gal' }, 'tankL', 7.570823568, 6],
    ['tank-loads', { ...load, tankL: '2 UK gal' }, 'tankL', 9.09218, 6],
    ['tank-loads', { ...load, waterLPerM2: '100 mL/m2' }, 'waterLPerM2', 0.1, 9],
    ['label-nutrients', { massG: '25 kg', n: '15 %', p2o5: '5', k2o: '10' }, 'massG', 25_000, 6],
    ['label-nutrients', { massG: '100', n: '15 %', p2o5: '5', k2o: '10' }, 'n', 15, 9],
    [
      'spray-volume',
      { flowLPerMin: '0.6 L/min', speedKmPerH: '1 mph', swathM: '75 cm' },
      'speedKmPerH',
      1.609344,
      9,
    ],
    ['spray-volume', { flowLPerMin: '0.6 L/min', speedKmPerH: '1 m/s', swathM: '75 cm' }, 'swathM', 0.75, 9],
    ['germination', { species: 'Ryegrass', soilC: '50 F' }, 'soilC', 10, 9],
    ['water-use', { latitudeDeg: '50', date: '2027-07-01', tMinC: '-4', tMaxC: '41 F' }, 'tMaxC', 5, 9],
  ])('%s %j: %s is %d', (name, typed, key, value, digits) => {
    const input = answer(name, typed).inputs.find((each) => each.key === key);
    expect(input?.value).toBeCloseTo(value, digits);
    expect(input?.typed).toBe(typed[key]);
  });

  it.each<[string, readonly number[]]>([
    ['2.5,3.5,5.0', [2.5, 3.5, 5]],
    ['2.5, 3.5 , 5', [2.5, 3.5, 5]],
    ['2,5;3,5;5', [2.5, 3.5, 5]],
    ['1 ft, 12 in, 1 yd', [0.3048, 0.3048, 0.9144]],
  ])('offsets %s are a list', (offsetsM, values) => {
    const { inputs } = answer('area-offsets', { spacingM: '1', offsetsM, rule: 'trapezoid' });
    const read = inputs.find(({ key }) => key === 'offsetsM')?.value as number[];
    expect(read).toHaveLength(values.length);
    read.forEach((value, at) => {
      expect(value).toBeCloseTo(values[at] as number, 9);
    });
  });

  it.each<[string, string, Record<string, string>, RegExp]>([
    ['a thousand or one and a bit', 'seed', { areaM2: '1,234', rateGPerM2: '1' }, /1\.234 m2.* or 1234 m2/],
    ['a word', 'seed', { areaM2: 'big', rateGPerM2: '1' }, /"areaM2" is "big"/],
    ['nothing', 'seed', { areaM2: '', rateGPerM2: '1' }, /Nothing was typed/],
    ['which gallon', 'tank-loads', { ...load, tankL: '2 gal' }, /2 US gal .* or 2 UK gal/],
    ['a range', 'seed', { areaM2: '84', rateGPerM2: '30-40' }, /That is a range/],
    ['a hole in a list', 'sprinkler', { catchesMl: '1,,2,3,4' }, /none left out/],
    ['a word in a list', 'sprinkler', { catchesMl: '1,x,2,3' }, /At "x"/],
    ['half a corner', 'area-outline', { pointsM: '0,0 3, 3,3' }, /x,y in metres/],
    ['three numbers for a corner', 'area-outline', { pointsM: '0,0,1 3,1 3,3' }, /x,y in metres/],
    ['no such day', 'sun', { latitudeDeg: '50', date: '2027-02-30' }, /a date that exists/],
    ['no such salt', 'iron-product', { ironGPerM2: '1', salt: 'anhydrus' }, /Did you mean "anhydrous"\?/],
    ['two wrong values at once', 'seed', { areaM2: 'big', rateGPerM2: 'much' }, /"areaM2".*"rateGPerM2"/],
  ])('refuses %s and says what to type', (_, name, typed, says) => {
    expect(refusal(name, typed)).toEqual({ kind: 'values', says: expect.stringMatching(says) });
  });

  it.each<[string, Record<string, string>, RegExp]>([
    ['seed', { areaM2: '-5', rateGPerM2: '1' }, /^"areaM2" is "-5": it must be above 0\.$/],
    [
      'nitrogen-product',
      { areaM2: '100', nitrogenGPerM2: '3', nitrogenFraction: '28' },
      /28 % is written 0\.28/,
    ],
    ['area-triangle', { sidesM: '3,-4,5' }, /"sidesM" is "3,-4,5" \(-4\): it must be above 0/],
    ['area-triangle', { sidesM: '3,4' }, /\(2 of them\): it must be three lengths/],
    ['area-triangle', { sidesM: '1,2,5' }, /must close to a triangle/],
    ['area-outline', { pointsM: '0,0 2,2 2,0 0,2' }, /without crossing/],
    ['area-offsets', { distancesM: '0,9,5', offsetsM: '1,2,3', rule: 'simpson' }, /must rise along the line/],
    [
      'work-rate',
      { speedKmPerH: '3', widthM: '1', efficiencyFraction: '1', areaM2: '9', passes: '1.5' },
      /^"passes" is "1\.5": it must be a whole number/,
    ],
    [
      'label-nutrients',
      { massG: '1', n: '50', p2o5: '50', k2o: '50' },
      /n \+ p2o5 \+ k2o must be 100 or less/,
    ],
    ['lime', { limeGPerM2: '100', neutralisingFraction: '80' }, /80 % is a share of 0\.8/],
    ['vibration', { vibrationMPerS2: '5', hours: '30' }, /from 0 to 24/],
    ['sun', { latitudeDeg: '95', date: '2027-07-01' }, /from -90 to 90/],
    ['degree-days', { tMinC: '1,2', tMaxC: '5,6,7', baseC: '10' }, /as many days as tMinC/],
    [
      'soil-temperature',
      {
        meanC: '10',
        amplitudeC: '8',
        depthM: '0',
        diffusivityM2PerS: '5e-7',
        dayOfYear: '367',
        coldestDay: '15',
      },
      /from 1 to 366/,
    ],
    ['germination', { species: 'ryegrass', soilC: '3.6' }, /must be above 3\.6/],
    ['germination', { species: 'ryegrass', soilC: '32 F' }, /"32 F" \(0 C\): it must be above 3\.6/],
    ['plug-cover', { hits: '11', points: '10' }, /not be more than the 10 points/],
    ['sprinkler', { catchesMl: '1,2,3' }, /4 or more entries/],
    ['water-use', { latitudeDeg: '50', date: '2027-07-06', tMinC: '12', tMaxC: '9' }, /12 or more.*swapped/],
    [
      'water-use',
      { latitudeDeg: '50', date: '2027-07-06', tMinC: '12', tMaxC: '21', sunshineH: '20' },
      /cannot shine longer/,
    ],
  ])('%s %j is out of range, and the range is said', (name, typed, says) => {
    expect(refusal(name, typed)).toEqual({ kind: 'values', says: expect.stringMatching(says) });
  });
});

describe('names and keys', () => {
  it.each<[string, Record<string, string>, RegExp]>([
    ['sed', {}, /Did you mean "seed"\?/],
    ['constructor', {}, /nothing to reckon called "constructor"/],
    [
      'seed',
      { areM2: '84', rateGPerM2: '1' },
      /Did you mean "areaM2"\?.*Its keys: .*"areaM2" is missing: area to sow/,
    ],
    ['seed', { areaM2: '84', rateGPerM2: '1', toString: '1' }, /no key "toString"/],
    ['iron-product', { ironGPerM2: '1' }, /"salt" is missing/],
    ['area-offsets', { spacingM: '1', offsetsM: '1,2' }, /"rule" is missing/],
    ['area-offsets', { offsetsM: '1,2', rule: 'simpson' }, /Give one of these: spacingM, distancesM/],
    ['area-offsets', { spacingM: '1', distancesM: '0,1', offsetsM: '1,2', rule: 'simpson' }, /Give only one/],
    [
      'work-rate',
      { speedKmPerH: '3', widthM: '1', efficiencyFraction: '1', passes: '2' },
      /"passes" means nothing without "areaM2"/,
    ],
    [
      'water-use',
      { latitudeDeg: '50', date: '2027-07-06', tMinC: '12', tMaxC: '21', windHeightM: '10' },
      /without "windMPerS"/,
    ],
    [
      'water-use',
      { latitudeDeg: '50', date: '2027-07-06', tMinC: '12', tMaxC: '21', rhMinFraction: '0.5' },
      /without "rhMaxFraction"/,
    ],
  ])('%s %j is a fault of usage', (name, typed, says) => {
    expect(refusal(name, typed)).toEqual({ kind: 'usage', says: expect.stringMatching(says) });
  });
});
