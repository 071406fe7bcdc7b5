import { sprayVolumeLPerHa } from '../../src/agronomy/spray.js';
import {
  convert,
  LENGTH_IN_M,
  SPEED_IN_KM_PER_H,
  VOLUME_IN_L,
  VOLUME_RATE_IN_ML_PER_M2,
} from '../../src/base/units.js';

/** US gallons per acre for a rate in L/ha. */
export function usGalPerAcre(volumeLPerHa: number): number {
  return convert(VOLUME_RATE_IN_ML_PER_M2, volumeLPerHa, { from: 'L/ha', to: 'US gal/acre' });
}

/** US gallons per acre from the figures an American sprayer sheet starts with. */
export function usGalPerAcreOf({
  flowUsGalPerMin,
  speedMph,
  swathIn,
}: {
  readonly flowUsGalPerMin: number;
  readonly speedMph: number;
  readonly swathIn: number;
}): number {
  return usGalPerAcre(
    sprayVolumeLPerHa({
      flowLPerMin: convert(VOLUME_IN_L, flowUsGalPerMin, { from: 'US gal', to: 'L' }),
      speedKmPerH: convert(SPEED_IN_KM_PER_H, speedMph, { from: 'mph', to: 'km/h' }),
      swathM: convert(LENGTH_IN_M, swathIn, { from: 'in', to: 'm' }),
    }),
  );
}
