import { describe, expect, it } from 'vitest';
import { parseIsoDate } from '../../src/base/dates.js';
import { answersContext } from '../../src/cli/answers-context.js';
import { readAnswersFile } from '../../src/interview/answers-file.js';
import { pack } from '../planner/any-lawn.js';

const context = answersContext(pack, parseIsoDate('2027-04-01'));
const read = (text: string) => readAnswersFile(text, context);
const faultsOf = (text: string): readonly string[] => {
  const found = read(text);
  return found.ok ? [] : found.faults;
};
const file = (answers: string): string => `{"format": 1, "answers": ${answers}}`;

describe('an answers file', () => {
  it('may begin with a byte order mark', () => {
    expect(read(`\uFEFF${file('{"areaM2": 84}')}`)).toEqual({
      ok: true,
      answers: { areaM2: 84 },
      areas: [],
    });
  });

  it.each(['Oxford', 'oxford', '51.5, -0.1', '-37.8,144.9', '90, 180', 'unknown'])(
    'takes the place "%s"',
    (place) => {
      expect(faultsOf(file(JSON.stringify({ place })))).toEqual([]);
    },
  );

  it.each([
    ['Oxfrd', 'Did you mean "Oxford"?'],
    ['Cambridge', 'Did you mean "Cambridge NIAB"?'],
    ['Xyzzy', 'The stations: Aberporth,'],
    ['90.1, 0', '-90 to 90, -180 to 180'],
    ['51, -180.5', '-90 to 90, -180 to 180'],
    ['', '"51.5, -0.1"'],
    [12, '"51.5, -0.1"'],
  ])('refuses the place %j, and says %s', (place, says) => {
    const [fault, ...more] = faultsOf(file(JSON.stringify({ place })));
    expect(more).toEqual([]);
    expect(fault).toContain(`"place" is ${JSON.stringify(place)}. Allowed: `);
    expect(fault).toContain(says);
  });

  it('says which keys stand twice', () => {
    expect(faultsOf(file('{"areaM2": 84, "areaM2": 48, "dog": true}'))).toEqual([
      '"areaM2" stands twice, and only one can be meant. Remove the other.',
    ]);
    expect(faultsOf('{"format": 1, "format": 1, "answers": {}}')[0]).toContain('"format" stands twice');
  });

  it('is refused in one line when it is nested without end', () => {
    const deep = '['.repeat(200_000) + ']'.repeat(200_000);
    for (const text of [deep, file(`{"lawnParts": ${deep}}`)]) {
      expect(faultsOf(text)).toHaveLength(1);
      expect(faultsOf(text)[0]).toContain('levels deep');
    }
  });

  it('has short and harmless lines about whatever it holds', () => {
    const evil = `\u001b]0;title\u0007${'x'.repeat(100_000)}`;
    const faults = faultsOf(
      file(JSON.stringify({ [evil]: 1, dog: evil, place: evil, lawnName: evil, areaM2: { [evil]: evil } })),
    );
    expect(faults).toHaveLength(5);
    for (const fault of faults) {
      expect(fault.length).toBeLessThan(700);
      // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
      expect(fault).not.toMatch(/[\u0000-\u001f\u007f-\u009f]/);
    }
    expect(faultsOf(`${'\u001b[2J'}${'x'.repeat(100_000)}`)[0]?.length).toBeLessThan(300);
  });

  it.each(['', '[]', 'null', '5', '{"format": 2, "answers": {}}', '{"format": 1}', '{"answers": []}'])(
    'is refused with its shape shown when it is %s',
    (text) => {
      expect(faultsOf(text)).toHaveLength(1);
      expect(faultsOf(text)[0]).toContain('It looks like {"format": 1');
    },
  );
});
