/** Mowing without taking too much leaf at once. The share that may be taken is an argument. */
import { finiteResult, requireAbove, requireBetween } from '../base/refuse.js';

// Outside these a walk down to the wanted height would take hundreds of cuts or none.
const TAKE_LIMITS = { min: 0.05, max: 0.95 } as const;

/**
 * Height at which to mow, so that the cut takes just the allowed share.
 *
 *   heightMm = targetMm ÷ (1 − takeFraction); with a third that is 1.5 × the target
 *
 * @param targetMm height after the cut, mm, above 0
 * @param takeFraction share of the height that one cut may take, 0.05 to 0.95
 * @returns mm
 * @throws {RangeError} when an argument is outside its range
 * @source Cornell University, home gardening tidbit 1454: a 3 inch lawn is mown at 4.5 inches
 */
export function mowAtMm({
  targetMm,
  takeFraction,
}: {
  readonly targetMm: number;
  readonly takeFraction: number;
}): number {
  requireAbove('targetMm', targetMm, 0);
  requireBetween('takeFraction', takeFraction, TAKE_LIMITS);
  return finiteResult('heightMm', targetMm / (1 - takeFraction));
}

/**
 * Height after each cut on the way down to a wanted height.
 *
 *   next = max((1 − takeFraction) × height, targetMm), until the target is reached
 *
 * @param heightMm height now, mm, above 0
 * @param targetMm wanted height, mm, above 0
 * @param takeFraction share of the height that one cut may take, 0.05 to 0.95
 * @returns mm after each cut, falling, the last one `targetMm`; empty when the grass is not above it
 * @throws {RangeError} when an argument is outside its range
 * @source Purdue University AY-8: bring overgrown turf down over several cuts
 */
export function stepDownMm({
  heightMm,
  targetMm,
  takeFraction,
}: {
  readonly heightMm: number;
  readonly targetMm: number;
  readonly takeFraction: number;
}): number[] {
  requireAbove('heightMm', heightMm, 0);
  requireAbove('targetMm', targetMm, 0);
  requireBetween('takeFraction', takeFraction, TAKE_LIMITS);
  const cutsMm: number[] = [];
  let nowMm = heightMm;
  while (nowMm > targetMm) {
    const nextMm = (1 - takeFraction) * nowMm;
    // A cut that would end a hair above the target is that last cut.
    nowMm = nextMm > targetMm * (1 + 1e-9) ? nextMm : targetMm;
    cutsMm.push(nowMm);
  }
  return cutsMm;
}
