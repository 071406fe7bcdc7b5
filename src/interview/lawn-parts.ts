/** The shapes that a measured lawn may be given in, as they stand in an answers file. */

/** Key to what it must hold, for each shape. */
const SHAPES: Readonly<
  Record<string, Readonly<Record<string, 'length' | 'lengths' | 'three lengths' | 'points'>>>
> = {
  rectangle: { lengthM: 'length', widthM: 'length' },
  triangle: { sidesM: 'three lengths' },
  circle: { diameterM: 'length' },
  ellipse: { lengthM: 'length', widthM: 'length' },
  offsets: { spacingM: 'length', offsetsM: 'lengths' },
  outline: { pointsM: 'points' },
};

const isNumber = (value: unknown): value is number => typeof value === 'number' && Number.isFinite(value);
const isLengths = (value: unknown, least = 1): boolean =>
  Array.isArray(value) && value.length >= least && value.every((each) => isNumber(each) && each >= 0);

const FITS: Readonly<Record<string, (value: unknown) => boolean>> = {
  length: (value) => isNumber(value) && value > 0,
  lengths: (value) => isLengths(value, 2),
  'three lengths': (value) => isLengths(value) && (value as number[]).length === 3,
  points: (value) =>
    Array.isArray(value) &&
    value.every((point) => Array.isArray(point) && point.length === 2 && point.every(isNumber)),
};

/** What is wrong with the list, one sentence a fault; nothing when it can be measured. */
export function lawnPartFaults(value: unknown): string[] {
  if (!Array.isArray(value) || value.length === 0) return ['Allowed: a list of one or more parts.'];
  return value.flatMap((part: unknown, index) => {
    const where = `Part ${index + 1}`;
    if (typeof part !== 'object' || part === null) return [`${where} is no object.`];
    const given = part as Record<string, unknown>;
    const keys =
      typeof given.shape === 'string' && Object.hasOwn(SHAPES, given.shape) ? SHAPES[given.shape] : undefined;
    if (keys === undefined) {
      return [
        `${where} has the shape ${JSON.stringify(given.shape)}; allowed: ${Object.keys(SHAPES).join(', ')}.`,
      ];
    }
    const faults = Object.entries(keys)
      .filter(([key, wanted]) => FITS[wanted]?.(given[key]) !== true)
      .map(
        ([key, wanted]) =>
          `${where}: "${key}" must be ${wanted === 'length' ? 'a length in metres' : `${wanted} in metres`}.`,
      );
    const extra = Object.keys(given).filter((key) => !['shape', 'minus', ...Object.keys(keys)].includes(key));
    return [...faults, ...extra.map((key) => `${where}: "${key}" does not belong to a ${given.shape}.`)];
  });
}
