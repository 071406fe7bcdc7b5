import { describe, it } from 'vitest';
import { expectPrinted } from './printed.js';
import { usGalPerAcreOf } from './us-sprayer.js';

// Source: Albany County Weed and Pest (Wyoming), sprayer calibration: gal/acre = 5940 × gal/min ÷ (mph × in)
// = 46.4 × fl oz/min ÷ (mph × in).
describe('gallons to the acre from flow, speed and width', () => {
  it('has the factor 5940 for gallons a minute', () => {
    expectPrinted(usGalPerAcreOf({ flowUsGalPerMin: 1, speedMph: 1, swathIn: 1 }), '5940');
  });
  it('has the factor 46.4 for fluid ounces a minute', () => {
    expectPrinted(usGalPerAcreOf({ flowUsGalPerMin: 1 / 128, speedMph: 1, swathIn: 1 }), '46.4');
  });
  it('is 20 for 480 fl oz a minute at 5 mph over 222 in', () => {
    expectPrinted(usGalPerAcreOf({ flowUsGalPerMin: 480 / 128, speedMph: 5, swathIn: 222 }), '20');
  });
});
