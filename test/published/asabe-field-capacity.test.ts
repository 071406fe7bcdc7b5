import { describe, it } from 'vitest';
import { workRateHaPerH } from '../../src/agronomy/labour.js';
import { AREA_IN_M2, convert, LENGTH_IN_M, SPEED_IN_KM_PER_H } from '../../src/base/units.js';
import { expectPrinted } from './printed.js';

// Source: worked rows of the ASABE field capacity formula, as printed at calculatorshub.net/agriculture.
const acresPerH = (mph: number, widthFt: number, efficiencyFraction: number) =>
  convert(
    AREA_IN_M2,
    workRateHaPerH({
      speedKmPerH: convert(SPEED_IN_KM_PER_H, mph, { from: 'mph', to: 'km/h' }),
      widthM: widthFt * LENGTH_IN_M.ft,
      efficiencyFraction,
    }),
    { from: 'ha', to: 'acre' },
  );

describe('effective field capacity', () => {
  it('is 1.06 ha/h at 5 km/h, 2.5 m and 0.85', () => {
    expectPrinted(workRateHaPerH({ speedKmPerH: 5, widthM: 2.5, efficiencyFraction: 0.85 }), '1.06');
  });
  it('is 3.64 acres an hour at 4 mph, 10 ft and 0.75', () => expectPrinted(acresPerH(4, 10, 0.75), '3.64'));
  it('is mph × ft ÷ 8.25 in acres an hour', () => expectPrinted(1 / acresPerH(1, 1, 1), '8.25'));
});
