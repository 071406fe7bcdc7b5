import { expect, it } from 'vitest';
import { meanDailyRainMm, shortfallMm } from '../../src/agronomy/rain.js';

it('a month of 62 mm over 31 days brings 2 mm a day', () => {
  expect(meanDailyRainMm({ monthlyRainMm: 62, daysInMonth: 31 })).toBe(2);
});

it('what rain does not bring is left to give, and never less than nothing', () => {
  expect(shortfallMm({ needMm: 5, rainMm: 2 })).toBe(3);
  expect(shortfallMm({ needMm: 5, rainMm: 9 })).toBe(0);
});

it('negative water and part days are refused', () => {
  expect(() => shortfallMm({ needMm: -1, rainMm: 0 })).toThrow('needMm');
  expect(() => shortfallMm({ needMm: 1, rainMm: -1 })).toThrow('rainMm');
  expect(() => meanDailyRainMm({ monthlyRainMm: 10, daysInMonth: 0 })).toThrow('daysInMonth');
  expect(() => meanDailyRainMm({ monthlyRainMm: 10, daysInMonth: 30.4 })).toThrow('daysInMonth');
});
