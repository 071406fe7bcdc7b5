/**
 * Small guards for the arguments of equations.
 *
 * Each throws a RangeError that names the argument, says what is allowed and what was found, and may
 * add a hint for the likeliest mistake. NaN and Infinity never pass. Nothing is returned or changed.
 */

/** Refuses anything but a finite number. */
export function requireFinite(name: string, value: number, hint?: string): void {
  if (!Number.isFinite(value)) refuse(name, 'must be a finite number', value, hint);
}

/** Refuses a value that is not above the limit. */
export function requireAbove(name: string, value: number, limit: number, hint?: string): void {
  if (!(value > limit) || !Number.isFinite(value)) refuse(name, `must be above ${limit}`, value, hint);
}

/** Refuses a value under the limit. */
export function requireAtLeast(name: string, value: number, limit: number, hint?: string): void {
  if (!(value >= limit) || !Number.isFinite(value)) refuse(name, `must be ${limit} or more`, value, hint);
}

/** Refuses a value outside the range; both ends are allowed. */
export function requireBetween(
  name: string,
  value: number,
  { min, max }: { readonly min: number; readonly max: number },
  hint?: string,
): void {
  if (!(value >= min && value <= max)) refuse(name, `must be from ${min} to ${max}`, value, hint);
}

/** Refuses anything outside 0 to 1, with a hint for a percentage typed as a share. */
export function requireFraction(name: string, value: number, hint?: string): void {
  if (!(value >= 0 && value <= 1)) {
    refuse(name, 'is a share and must be from 0 to 1', value, hint ?? percentHint(value));
  }
}

/** Refuses anything outside 0 to 1, and 0 itself: for shares that are divided by. */
export function requireFractionAboveZero(name: string, value: number, hint?: string): void {
  if (!(value > 0 && value <= 1)) {
    refuse(name, 'is a share and must be above 0 and at most 1', value, hint ?? percentHint(value));
  }
}

/** Refuses anything but a whole number of at least the limit. */
export function requireWhole(name: string, value: number, limit: number, hint?: string): void {
  if (!Number.isInteger(value) || value < limit) {
    refuse(name, `must be a whole number, ${limit} or more`, value, hint);
  }
}

/** Refuses a list shorter than wanted. */
export function requireCount(name: string, list: readonly unknown[], atLeast: number, hint?: string): void {
  if (list.length < atLeast) refuse(name, `must have ${atLeast} or more entries`, list.length, hint);
}

/** A smallest and a largest value of the same quantity; the unit is in the name of whatever holds it. */
export interface NumberRange {
  readonly min: number;
  readonly max: number;
}

/** Refuses a range that runs backwards or starts under the limit. */
export function requireRange(name: string, range: NumberRange, atLeast: number, hint?: string): void {
  requireAtLeast(`${name}.min`, range.min, atLeast, hint);
  requireAtLeast(`${name}.max`, range.max, range.min, hint);
}

/** The value itself if it is finite; otherwise a refusal, because some argument was too large or too small. */
export function finiteResult(name: string, value: number): number {
  if (!Number.isFinite(value)) refuse(name, 'came out too large to be real', value, 'Check the arguments.');
  return value;
}

/** Throws the RangeError: `areaM2 must be above 0, got -3.` and the hint, if any. */
export function refuse(name: string, allowed: string, found: number | string, hint?: string): never {
  throw new RangeError(`${name} ${allowed}, got ${found}.${hint === undefined ? '' : ` ${hint}`}`);
}

function percentHint(value: number): string | undefined {
  if (!(value > 1 && value <= 100)) return undefined;
  return `${value} % is written ${Number((value / 100).toPrecision(12))}.`;
}
