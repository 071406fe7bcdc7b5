import { describe, it } from 'vitest';
import {
  dailyVibrationMPerS2,
  hoursToDailyVibration,
  vibrationPoints,
} from '../../src/agronomy/vibration.js';
import { expectPrinted } from './printed.js';

// Source: HSE (UK), hand-arm vibration exposure points and calculator text; Control of Vibration at Work
// Regulations 2005: action value 2.5 m/s² A(8) is 100 points, limit 5 m/s² A(8) is 400 points.
describe('exposure points', () => {
  it.each([
    ['the action value over a day', 2.5, 8, '100'],
    ['the limit over a day', 5, 8, '400'],
    ['5 m/s² for 3 h', 5, 3, '150'],
  ] as const)('%s: %4$s', (_, vibrationMPerS2, hours, points) => {
    expectPrinted(vibrationPoints({ vibrationMPerS2, hours }), points);
  });

  // By hand from the printed 2 × v².
  it.each([
    [2.5, '12.5'],
    [3, '18'],
    [4, '32'],
    [5, '50'],
    [6, '72'],
    [7, '98'],
  ] as const)('%d m/s² makes %s points an hour', (vibrationMPerS2, points) => {
    expectPrinted(vibrationPoints({ vibrationMPerS2, hours: 1 }), points);
  });
});

describe('daily exposure', () => {
  it('is 3.06 m/s² after 3 h at 5 m/s²: over the action value and under the limit', () => {
    expectPrinted(dailyVibrationMPerS2({ spells: [{ vibrationMPerS2: 5, hours: 3 }] }), '3.06');
  });

  // By hand from 100 points ÷ (2 × v²), in whole minutes.
  it.each([
    [2.5, '480'],
    [3, '333'],
    [4, '188'],
    [5, '120'],
    [6, '83'],
    [7, '61'],
  ] as const)('%d m/s² reaches the action value in %s minutes', (vibrationMPerS2, minutes) => {
    expectPrinted(60 * hoursToDailyVibration({ vibrationMPerS2, dailyMPerS2: 2.5 }), minutes);
  });
});
