import { describe, it } from 'vitest';
import { pointCover } from '../../src/agronomy/cover.js';
import { expectPrinted } from './printed.js';

// Source: University of Idaho, Module 8 (Cover): the same ten pins scored in four ways.
describe('ten pins', () => {
  it.each([
    ['ground', 1, '10'],
    ['basal', 1, '10'],
    ['foliar', 4, '40'],
    ['canopy', 7, '70'],
  ] as const)('%s cover: %3$s %%', (_, hits, percent) => {
    expectPrinted(100 * pointCover({ hits, points: 10 }).fraction, percent);
  });
});
