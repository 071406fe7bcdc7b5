import { describe, expect, it } from 'vitest';
import { RuleFault, type Scope } from '../../src/rules/evaluate.js';
import type { Pack } from '../../src/rules/pack.js';
import { isAsked, makeScope } from '../../src/rules/scope.js';
import { figure, finding, question, tinyPack } from './tiny-pack.js';

interface Given {
  readonly answers?: Readonly<Record<string, unknown>>;
  readonly assumed?: readonly string[];
}
const scopeFor = (pack: Pack, { answers = {}, assumed = [] }: Given = {}): Scope =>
  makeScope({
    pack,
    answerOf: (id) => (Object.hasOwn(answers, id) ? answers[id] : undefined),
    mayAssume: (id) => assumed.includes(id),
    computed: {},
  });

describe('an answer', () => {
  const pack = tinyPack({
    questions: [
      question('dog', { dontKnow: { assume: true, effect: 'x' } }),
      question('patches', {
        askWhen: { var: 'dog' },
        dontKnow: { assume: false, effect: 'x' },
      }),
    ],
  });

  it('is known under the name of its question, and rests on it', () => {
    expect(scopeFor(pack, { answers: { dog: false } })('dog')).toEqual({
      known: true,
      value: false,
      used: ['dog'],
      from: ['dog'],
    });
  });

  it('that is missing is open under its own name', () => {
    expect(scopeFor(pack)('dog')).toEqual({ known: false, open: ['dog'] });
  });

  it('that may be assumed stands at its assumption, and still rests on the question', () => {
    expect(scopeFor(pack, { assumed: ['dog'] })('dog')).toMatchObject({ value: true, used: ['dog'] });
  });

  it('to a question that is not asked is invisible: the assumption stands in its place', () => {
    const scope = scopeFor(pack, { answers: { dog: false, patches: true } });
    expect(scope('patches')).toMatchObject({ known: true, value: false });
  });

  it('to a question whose own condition is open is taken as given', () => {
    const scope = scopeFor(pack, { answers: { patches: true } });
    expect(isAsked(pack.questionById.get('patches') ?? question('none'), scope)).toBeUndefined();
    expect(scope('patches')).toMatchObject({ known: true, value: true });
  });

  it('for which nothing can be assumed stays open, with nobody to ask once it is not asked', () => {
    const open = tinyPack({ questions: [question('ph', { askWhen: { var: 'dog' } }), question('dog')] });
    expect(scopeFor(open, { assumed: ['ph'] })('ph')).toEqual({ known: false, open: [] });
    expect(scopeFor(open, { answers: { dog: false } })('ph')).toEqual({ known: false, open: [] });
  });
});

describe('an assumption that is worked out', () => {
  const pack = tinyPack({
    questions: [
      question('depth', {
        kind: 'number',
        bounds: { min: 0, max: 50, says: 'x' },
        dontKnow: { assume: { '*': [{ var: 'figures.layer' }, { var: 'layers' }] }, effect: 'x' },
      }),
      question('layers', { kind: 'number', bounds: { min: 1, max: 3, says: 'x' } }),
    ],
    figures: [figure('layer', 8, 6, 10)],
  });

  it('brings its figures, its answers and its spread with it', () => {
    expect(scopeFor(pack, { answers: { layers: 2 }, assumed: ['depth'] })('depth')).toEqual({
      known: true,
      value: 16,
      least: 12,
      most: 20,
      used: ['depth', 'figures.layer', 'layers'],
      from: ['depth', 'figures.layer', 'layers'],
    });
  });

  it('is open as long as what it rests on is', () => {
    expect(scopeFor(pack, { assumed: ['depth'] })('depth')).toEqual({ known: false, open: ['layers'] });
  });
});

describe('a figure, a fact and a finding', () => {
  const pack = tinyPack({
    questions: [question('depth', { kind: 'number', bounds: { min: 0, max: 50, says: 'x' } })],
    figures: [figure('limit', 13, 10, 15)],
    facts: [
      { id: 'over', what: 'x', kind: 'number', value: { '-': [{ var: 'depth' }, { var: 'figures.limit' }] } },
    ],
    findings: [finding('thick', { '>': [{ var: 'facts.over' }, 0] })],
  });

  it('are read under their kind', () => {
    const scope = scopeFor(pack, { answers: { depth: 20 } });
    expect(scope('figures.limit')).toMatchObject({ value: 13, least: 10, most: 15 });
    expect(scope('facts.over')).toMatchObject({ value: 7, least: 5, most: 10 });
    expect(scope('findings.thick')).toMatchObject({ value: true, used: ['depth', 'figures.limit'] });
  });

  it('are open together', () => {
    expect(scopeFor(pack)('findings.thick')).toEqual({ known: false, open: ['depth'] });
  });
});

describe('what no scope gives', () => {
  const fact = (id: string, reads: string) =>
    ({ id, what: 'x', kind: 'truth', value: { '!': [{ var: reads }] } }) as const;

  it.each([
    'dgo',
    'facts.none',
    'findings.none',
    'figures.none',
    'constructor',
    '__proto__',
    'hasOwnProperty',
  ])('%s: a name that stands for nothing', (name) => {
    expect(() => scopeFor(tinyPack({ questions: [question('dog')] }))(name)).toThrow(RuleFault);
  });

  it('a fact that rests on itself, however long the way round', () => {
    const pack = tinyPack({ facts: [fact('one', 'facts.two'), fact('two', 'facts.one')] });
    expect(() => scopeFor(pack)('facts.one')).toThrow(/"facts\.one" depends on itself/);
  });

  it('a fact that the program was to work out and cannot', () => {
    const pack = tinyPack({ facts: [{ id: 'area', what: 'x', kind: 'number', computedBy: 'area' }] });
    expect(() => scopeFor(pack)('facts.area')).toThrow(/not to be had here/);
  });

  it('a property that every object has, as the answer to a question of that name', () => {
    const pack = tinyPack({ questions: [question('constructor'), question('hasOwnProperty')] });
    expect(scopeFor(pack)('constructor')).toEqual({ known: false, open: ['constructor'] });
    expect(scopeFor(pack)('hasOwnProperty')).toEqual({ known: false, open: ['hasOwnProperty'] });
  });
});
