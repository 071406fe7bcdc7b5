import { describe, it } from 'vitest';
import { guideWeightKg } from '../../src/agronomy/lifting.js';
import { expectPrinted } from './printed.js';

// Source: HSE (UK) INDG143, as reproduced: 25 kg at best for a man, less a single reduction each. Values by hand.
describe('25 kg made less', () => {
  it.each([
    ['twisting past 45 degrees', [0.1], '22.5'],
    ['twisting past 90 degrees', [0.2], '20'],
    ['one or two lifts a minute', [0.3], '17.5'],
    ['five to eight lifts a minute', [0.5], '12.5'],
    ['more than twelve lifts a minute', [0.8], '5'],
    // The leaflet gives the two alone; multiplying them is this project's choice.
    ['twisting past 45 degrees at one or two lifts a minute', [0.1, 0.3], '15.75'],
  ] as const)('by %s: %3$s kg', (_, reductions, printed) => {
    expectPrinted(guideWeightKg({ baseKg: 25, reductions }), printed);
  });
});
