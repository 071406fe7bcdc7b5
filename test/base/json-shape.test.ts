import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jsonShapeOf } from '../../src/base/json-shape.js';

const depthOf = (value: unknown): number =>
  typeof value === 'object' && value !== null ? 1 + Math.max(0, ...Object.values(value).map(depthOf)) : 0;

describe('the shape of a JSON text', () => {
  it('is as deep as the value, and has no doubled keys, for whatever JSON.stringify writes', () => {
    fc.assert(
      fc.property(fc.jsonValue(), fc.constantFrom(0, 2), (value, indent) => {
        const written = JSON.stringify(value, null, indent);
        const parsed: unknown = JSON.parse(written);
        expect(jsonShapeOf(written)).toEqual({ depth: depthOf(parsed), doubled: [] });
      }),
    );
  });

  it('names a key that is added a second time, wherever it stands', () => {
    const key = fc.string().filter((each) => each !== '__proto__');
    fc.assert(
      fc.property(fc.dictionary(key, fc.jsonValue(), { minKeys: 1 }), fc.nat(), (object, pick) => {
        const names = Object.keys(object);
        const again = names[pick % names.length] as string;
        const text = `[1, ${JSON.stringify(object).slice(0, -1)}, ${JSON.stringify(again)}: null}]`;
        expect(jsonShapeOf(text).doubled).toEqual([again]);
      }),
    );
  });

  it.each([
    ['{"a": {"a": 1}, "b": [{"a": 1}, {"a": 2}]}', []],
    ['{"a": "a", "b": "a"}', []],
    [String.raw`{"a": 1, "\u0061": 2}`, ['a']],
    [String.raw`{"\"": 1, "x": "\\", "\"": 2}`, ['"']],
    ['{"a": 1, "a": 2, "a": 3}', ['a']],
    ['{"a": {"b": 1, "b": 2}}', ['b']],
  ])('of %s has doubled keys %j', (text, doubled) => {
    expect(jsonShapeOf(text).doubled).toEqual(doubled);
  });

  it('is found at any depth', () => {
    expect(jsonShapeOf('['.repeat(300_000) + ']'.repeat(300_000)).depth).toBe(300_000);
  });
});
