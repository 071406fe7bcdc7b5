import { describe, expect, it } from 'vitest';
import { dayLengthH } from '../../src/agronomy/sun.js';

// Two published tables of mean day length by month, read through the tests of PyETo (Thornthwaite).
// Both print tenths of an hour and neither says how the mean of the month was taken. Tolerance: half a
// step, 0.05 h, and 0.06 h more for a different formula or day; a wrong sign or month misses by 0.5 h.
const TOLERANCE_H = 0.11;
const DAYS_IN_MONTH = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

function monthMeanH(latitudeDeg: number, month: number): number {
  const first = DAYS_IN_MONTH.slice(0, month).reduce((total, days) => total + days, 1);
  const days = Array.from({ length: DAYS_IN_MONTH[month] ?? 0 }, (_, day) => first + day);
  return days.reduce((total, dayOfYear) => total + dayLengthH({ latitudeDeg, dayOfYear }), 0) / days.length;
}

describe('mean day length of a month', () => {
  // Bautista, Bautista, Delgado-Carranza, 2009, Atmosfera 22(4), 20° N.
  const bautista = [10.9, 11.3, 11.9, 12.5, 12.9, 13.2, 13.1, 12.7, 12.1, 11.5, 11.0, 10.8];
  it.each(bautista.map((printedH, month) => ({ month, printedH })))(
    'is at 20° N in month index $month $printedH h (Bautista et al. 2009)',
    ({ month, printedH }) => {
      expect(Math.abs(monthMeanH(20, month) - printedH)).toBeLessThan(TOLERANCE_H);
    },
  );

  // Mimikou and Baltas, 2002, 46° N.
  const mimikou = [8.9, 10.1, 11.6, 13.3, 14.7, 15.5, 15.2, 13.9, 12.3, 10.7, 9.2, 8.5];
  it.each(mimikou.map((printedH, month) => ({ month, printedH })))(
    'is at 46° N in month index $month $printedH h (Mimikou and Baltas 2002)',
    ({ month, printedH }) => {
      expect(Math.abs(monthMeanH(46, month) - printedH)).toBeLessThan(TOLERANCE_H);
    },
  );
});
