import { describe, expect, it } from 'vitest';
import {
  netLongwaveMJPerM2,
  netRadiationMJPerM2,
  netShortwaveMJPerM2,
  soilHeatFluxBetweenMonthsMJPerM2,
  soilHeatFluxSincePreviousMonthMJPerM2,
} from '../../src/agronomy/radiation-net.js';

const evening = { tMinC: 10, tMaxC: 20, vapourPressureKPa: 1, rsMJPerM2: 20, rsoMJPerM2: 25 };

describe('net radiation', () => {
  // σ × ((293.16⁴ + 283.16⁴) ÷ 2) = 4.903e-9 × (7.3862e9 + 6.4288e9) ÷ 2 = 33.868; humidity 0.34 − 0.14 = 0.20;
  // sky 1.35 × 0.8 − 0.35 = 0.73; product 4.945.
  it('loses 4.94 MJ to the sky on a day worked out by hand', () => {
    expect(netLongwaveMJPerM2(evening)).toBeCloseTo(4.945, 2);
  });

  it('takes a measured radiation above the clear-sky one as a clear sky', () => {
    expect(netLongwaveMJPerM2({ ...evening, rsMJPerM2: 30 })).toBe(
      netLongwaveMJPerM2({ ...evening, rsMJPerM2: 25 }),
    );
  });

  it('takes a clear sky in polar night instead of dividing by nothing', () => {
    const night = netLongwaveMJPerM2({ ...evening, rsMJPerM2: 0, rsoMJPerM2: 0 });
    expect(night).toBe(netLongwaveMJPerM2({ ...evening, rsMJPerM2: 25 }));
  });

  it('never lets a dull sky warm the ground', () => {
    expect(netLongwaveMJPerM2({ ...evening, rsMJPerM2: 0 })).toBe(0);
  });

  it('keeps 77 % of the sun and is the difference of gain and loss', () => {
    expect(netShortwaveMJPerM2(100)).toBeCloseTo(77, 12);
    expect(netRadiationMJPerM2({ rnsMJPerM2: 1, rnlMJPerM2: 4 })).toBe(-3);
  });

  // 0.14 × (16.1 − 14.1) = 0.28; the same rise spread over two months each way, 0.07 × 4 = 0.28, agrees.
  it('puts heat into the soil while the months get warmer, and takes it back when they cool', () => {
    expect(soilHeatFluxSincePreviousMonthMJPerM2({ previousC: 14.1, monthC: 16.1 })).toBeCloseTo(0.28, 12);
    expect(soilHeatFluxBetweenMonthsMJPerM2({ previousC: 14.1, nextC: 18.1 })).toBeCloseTo(0.28, 12);
    expect(soilHeatFluxBetweenMonthsMJPerM2({ previousC: 12, nextC: 8 })).toBeCloseTo(-0.28, 12);
  });

  it('refuses what cannot be', () => {
    expect(() => netShortwaveMJPerM2(-1)).toThrow('rsMJPerM2');
    expect(() => netLongwaveMJPerM2({ ...evening, vapourPressureKPa: -0.1 })).toThrow('vapourPressureKPa');
    expect(() => netRadiationMJPerM2({ rnsMJPerM2: Number.NaN, rnlMJPerM2: 1 })).toThrow('rnsMJPerM2');
    expect(() => soilHeatFluxBetweenMonthsMJPerM2({ previousC: 1, nextC: Number.NaN })).toThrow('nextC');
  });
});
