import { it } from 'vitest';
import { layerL } from '../../src/agronomy/top-dressing.js';
import { AREA_IN_M2, convert, VOLUME_IN_L } from '../../src/base/units.js';
import { expectPrinted } from './printed.js';

// Source: Cumberland County Soil and Water Conservation District (Maine), topdressing: roughly 0.75 yd³.
// Exact is 0.772, so allow 3 %.
it('a quarter inch over 1,000 ft² is roughly 0.75 yd³', () => {
  const volumeL = layerL({ areaM2: convert(AREA_IN_M2, 1000, { from: 'ft2', to: 'm2' }), depthMm: 25.4 / 4 });
  expectPrinted(convert(VOLUME_IN_L, volumeL, { from: 'L', to: 'yd3' }), '0.75', 0.03);
});
