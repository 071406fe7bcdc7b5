import { describe, expect, it } from 'vitest';
import { parseTemperature } from '../../../src/base/quantity/temperature.js';
import { notUnderstood, understood } from './results.js';

// Fixed points: 32 °F is 0 °C, 50 °F is 10 °C, −40 is the same on both.
describe('parseTemperature', () => {
  it.each([
    ['10', 10],
    ['10 C', 10],
    ['10°C', 10],
    ['10℃', 10],
    ['10 degrees', 10],
    ['10 deg C', 10],
    ['-2,5 °C', -2.5],
    ['32 F', 0],
    ['50°F', 10],
    ['50 degrees Fahrenheit', 10],
    ['-40 F', -40],
  ])('reads "%s" as %d °C', (typed, value) => {
    expect(understood(parseTemperature(typed)).value).toBeCloseTo(value, 10);
  });
  it('shows how it was read, below zero too', () => {
    expect(understood(parseTemperature('-2 F')).understood).toBe('-2 F = -18.9 C');
    expect(understood(parseTemperature('-2,5')).understood).toBe('-2.5 C');
  });
  it('takes a bare number on the scale it is told', () => {
    expect(understood(parseTemperature('50', 'F')).value).toBeCloseTo(10, 10);
  });
  it.each(['hot', '-300', '10 K', '10 C 5', ''])('refuses "%s"', (typed) => {
    notUnderstood(parseTemperature(typed));
  });
});
