import { describe, expect, it } from 'vitest';
import { AREA_IN_M2, LENGTH_IN_M, MASS_IN_G, VOLUME_IN_L } from '../../src/base/units.js';

// Source: NIST Handbook 44, appendix C, and the UK Units of Measurement Regulations 1995: whole-number
// relations between units (from memory). They are exact; the tolerance is binary rounding, 1e-12.
const CUBIC_INCH_L = LENGTH_IN_M.in ** 3 * 1000;

describe('units as they are defined by one another', () => {
  it.each([
    ['12 in to the foot', LENGTH_IN_M.ft / LENGTH_IN_M.in, 12],
    ['3 ft to the yard', LENGTH_IN_M.yd / LENGTH_IN_M.ft, 3],
    ['5,280 ft to the mile', LENGTH_IN_M.mile / LENGTH_IN_M.ft, 5280],
    ['144 in² to the square foot', AREA_IN_M2.ft2 / AREA_IN_M2.in2, 144],
    ['43,560 ft² to the acre', AREA_IN_M2.acre / AREA_IN_M2.ft2, 43_560],
    ['4,840 yd² to the acre', AREA_IN_M2.acre / AREA_IN_M2.yd2, 4840],
    ['16 oz to the pound', MASS_IN_G.lb / MASS_IN_G.oz, 16],
    ['231 in³ to the US gallon', VOLUME_IN_L['US gal'] / CUBIC_INCH_L, 231],
    ['128 US fl oz to the US gallon', VOLUME_IN_L['US gal'] / VOLUME_IN_L['US fl oz'], 128],
    ['8 US pints to the US gallon', VOLUME_IN_L['US gal'] / VOLUME_IN_L['US pint'], 8],
    ['4 US quarts to the US gallon', VOLUME_IN_L['US gal'] / VOLUME_IN_L['US quart'], 4],
    ['160 UK fl oz to the UK gallon', VOLUME_IN_L['UK gal'] / VOLUME_IN_L['UK fl oz'], 160],
    ['8 UK pints to the UK gallon', VOLUME_IN_L['UK gal'] / VOLUME_IN_L['UK pint'], 8],
    ['27 ft³ to the cubic yard', VOLUME_IN_L.yd3 / VOLUME_IN_L.ft3, 27],
    ['1,728 in³ to the cubic foot', VOLUME_IN_L.ft3 / CUBIC_INCH_L, 1728],
  ])('%s', (_, ratio, defined) => {
    expect(Math.abs(ratio / defined - 1)).toBeLessThan(1e-12);
  });
});
