/** Top-dressing: volume and mass of a thin layer, and how thick one layer may be. */
import {
  finiteResult,
  type NumberRange,
  refuse,
  requireAbove,
  requireAtLeast,
  requireFraction,
} from '../base/refuse.js';
import { type Split, splitUnderCap } from './split.js';

/**
 * Volume of a layer. One millimetre on one square metre is one litre.
 *
 *   volumeL = areaM2 × depthMm
 *
 * @param areaM2 m², above 0
 * @param depthMm depth once it lies, mm, 0 or more
 * @returns L
 * @throws {RangeError} when an argument is outside its range
 */
export function layerL({ areaM2, depthMm }: { readonly areaM2: number; readonly depthMm: number }): number {
  requireAbove('areaM2', areaM2, 0);
  requireAtLeast('depthMm', depthMm, 0);
  return finiteResult('volumeL', areaM2 * depthMm);
}

/**
 * Mass of a volume of loose material.
 *
 *   massKg = volumeL × bulkDensityTPerM3, because 1 t/m³ is 1 kg/L
 *
 * @param volumeL L, 0 or more
 * @param bulkDensityTPerM3 t/m³, above 0; a damp load weighs more than a dry one, so plan with a range
 * @returns kg
 * @throws {RangeError} when an argument is outside its range
 */
export function layerKg({
  volumeL,
  bulkDensityTPerM3,
}: {
  readonly volumeL: number;
  readonly bulkDensityTPerM3: number;
}): number {
  requireAtLeast('volumeL', volumeL, 0);
  requireAbove('bulkDensityTPerM3', bulkDensityTPerM3, 0);
  return finiteResult('massKg', volumeL * bulkDensityTPerM3);
}

/**
 * Lightest and heaviest a volume of material can be: layerKg at both ends.
 *
 * @param bulkDensityTPerM3 dry and damp density, t/m³, both above 0
 * @returns kg, both ends
 * @throws {RangeError} when an argument is outside its range or the range runs backwards
 */
export function layerRangeKg({
  volumeL,
  bulkDensityTPerM3: { min, max },
}: {
  readonly volumeL: number;
  readonly bulkDensityTPerM3: NumberRange;
}): NumberRange {
  requireAtLeast('bulkDensityTPerM3.max', max, min);
  return {
    min: layerKg({ volumeL, bulkDensityTPerM3: min }),
    max: layerKg({ volumeL, bulkDensityTPerM3: max }),
  };
}

/**
 * Loose volume to buy so that a wanted volume is left once it has settled.
 *
 *   looseL = volumeL ÷ (1 − settlingFraction)
 *
 * @param settlingFraction share of the loose volume that is lost on settling, 0 or more and under 1
 * @returns L
 * @throws {RangeError} when an argument is outside its range
 */
export function looseL({
  volumeL,
  settlingFraction,
}: {
  readonly volumeL: number;
  readonly settlingFraction: number;
}): number {
  requireAtLeast('volumeL', volumeL, 0);
  requireFraction('settlingFraction', settlingFraction);
  if (settlingFraction === 1) refuse('settlingFraction', 'must be under 1', settlingFraction);
  return finiteResult('looseL', volumeL / (1 - settlingFraction));
}

/**
 * Deepest layer for one go: the cap, or less where the grass is so short that its tips would vanish.
 *
 *   limitMm = min(capMm, grassHeightMm − tipsShowingMm)
 *
 * @param capMm most for one go whatever the height, mm, above 0
 * @param grassHeightMm height of the grass on the day, mm, above 0
 * @param tipsShowingMm leaf that must still show, mm, 0 or more
 * @returns mm; 0 when the grass is too short for any
 * @throws {RangeError} when an argument is outside its range
 */
export function layerLimitMm({
  capMm,
  grassHeightMm,
  tipsShowingMm,
}: {
  readonly capMm: number;
  readonly grassHeightMm: number;
  readonly tipsShowingMm: number;
}): number {
  requireAbove('capMm', capMm, 0);
  requireAbove('grassHeightMm', grassHeightMm, 0);
  requireAtLeast('tipsShowingMm', tipsShowingMm, 0);
  return Math.max(0, Math.min(capMm, grassHeightMm - tipsShowingMm));
}

/**
 * Fewest equal layers that make up a depth, none over the limit. `each` is in mm.
 *
 * @param depthMm wanted in the end, mm, 0 or more
 * @param limitMm deepest for one go, mm, above 0
 * @throws {RangeError} when an argument is outside its range
 */
export function layersNeeded({
  depthMm,
  limitMm,
}: {
  readonly depthMm: number;
  readonly limitMm: number;
}): Split {
  requireAtLeast('depthMm', depthMm, 0);
  requireAbove('limitMm', limitMm, 0, 'Let the grass grow first: its tips must still show.');
  return splitUnderCap({ total: depthMm, cap: limitMm });
}
