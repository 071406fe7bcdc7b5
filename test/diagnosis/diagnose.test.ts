import { describe, expect, it } from 'vitest';
import { diagnose, judgeFinding } from '../../src/diagnosis/diagnose.js';
import type { Expression } from '../../src/rules/schema.js';
import { scopeOf } from '../rules/scopes.js';
import { finding, question, tinyPack } from '../rules/tiny-pack.js';

const a: Expression = { var: 'a' };
const sign = (name: string, weight: number) => ({ when: { var: name }, weight, says: `${name} ${weight}` });

describe('the verdict on a finding', () => {
  it.each([
    [{ a: true }, 'found'],
    [{ a: false }, 'notFound'],
    [{}, 'cannotTell'],
  ] as const)('with %o is %s', (answers, verdict) => {
    expect(judgeFinding(finding('x', a), scopeOf(answers)).verdict).toBe(verdict);
  });

  it('names the questions that would settle it, and none once it is settled', () => {
    const both = finding('x', { and: [a, { var: 'b' }] });
    expect(judgeFinding(both, scopeOf({})).open).toEqual(['a', 'b']);
    expect(judgeFinding(both, scopeOf({ a: true })).open).toEqual(['b']);
    expect(judgeFinding(both, scopeOf({ a: false })).open).toEqual([]);
  });

  it('is settled by the condition alone: no weight of signs turns it round', () => {
    const against = finding('x', a, [sign('s', -3), sign('t', -3)]);
    expect(judgeFinding(against, scopeOf({ a: true, s: true, t: true })).verdict).toBe('found');
    const inFavour = finding('x', a, [sign('s', 3), sign('t', 3)]);
    expect(judgeFinding(inFavour, scopeOf({ a: false, s: true, t: true })).verdict).toBe('notFound');
    expect(judgeFinding(inFavour, scopeOf({ s: true, t: true })).verdict).toBe('cannotTell');
  });
});

describe('how sure it is', () => {
  const weighed = finding('x', a, [sign('s', 2), sign('t', 1), sign('u', -1)]);

  it.each([
    ['a plain fact that is found', finding('x', a), { a: true }, 'likely'],
    ['a plain fact that is not found', finding('x', a), { a: false }, 'unlikely'],
    ['a plain fact nobody was asked about', finding('x', a), {}, 'possible'],
    ['found with signs that weigh 2', weighed, { a: true, s: true }, 'likely'],
    ['found with signs that weigh 1', weighed, { a: true, t: true }, 'possible'],
    ['found with signs both ways that leave 1', weighed, { a: true, s: true, u: true }, 'possible'],
    ['found with signs both ways that leave 2', weighed, { a: true, s: true, t: true, u: true }, 'likely'],
    ['not found, with signs that weigh 2', weighed, { a: false, s: true }, 'possible'],
    ['not found, with signs that weigh 1', weighed, { a: false, t: true }, 'unlikely'],
    ['undecided, with signs that weigh 2', weighed, { s: true }, 'likely'],
    ['undecided, with signs that weigh 1', weighed, { t: true }, 'possible'],
    ['undecided, with a sign against', weighed, { u: true }, 'unlikely'],
    ['undecided, with signs that cancel', weighed, { t: true, u: true }, 'possible'],
  ] as const)('%s', (_, record, answers, strength) => {
    expect(judgeFinding(record, scopeOf(answers)).strength).toBe(strength);
  });

  it('shows signs for and against in two columns, and leaves out what is false or not known', () => {
    const judged = judgeFinding(weighed, scopeOf({ a: true, s: true, t: false }));
    expect(judged.signsFor).toEqual(['s 2']);
    expect(judged.signsAgainst).toEqual([]);
    expect(judgeFinding(weighed, scopeOf({ u: true })).signsAgainst).toEqual(['u -1']);
    const both = judgeFinding(weighed, scopeOf({ a: false, s: true, t: true, u: true }));
    expect([both.signsFor, both.signsAgainst]).toEqual([['s 2', 't 1'], ['u -1']]);
  });
});

describe('a diagnosis', () => {
  it('judges every finding of the pack once, in its order', () => {
    const pack = tinyPack({
      questions: [question('a')],
      findings: [finding('y', a), finding('x', { '!': [a] })],
    });
    const judged = diagnose(pack, scopeOf({ a: true }));
    expect(judged.map(({ finding: { id }, verdict }) => [id, verdict])).toEqual([
      ['y', 'found'],
      ['x', 'notFound'],
    ]);
  });
});
