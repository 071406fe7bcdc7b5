import { describe, expect, it } from 'vitest';
import { equalOffsetsArea, type OffsetRule } from '../../src/agronomy/area-offsets.js';
import { expectPrinted } from './printed.js';

// Source: solved chain-survey exercises. The first was printed with its answers; of the others the notes hold
// the printed offsets with answers worked out by a separate script.
const area = (spacingM: number, offsetsM: readonly number[], rule: OffsetRule) =>
  equalOffsetsArea({ spacingM, offsetsM, rule }).areaM2;

// askfilo.com, exercise on eleven offsets at 10 m; both answers printed.
describe('eleven offsets at 10 m', () => {
  const offsetsM = [2.5, 3.5, 5.0, 4.6, 3.2, 2.4, 5.6, 6.2, 3.8, 1.8, 0.9];
  it('trapezoid: 378.0 m²', () => expectPrinted(area(10, offsetsM, 'trapezoid'), '378.0'));
  it('Simpson: 375.33 m²', () => expectPrinted(area(10, offsetsM, 'simpson'), '375.33'));
});

// askfilo.com, field notes of a linear survey, seven offsets at 15 m.
describe('seven offsets at 15 m', () => {
  const offsetsM = [3.9, 4.5, 5.1, 6.5, 6.3, 5.1, 4.1];
  it('trapezoid: 472.5 m²', () => expectPrinted(area(15, offsetsM, 'trapezoid'), '472.5'));
  it('Simpson: 476.0 m²', () => expectPrinted(area(15, offsetsM, 'simpson'), '476.0'));
});

// quizall.hivanix.in, question 64713: seven strips of 30 m, an odd number; 781 is among its printed choices.
describe('eight offsets at 30 m', () => {
  const offsetsM = [0, 2.65, 3.8, 3.75, 4.65, 3.6, 5.0, 5.8];
  it('trapezoid: 790.5 m²', () => expectPrinted(area(30, offsetsM, 'trapezoid'), '790.5'));
  it('Simpson with the last strip a trapezium: 781.0 m²', () => {
    const result = equalOffsetsArea({ spacingM: 30, offsetsM, rule: 'simpson' });
    expectPrinted(result.areaM2, '781.0');
    expect(result.trapeziumStrips).toEqual([7]);
  });
});

// askfilo.com, area enclosed between chain lines: offsets left and right already added, 25 m apart.
describe('seven summed offsets at 25 m', () => {
  const offsetsM = [65.5, 57.3, 104.2, 103.8, 42.9, 47.1, 59.7];
  it('trapezoid: 10,447.5 m²', () => expectPrinted(area(25, offsetsM, 'trapezoid'), '10447.5'));
  it('Simpson: 10,435 m²', () => expectPrinted(area(25, offsetsM, 'simpson'), '10435'));
});

// askfilo.com, ten offsets at 15 m: nine strips.
describe('ten offsets at 15 m', () => {
  const offsetsM = [3.5, 4.3, 6.15, 5.25, 7.5, 8.8, 7.9, 6.4, 4.4, 3.25];
  it('trapezoid: 811.125 m²', () => expectPrinted(area(15, offsetsM, 'trapezoid'), '811.125'));
  it('Simpson with the last strip a trapezium: 807.375 m², and it says which strip', () => {
    const result = equalOffsetsArea({ spacingM: 15, offsetsM, rule: 'simpson' });
    expectPrinted(result.areaM2, '807.375');
    expect(result.trapeziumStrips).toEqual([9]);
  });
  it('walked the other way the first strip is the trapezium: 819.75 m²', () => {
    expectPrinted(area(15, [...offsetsM].reverse(), 'simpson'), '819.75');
  });
});
