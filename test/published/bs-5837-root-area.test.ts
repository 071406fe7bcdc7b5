import { describe, it } from 'vitest';
import { rootZone } from '../../src/agronomy/root-zone.js';
import { expectPrinted } from './printed.js';

// Source: BS 5837:2012, annex D, as quoted: 12 × stem diameter at 1.5 m, at most 707 m².
describe('ground to keep out of round a tree', () => {
  it('reaches 4.2 m from a stem of 35 cm', () => {
    expectPrinted(rootZone({ stemDiameterM: 0.35, multiple: 12 }).radiusM, '4.2');
  });
  it('stops at 15 m, which is 707 m², for any stem from 1.25 m up', () => {
    expectPrinted(rootZone({ stemDiameterM: 1.25, multiple: 12 }).areaM2, '707');
    expectPrinted(rootZone({ stemDiameterM: 2, multiple: 12, capM2: 707 }).radiusM, '15.0');
  });
});
