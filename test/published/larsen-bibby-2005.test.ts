import { describe, expect, it } from 'vitest';
import { daysToThermalTime, germinationDays, germinationPerDay } from '../../src/agronomy/germination.js';

// Source: Larsen and Bibby, 2005, Crop Science 45(5) 2030-2037, abstract: base temperature and thermal time
// to half of final germination, from 8 to 24 °C, in the relation 1 / t50 = (T - Tb) / TT50.
// One degree above the base the days are the printed thermal time itself; the relation is a straight line.
const species = [
  { name: 'perennial ryegrass', baseC: 3.6, thermalTimeCDays: 63.9 },
  { name: 'slender creeping red fescue', baseC: 2.6, thermalTimeCDays: 43.8 },
  { name: 'Kentucky bluegrass', baseC: 2.6, thermalTimeCDays: 115.6 },
];

describe.each(species)('$name, base $baseC °C, $thermalTimeCDays °C day', ({ name: _name, ...seed }) => {
  it('takes its printed thermal time in days, one degree above its base', () => {
    expect(germinationDays({ ...seed, soilC: seed.baseC + 1 })).toBeCloseTo(seed.thermalTimeCDays, 9);
  });
  it('gains the same rate for each degree', () => {
    const rate = (soilC: number) => germinationPerDay({ ...seed, soilC });
    expect(rate(12) - rate(8)).toBeCloseTo(4 / seed.thermalTimeCDays, 12);
    expect(rate(24) - rate(8)).toBeCloseTo(16 / seed.thermalTimeCDays, 12);
  });
  it('sums to the same day when each day is counted apart', () => {
    const byDay = daysToThermalTime({ ...seed, soilCOn: () => 10, limitDays: 100 });
    expect(byDay).toBeCloseTo(seed.thermalTimeCDays / (10 - seed.baseC), 9);
  });
  it('never comes at its base temperature', () => {
    expect(germinationDays({ ...seed, soilC: seed.baseC })).toBeUndefined();
  });
});

// Printed beside them: Fech, University of Nebraska, puts bluegrass (21 days) behind ryegrass (7 to 14 days).
it('bluegrass is slower than ryegrass at every temperature that was tested', () => {
  const [ryegrass, , bluegrass] = species;
  for (let soilC = 8; soilC <= 24; soilC++) {
    const fast = germinationDays({ ...(ryegrass as (typeof species)[0]), soilC }) ?? Number.NaN;
    const slow = germinationDays({ ...(bluegrass as (typeof species)[0]), soilC }) ?? Number.NaN;
    expect(slow).toBeGreaterThan(fast);
  }
});
