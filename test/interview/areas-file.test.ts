import { describe, expect, it } from 'vitest';
import { parseIsoDate } from '../../src/base/dates.js';
import { answersContext } from '../../src/cli/answers-context.js';
import { readAnswersFile } from '../../src/interview/answers-file.js';
import { answersOn } from '../../src/interview/areas.js';
import { pack } from '../planner/any-lawn.js';

const read = (areas: unknown, answers: object = { place: 'Oxford' }) =>
  readAnswersFile(
    JSON.stringify({ format: 1, answers, areas }),
    answersContext(pack, parseIsoDate('2027-04-01')),
  );
const faultsOf = (areas: unknown, answers?: object): readonly string[] => {
  const found = read(areas, answers);
  return found.ok ? [] : found.faults;
};

describe('the areas of an answers file', () => {
  it('are read with their names, in their order', () => {
    const areas = [
      { name: 'front', answers: { areaM2: 60 } },
      { name: 'the shady half', answers: { areaM2: 100, mossFraction: 0.4 } },
    ];
    expect(read(areas)).toEqual({ ok: true, answers: { place: 'Oxford' }, areas });
  });

  it.each([
    ['no list', { front: {} }, '"areas" is {"front":{}}. Allowed: a list of 1 to 12 areas.'],
    ['an empty list', [], '"areas" is 0 areas.'],
    ['no name', [{ answers: {} }], 'Area 1: It has no "name".'],
    ['no answers', [{ name: 'front' }], 'Area 1: It has no "answers".'],
    ['an empty name', [{ name: ' ', answers: {} }], 'A name has 1 to 40 characters'],
    [
      'one name twice',
      [
        { name: 'front', answers: {} },
        { name: 'Front', answers: {} },
      ],
      'Two areas are called "Front".',
    ],
    [
      'an answer that is for the whole lawn',
      [{ name: 'front', answers: { dog: true } }],
      'Area "front": "dog" is answered once for the whole lawn. Move it into "answers".',
    ],
    ['a misspelt question', [{ name: 'front', answers: { aeraM2: 4 } }], 'Did you mean "areaM2"?'],
    ['another key', [{ name: 'front', answers: {}, size: 4 }], '"size" has no place beside "name"'],
  ])('are refused with %s', (_, areas, says) => {
    expect(faultsOf(areas).join('\n')).toContain(says);
  });

  it('have sizes of their own, so that none may stand for the whole', () => {
    expect(faultsOf([{ name: 'front', answers: {} }], { areaM2: 84 })).toEqual([
      '"areaM2" stands beside "areas", and each area has a size of its own. Move it into the area.',
    ]);
  });

  it('are judged with what holds for the whole lawn: shares that pass one hundred per cent together are refused', () => {
    const faults = faultsOf([{ name: 'front', answers: { weedFraction: 0.7 } }], { mossFraction: 0.6 });
    expect(faults).toHaveLength(1);
    expect(faults[0]).toMatch(/^Area "front": "mossFraction" is 0.6/);
  });

  it('lie over what holds for the whole lawn, their own size alone', () => {
    const whole = { areaM2: 84, dog: true, mossFraction: 0.1 };
    const parts = [{ shape: 'circle', diameterM: 4 }] as const;
    expect(answersOn({ answers: { lawnParts: parts, mossFraction: 0.4 } }, whole)).toEqual({
      dog: true,
      lawnParts: parts,
      mossFraction: 0.4,
    });
    expect(answersOn({ answers: { mossFraction: 0.4 } }, whole)).toEqual({ ...whole, mossFraction: 0.4 });
  });
});
