/**
 * Water that soil holds for roots, and how far it can be drawn down.
 *
 * Water contents are shares of the soil's volume; depths, of soil and of water, are in mm,
 * so the factor 1000 of the printed equations, which take metres, is not needed.
 *
 * @source fao-56, equations 73, 82 to 84 and 87, table 22
 */
import { requireAbove, requireAtLeast, requireBetween, requireFraction } from '../base/refuse.js';

export interface SoilStore {
  readonly fieldCapacityFraction: number;
  readonly wiltingPointFraction: number;
}

/** The limits that the source puts on the share of water a plant takes before it suffers. */
const DEPLETION_LIMITS = { min: 0.1, max: 0.8 };
/** The water use at which table 22 holds, mm/day. */
const TABLE_WATER_USE_MM = 5;

/**
 * All the water between field capacity and wilting point in the root zone.
 *
 *   TAW = (FC − WP) × root depth
 *
 * @param fieldCapacityFraction FC, m³/m³, at least WP
 * @param wiltingPointFraction WP, m³/m³
 * @param rootDepthMm depth that the roots use, mm, > 0; measured on a plug for a tired lawn
 * @returns TAW, mm
 * @throws {RangeError} when a share is outside 0 to 1, FC is below WP, or the depth is not above 0
 * @source fao-56, equation 82
 */
export function totalAvailableWaterMm(soil: SoilStore & { readonly rootDepthMm: number }): number {
  requireStore(soil);
  requireAbove('rootDepthMm', soil.rootDepthMm, 0);
  return (soil.fieldCapacityFraction - soil.wiltingPointFraction) * soil.rootDepthMm;
}

/**
 * All the water that sun and wind can take from bare soil.
 *
 *   TEW = (FC − 0.5 WP) × depth of the drying layer
 *
 * @param dryingDepthMm Ze, mm, 100 to 150
 * @returns TEW, mm
 * @throws {RangeError} when a share is outside 0 to 1, FC is below WP, or the depth is outside its range
 * @source fao-56, equation 73
 */
export function totalEvaporableWaterMm(soil: SoilStore & { readonly dryingDepthMm: number }): number {
  requireStore(soil);
  requireBetween('dryingDepthMm', soil.dryingDepthMm, { min: 100, max: 150 });
  return (soil.fieldCapacityFraction - 0.5 * soil.wiltingPointFraction) * soil.dryingDepthMm;
}

/**
 * Share of the available water that grass takes before it suffers, for the day's water use.
 *
 *   p = p(table) + 0.04 (5 − ETc), kept within 0.1 to 0.8
 *
 * @param tableFraction p of table 22, which holds at 5 mm/day, 0 to 1
 * @param turfWaterUseMm ETc, mm/day, ≥ 0
 * @returns p
 * @throws {RangeError} when an argument is outside the range above
 * @source fao-56, p. 162 and note to table 22
 */
export function depletionFraction({
  tableFraction,
  turfWaterUseMm,
}: {
  readonly tableFraction: number;
  readonly turfWaterUseMm: number;
}): number {
  requireFraction('tableFraction', tableFraction);
  requireAtLeast('turfWaterUseMm', turfWaterUseMm, 0);
  const adjusted = tableFraction + 0.04 * (TABLE_WATER_USE_MM - turfWaterUseMm);
  return Math.min(DEPLETION_LIMITS.max, Math.max(DEPLETION_LIMITS.min, adjusted));
}

/**
 * Water that grass can take before it suffers, RAW = p TAW.
 *
 * @param availableMm TAW, mm, ≥ 0
 * @param depletionFraction p, 0 to 1
 * @returns RAW, mm
 * @throws {RangeError} when an argument is outside the range above
 * @source fao-56, equation 83
 */
export function readilyAvailableWaterMm({
  availableMm,
  depletionFraction,
}: {
  readonly availableMm: number;
  readonly depletionFraction: number;
}): number {
  requireAtLeast('availableMm', availableMm, 0);
  requireFraction('depletionFraction', depletionFraction);
  return depletionFraction * availableMm;
}

/**
 * Share of its full water use that grass keeps up as the soil dries.
 *
 *   Ks = (TAW − Dr) ÷ ((1 − p) TAW) once Dr > p TAW, else 1
 *
 * @param availableMm TAW, mm, > 0
 * @param depletionMm Dr, mm below field capacity, 0 to TAW
 * @param depletionFraction p, 0 to 1
 * @returns Ks, 1 down to 0 at the wilting point
 * @throws {RangeError} when an argument is outside the range above
 * @source fao-56, equation 84
 */
export function stressCoefficient({
  availableMm,
  depletionMm,
  depletionFraction,
}: {
  readonly availableMm: number;
  readonly depletionMm: number;
  readonly depletionFraction: number;
}): number {
  requireAbove('availableMm', availableMm, 0);
  requireBetween('depletionMm', depletionMm, { min: 0, max: availableMm });
  requireFraction('depletionFraction', depletionFraction);
  if (depletionMm <= depletionFraction * availableMm) return 1;
  return (availableMm - depletionMm) / ((1 - depletionFraction) * availableMm);
}

/**
 * Water missing from the root zone, from the water content of the soil.
 *
 *   Dr = (FC − theta) × root depth, never below 0
 *
 * @param fieldCapacityFraction FC, m³/m³, 0 to 1
 * @param waterFraction theta, m³/m³, 0 to 1
 * @param rootDepthMm mm, > 0
 * @returns Dr, mm
 * @throws {RangeError} when an argument is outside the range above
 * @source fao-56, equation 87
 */
export function startingDepletionMm({
  fieldCapacityFraction,
  waterFraction,
  rootDepthMm,
}: {
  readonly fieldCapacityFraction: number;
  readonly waterFraction: number;
  readonly rootDepthMm: number;
}): number {
  requireFraction('fieldCapacityFraction', fieldCapacityFraction);
  requireFraction('waterFraction', waterFraction);
  requireAbove('rootDepthMm', rootDepthMm, 0);
  return Math.max(0, fieldCapacityFraction - waterFraction) * rootDepthMm;
}

function requireStore({ fieldCapacityFraction, wiltingPointFraction }: SoilStore): void {
  requireFraction('wiltingPointFraction', wiltingPointFraction);
  requireFraction('fieldCapacityFraction', fieldCapacityFraction);
  requireAtLeast(
    'fieldCapacityFraction',
    fieldCapacityFraction,
    wiltingPointFraction,
    'Are the two swapped?',
  );
}
