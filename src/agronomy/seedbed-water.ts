/**
 * Thirst of a bare, wet seedbed: evaporation after each wetting, and what to give in a day.
 *
 * @source fao-56, annex 7
 */
import { requireAbove, requireAtLeast, requireFraction } from '../base/refuse.js';
import { shortfallMm } from './rain.js';

export type BareSoilTexture = 'coarse' | 'medium-or-fine';

interface DryingLimits {
  /** Water given off at the full rate, REW. */
  readonly fastMm: number;
  /** All the water that can be given off, TEW. */
  readonly allMm: number;
}

/** Evaporation from wet bare soil, as a multiple of ET0. */
const WET_SOIL_COEFFICIENT = 1.15;
const LIGHT_WETTING_MM = 10;
const HEAVY_WETTING_MM = 40;

/**
 * Evaporation of a bare seedbed as a multiple of ET0, averaged from one wetting to the next.
 *
 *   Eso = 1.15 ET0, t1 = REW ÷ Eso
 *   tw ≤ t1:  K = 1.15
 *   tw > t1:  K = (TEW − (TEW − REW) exp(−(tw − t1) Eso (1 + REW ÷ (TEW − REW)) ÷ TEW)) ÷ (tw ET0)
 *
 * Up to 10 mm a wetting is light, from 40 mm heavy, between them K is interpolated; then K is
 * multiplied by the share of the ground that is wetted.
 *
 * @param et0Mm ET0, mm/day, ≥ 0
 * @param daysBetweenWettings tw, days, > 0; 0.5 is twice a day
 * @param wettingMm depth of one wetting, mm, > 0
 * @param texture coarse (sand, loamy sand) or medium-or-fine; makes no difference to light wettings
 * @param wettedFraction share of the ground that is wetted, 0 to 1
 * @returns K, no unit, 0 to 1.15
 * @throws {RangeError} when an argument is outside the range above
 * @source fao-56, annex 7
 */
export function bareSoilCoefficient({
  et0Mm,
  daysBetweenWettings,
  wettingMm,
  texture,
  wettedFraction,
}: {
  readonly et0Mm: number;
  readonly daysBetweenWettings: number;
  readonly wettingMm: number;
  readonly texture: BareSoilTexture;
  readonly wettedFraction: number;
}): number {
  requireAtLeast('et0Mm', et0Mm, 0);
  requireAbove('daysBetweenWettings', daysBetweenWettings, 0);
  requireAbove('wettingMm', wettingMm, 0);
  requireFraction('wettedFraction', wettedFraction);
  if (et0Mm === 0) return WET_SOIL_COEFFICIENT * wettedFraction;
  const light = meanCoefficient({ et0Mm, daysBetweenWettings }, lightLimits(et0Mm));
  const heavy = meanCoefficient({ et0Mm, daysBetweenWettings }, heavyLimits(et0Mm, texture));
  const share = (wettingMm - LIGHT_WETTING_MM) / (HEAVY_WETTING_MM - LIGHT_WETTING_MM);
  return (light + (heavy - light) * Math.min(1, Math.max(0, share))) * wettedFraction;
}

/**
 * Water to give a seedbed in a day: a multiple of ET0, less the day's rain.
 *
 *   need = factor × ET0 − rain, never below 0
 *
 * @param et0Mm ET0, mm/day, ≥ 0
 * @param factor multiple of ET0 that keeps a seedbed moist, > 0; a figure of the caller
 * @param rainMm rain of the day, mm, ≥ 0
 * @returns mm to give
 * @throws {RangeError} when an argument is outside the range above
 * @source ohio-state-irrigation: 125 % of the previous day's evapotranspiration
 */
export function seedbedNeedMm({
  et0Mm,
  factor,
  rainMm,
}: {
  readonly et0Mm: number;
  readonly factor: number;
  readonly rainMm: number;
}): number {
  requireAtLeast('et0Mm', et0Mm, 0);
  requireAbove('factor', factor, 0);
  return shortfallMm({ needMm: factor * et0Mm, rainMm });
}

function lightLimits(et0Mm: number): DryingLimits {
  return { allMm: 10, fastMm: Math.min(Math.max(2.5, 6 / Math.sqrt(et0Mm)), 7) };
}

function heavyLimits(et0Mm: number, texture: BareSoilTexture): DryingLimits {
  const allMm =
    texture === 'coarse' ? Math.min(15, 7 * Math.sqrt(et0Mm)) : Math.min(28, 13 * Math.sqrt(et0Mm));
  // With hardly any evaporation TEW shrinks below its margin of 0.01 mm over REW; REW stops at 0.
  return { allMm, fastMm: Math.max(0, Math.min(9, allMm - 0.01)) };
}

function meanCoefficient(
  { et0Mm, daysBetweenWettings }: { readonly et0Mm: number; readonly daysBetweenWettings: number },
  { fastMm, allMm }: DryingLimits,
): number {
  // The printed equation in depths instead of days: its exponent comes to −(potential − REW) ÷ (TEW − REW).
  // So written it stays exact when hardly anything evaporates.
  const potentialMm = daysBetweenWettings * WET_SOIL_COEFFICIENT * et0Mm;
  if (potentialMm <= fastMm) return WET_SOIL_COEFFICIENT;
  const slowMm = allMm - fastMm;
  const lostMm = fastMm - slowMm * Math.expm1(-(potentialMm - fastMm) / slowMm);
  return (WET_SOIL_COEFFICIENT * lostMm) / potentialMm;
}
