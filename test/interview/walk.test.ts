/** The walk round the lawn: everything that wants a look, once, with what to take; nothing that can be said indoors. */
import { describe, expect, it } from 'vitest';
import { parseIsoDate } from '../../src/base/dates.js';
import type { Answers } from '../../src/interview/answers.js';
import { openQuestions } from '../../src/interview/open-questions.js';
import { walkRound } from '../../src/interview/walk.js';
import { scopeFor } from '../../src/planner/working-scope.js';
import { pack } from '../planner/any-lawn.js';

const today = parseIsoDate('2027-03-13');
const scopeOf = (answers: Answers) => scopeFor({ pack, answers, today, assume: 'said', timing: 'open' });
const walkFor = (answers: Answers) => walkRound(pack, answers, scopeOf(answers));
const idsOn = (answers: Answers): string[] =>
  walkFor(answers).stations.flatMap(({ items }) => items.map(({ question }) => question.id));

describe('the walk round the lawn', () => {
  it('has every open question that wants a look or a spade, and no other', () => {
    const wanted = openQuestions(pack, scopeOf({})).filter(({ cost }) => cost !== 'chair');
    expect([...idsOn({})].sort()).toEqual(wanted.map(({ id }) => id).sort());
    expect(wanted.length).toBeGreaterThan(15);
  });

  it('keeps to the sections, in their order', () => {
    const titles = walkFor({}).stations.map(({ title }) => title);
    expect(titles).toEqual(pack.sections.map(({ title }) => title).filter((title) => titles.includes(title)));
  });

  it('leaves out what is answered, and what an answer has made pointless', () => {
    expect(idsOn({ dog: false })).not.toContain('dogPatches');
    expect(idsOn({ mossFraction: 0.4 })).not.toContain('mossFraction');
    expect(idsOn({ sunHoursPerDay: 0 })).not.toContain('soilTexture');
  });

  it('takes up again what was said not to be known', () => {
    expect(idsOn({ thatchDepthMm: 'unknown' })).toContain('thatchDepthMm');
  });

  it('marks what only arises with another answer', () => {
    const items = walkFor({}).stations.flatMap((station) => station.items);
    expect(items.find(({ question }) => question.id === 'dogPatches')?.isSure).toBe(false);
    expect(items.find(({ question }) => question.id === 'mossFraction')?.isSure).toBe(true);
  });

  it('names each thing to take once, and only for a question on it', () => {
    const { take, stations } = walkFor({});
    const needed = stations.flatMap(({ items }) => items.flatMap(({ question }) => question.take ?? []));
    expect([...take].sort()).toEqual([...new Set(needed)].sort());
    const paced = { mossFraction: 0.1, weedFraction: 0.1, bareFraction: 0.1 };
    expect(take).toContain('a pencil');
    expect(walkFor(paced).take).not.toContain('a pencil');
  });

  it('knows what to take for everything that is dug or tested', () => {
    const bareHanded = pack.questions.filter(({ cost, take }) => cost === 'dig' && take === undefined);
    expect(bareHanded.map(({ id }) => id)).toEqual([]);
  });
});
