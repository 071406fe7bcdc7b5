import { describe, it } from 'vitest';
import { testStripM } from '../../src/agronomy/spray.js';
import { AREA_IN_M2, LENGTH_IN_M } from '../../src/base/units.js';
import { expectPrinted } from './printed.js';

// Source: table of drop-spreader runs for 100 ft² in a popular book on lawn care (title as noted: "Dummies lawn
// book"). It cuts 66.67 and 33.33 off after one place: allow 0.1 %.
describe('length of a run that covers 100 ft²', () => {
  it.each([
    [1.5, '66.6'],
    [2, '50'],
    [3, '33.3'],
  ] as const)('%d ft wide: %s ft', (widthFt, printed) => {
    const lengthM = testStripM({ areaM2: 100 * AREA_IN_M2.ft2, swathM: widthFt * LENGTH_IN_M.ft });
    expectPrinted(lengthM / LENGTH_IN_M.ft, printed, 0.001);
  });
});
