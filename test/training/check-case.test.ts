/** The checks of cases can fail: each is shown a case that is broken in one way. */
import { describe, expect, it } from 'vitest';
import type { Expression } from '../../src/rules/schema.js';
import type { AskedAmount, DrillCase } from '../../src/rules/schema-case.js';
import { checkBook, checkCase } from '../../src/training/check-case.js';
import { pack } from '../planner/any-lawn.js';
import { book, byId } from './book.js';

const { marking, cases } = book;
const green = byId('spongy-green').lesson;
const broken = (change: Partial<DrillCase>): string =>
  checkCase({ ...green, ...change }, pack, marking).join('\n');
const expecting = (change: Partial<DrillCase['expected']>): string =>
  broken({ expected: { ...green.expected, ...change } });

const sum = (value: Expression, given: Record<string, number>): AskedAmount => ({
  id: 'sum',
  ask: 'How much?',
  find: { kind: 'sum', value, given, unit: 'L' },
  byHand: { least: 1, most: 2, working: 'By hand.' },
});

describe('the cases', () => {
  it('are at least twenty-four, and sound', () => {
    expect(cases.length).toBeGreaterThanOrEqual(24);
    expect(checkBook(book, pack)).toEqual([]);
  });

  it('go from easy to hard', () => {
    const levels = ['easy', 'middling', 'hard'] as const;
    for (const level of levels)
      expect(cases.filter((each) => each.level === level).length).toBeGreaterThan(5);
    const ranks = cases.map(({ level }) => levels.indexOf(level));
    expect(ranks).toEqual([...ranks].sort());
  });

  it('come to every verdict, and to most of the findings', () => {
    // All but "not known yet": the lawn of a case is known, so that its trainee can be right.
    const judged = Object.keys(marking.verdicts).filter((id) => id !== 'not-known');
    expect([...new Set(cases.map(({ expected }) => expected.verdict))].sort()).toEqual(judged.sort());
    const found = new Set(cases.flatMap(({ expected }) => expected.findings));
    expect(found.size).toBeGreaterThan((2 * pack.findings.length) / 3);
  });

  it('each have a sign that misleads', () => {
    for (const { id, misleads } of cases) expect(misleads.length, id).toBeGreaterThan(0);
  });
});

describe('the check of a case', () => {
  it('misses nothing in a sound one', () => {
    expect(broken({})).toBe('');
  });

  it.each([
    ['a finding that the rules do not find', expecting({ findings: ['acid'] }), /do not find "acid"/],
    ['a look-alike that is there', expecting({ not: ['mossy'] }), /find "mossy" here/],
    ['a wrong verdict', expecting({ verdict: 'care-only' }), /come to "renovate"/],
    [
      'a verdict that holds as well and is called wrong',
      expecting({ alsoRight: [{ verdict: 'care-only', says: 'So it is.' }] }),
      /"care-only" holds as well/,
    ],
    ['a step that is not planned', expecting({ steps: ['lime'] }), /no step "lime"/],
    ['a planned step called a mistake', expecting({ notSteps: ['sow'] }), /has the step "sow"/],
    ['steps in a wrong order', expecting({ steps: ['sow', 'scarify'] }), /"scarify" before "sow"/],
    ['no amount at all', broken({ amounts: [] }), /asks for no amount/],
    [
      'a sum that reads what there is none of',
      broken({ amounts: [sum({ '*': [{ var: 'given.depthMm' }, { var: 'areaM2' }] }, {})] }),
      /sum of "sum" is not sound.*given\.depthMm/,
    ],
    [
      'a number in a sum that is not given by name',
      broken({ amounts: [sum({ '*': [50, { var: 'facts.areaM2' }] }, {})] }),
      /sum of "sum" is not sound/,
    ],
    [
      'a sum that comes to something else than by hand',
      broken({
        amounts: [sum({ '*': [{ var: 'given.depthMm' }, { var: 'facts.areaM2' }] }, { depthMm: 10 })],
      }),
      /"sum" is 834 L by the rules, by hand 1 to 2/,
    ],
    [
      'a slip that is right',
      broken({
        amounts: green.amounts.map((each) =>
          each.id === 'area' ? { ...each, slips: [{ value: 84, says: 'Wrong.' }] } : each,
        ),
      }),
      /calls 84 a slip, and it is right/,
    ],
    ['a finding of no such name', expecting({ findings: ['mosy'] }), /no finding "mosy"/],
    [
      'needs that do not suffice',
      broken({ needs: ['mossFraction'] }),
      /do not suffice to find "thick-thatch"/,
    ],
    [
      'a need that nothing rests on',
      broken({ needs: [...green.needs, 'mowerCut'] }),
      /"mowerCut" is called needed/,
    ],
    [
      'a need that is not asked',
      broken({ needs: [...green.needs, 'grubsInSquare'] }),
      /"grubsInSquare" cannot be looked at/,
    ],
    [
      'digging before anyone looked for cables',
      broken({ needs: green.needs.filter((id) => id !== 'buriedServices') }),
      /yet judged/,
    ],
    ['an answer out of bounds', broken({ answers: { ...green.answers, mossFraction: 4 } }), /mossFraction/],
    ['a question of no such name', broken({ seen: { ...green.seen, mos: 'x' } }), /no question "mos"/],
    [
      'parts without what is measured',
      broken({ seen: Object.fromEntries(Object.entries(green.seen).filter(([id]) => id !== 'areaM2')) }),
      /without the area/,
    ],
    [
      'an amount that pencil and paper do not give',
      broken({
        amounts: green.amounts.map((asked) => ({ ...asked, byHand: { ...asked.byHand, least: 1, most: 2 } })),
      }),
      /by hand 1 to 2/,
    ],
    [
      'an amount that is not planned',
      broken({
        amounts: green.amounts.map((asked) => ({
          ...asked,
          find: { kind: 'amount' as const, step: 'lime', material: 'lime' },
        })),
      }),
      /no amount/,
    ],
  ])('tells of %s', (_, faults, wanted) => {
    expect(faults).toMatch(wanted);
  });

  it('tells of two cases that teach the same', () => {
    const twin = { ...green, id: 'twin', lesson: 'Another sentence.' };
    expect(checkBook({ marking, cases: [green, twin] }, pack)).toEqual([
      { caseId: 'twin', says: expect.stringMatching(/same as "spongy-green"/) },
    ]);
    const echo = { ...byId('july-straw').lesson, lesson: green.lesson };
    expect(checkBook({ marking, cases: [green, echo] }, pack)).toHaveLength(1);
  });
});
