/**
 * What is said about a place in the rules must be found there: each condition, sentence and reference is looked up
 * again in the record that it names, by a JSON Pointer reader of the test's own (RFC 6901, section 4).
 */
import { describe, expect, it } from 'vitest';
import { expressionsOf } from '../../src/rules/expressions.js';
import { everythingBehind, findCircle, readsByName } from '../../src/rules/graph.js';
import { indexPack, type PackData } from '../../src/rules/pack.js';
import { referencesOf } from '../../src/rules/references.js';
import { MEASURE, sentencesOf, slotsIn } from '../../src/rules/slots.js';
import { pack } from '../planner/any-lawn.js';
import { figure, finding, question, tinyPack } from './tiny-pack.js';

const LISTS: Readonly<Record<string, readonly object[]>> = {
  question: pack.questions,
  fact: pack.facts,
  figure: pack.figures,
  finding: pack.findings,
  step: pack.steps,
  material: pack.materials,
  caution: pack.cautions,
  verdict: pack.verdicts,
  outlook: pack.outlook,
  watering: pack.watering,
  notDone: pack.notDone,
  together: pack.together,
  sign: pack.signs,
  trouble: pack.troubles,
};
const idOf = (record: object): unknown => ('id' in record ? record.id : undefined);

/** These have no id of their own that is used once, so their place in the list is the key. */
const BY_PLACE = ['verdict', 'outlook', 'watering'];

function recordOf(kind: string, key: string): unknown {
  if (kind === 'climate') return pack.climate;
  if (kind === 'season') return pack;
  const list = LISTS[kind] ?? [];
  return BY_PLACE.includes(kind) ? list[Number(key)] : list.find((each) => idOf(each) === key);
}

const at = (record: unknown, pointer: string): unknown =>
  pointer
    .split('/')
    .slice(1)
    .reduce((value, part) => (value as Record<string, unknown> | undefined)?.[part], record);

/** Every object in the record that could be a condition: one key, and that an operator. */
function conditionsIn(value: unknown, path = ''): string[] {
  if (typeof value !== 'object' || value === null || path.startsWith('/examples')) return [];
  const keys = Object.keys(value);
  if (keys.length === 1 && /^(var|and|or|if|!|===|!==|<|<=|>|>=|in|[-+*/]|min|max)$/.test(keys[0] as string))
    return [path];
  return Object.entries(value).flatMap(([key, inside]) => conditionsIn(inside, `${path}/${key}`));
}

describe('the conditions of the rules', () => {
  const placed = expressionsOf(pack);

  it('stand where they are said to stand', () => {
    expect(placed.length).toBeGreaterThan(400);
    for (const { kindOfRecord, id, pointer, expression } of placed) {
      const record = recordOf(kindOfRecord, id);
      expect(record, `${kindOfRecord} ${id}`).toBeDefined();
      expect(at(record, pointer), `${kindOfRecord} ${id} ${pointer}`).toBe(expression);
    }
  });

  it('are all found: no object with an operator is passed over', () => {
    const known = new Set(placed.map(({ kindOfRecord, id, pointer }) => `${kindOfRecord} ${id}${pointer}`));
    const missed = Object.entries(LISTS).flatMap(([kind, list]) =>
      list.flatMap((record, index) =>
        conditionsIn(record)
          .map((path) => `${kind} ${BY_PLACE.includes(kind) ? index : idOf(record)}${path}`)
          .filter((name) => !known.has(name)),
      ),
    );
    expect(missed).toEqual([]);
  });

  it('are owned by what a person calls the record', () => {
    const owners = new Set(placed.map(({ owner }) => owner));
    expect([...owners]).toEqual(
      expect.arrayContaining(['step sow', 'finding mossy', 'question labelRateMlPerM2', 'fact need']),
    );
    expect(
      placed
        .filter(({ kindOfRecord, pointer }) => kindOfRecord === 'verdict' && pointer === '/when')
        .map(({ owner }) => owner),
    ).toEqual(pack.verdicts.map(({ id }) => `verdict ${id}`));
    for (const { owner } of placed.filter(({ kindOfRecord }) => kindOfRecord === 'watering'))
      expect(owner).toMatch(/^watering week \d+$/);
    for (const { owner } of placed.filter(({ kindOfRecord }) => kindOfRecord === 'outlook'))
      expect(owner).toMatch(/^outlook week \d+$/);
  });

  it.each([
    ['step', '/when', 'truth', true],
    ['step', '/after/N/minDays', 'number', true],
    ['step', '/after/N/maxDays', 'number', true],
    ['step', '/lastsDays', 'number', true],
    ['step', '/notBefore/N/when', 'truth', true],
    ['step', '/notBefore/N/date', 'word', false],
    ['step', '/notBefore/N/plusDays', 'number', false],
    ['step', '/amounts/N/when', 'truth', true],
    ['step', '/amounts/N/inputs/areaM2', 'number', false],
    ['step', '/labour/inputs/areaM2', 'number', false],
    ['step', '/tools/N/when', 'truth', true],
    ['caution', '/when', 'truth', true],
    ['verdict', '/when', 'truth', true],
    ['outlook', '/when', 'truth', true],
    ['notDone', '/when', 'truth', true],
    ['watering', '/turnsPerDay', 'number', false],
    ['watering', '/mmPerDay', 'number', false],
    ['finding', '/when', 'truth', false],
    ['finding', '/evidence/N/when', 'truth', false],
    ['question', '/askWhen', 'truth', false],
  ])('of a %s at %s want a %s, and decide the plan: %s', (kind, pointer, wanted, decides) => {
    const some = placed.filter(
      (each) => each.kindOfRecord === kind && each.pointer.replace(/\/\d+(?=\/|$)/g, '/N') === pointer,
    );
    expect(some.length).toBeGreaterThan(0);
    for (const each of some) expect([each.wanted, each.decides], each.owner).toEqual([wanted, decides]);
  });
});

describe('the sentences and the references of the rules', () => {
  it('stand where they are said to stand', () => {
    for (const { kind, id, pointer, text } of sentencesOf(pack))
      expect(at(recordOf(kind, id), pointer), `${kind} ${id} ${pointer}`).toBe(text);
    for (const { from, fromKey, pointer, kind, id } of referencesOf(pack)) {
      const found = at(recordOf(from, fromKey), pointer);
      const isKey = pointer.startsWith('/examples/');
      expect(isKey ? found !== undefined : found, `${from} ${fromKey} ${pointer}, a ${kind}`).toBe(
        isKey ? true : id,
      );
    }
  });

  it('lead to a record of each kind that they name', () => {
    const kinds = new Set(referencesOf(pack).map(({ kind }) => kind));
    expect([...kinds].sort()).toEqual(
      [
        'caution',
        'figure',
        'finding',
        'formula',
        'material',
        'phase',
        'question',
        'section',
        'source',
        'step',
      ].sort(),
    );
  });

  it('are read with their measures taken for no name', () => {
    expect(slotsIn('Cut {15 cm} by {7.5 to 12.25 cm}, {2 m as printed}, {figures.x} deep.')).toEqual([
      'figures.x',
    ]);
    const ends = [...'{7.25 to 12.75 cm}'.matchAll(MEASURE)].map(([, low, high, unit]) => [low, high, unit]);
    expect(ends).toEqual([['7.25', '12.75', 'cm']]);
    expect(slotsIn('{15 miles}')).toEqual(['15 miles']);
  });
});

describe('what rests on what', () => {
  const small = tinyPack({
    questions: [
      question('deep', { askWhen: { var: 'dog' }, dontKnow: { assume: { var: 'facts.sum' }, effect: 'x' } }),
      question('dog'),
    ],
    figures: [figure('limit', 3)],
    facts: [
      {
        id: 'sum',
        what: 'sum',
        kind: 'number',
        value: { '+': [{ var: 'figures.limit' }, { var: 'facts.days' }] },
      },
      { id: 'days', what: 'days', kind: 'number', computedBy: 'area', reads: ['lawnParts'] },
      { id: 'bare', what: 'bare', kind: 'number', computedBy: 'area' },
    ] as never,
    findings: [finding('mossy', { '>': [{ var: 'deep' }, { var: 'facts.sum' }] })],
  });

  it('is told for every question, fact and finding', () => {
    expect(Object.fromEntries(readsByName(small))).toEqual({
      deep: ['dog', 'facts.sum'],
      dog: [],
      'facts.sum': ['figures.limit', 'facts.days'],
      'facts.days': ['lawnParts'],
      'facts.bare': [],
      'findings.mossy': ['deep', 'facts.sum'],
    });
  });

  it('is followed to the end, each name once, and nothing that was not asked for', () => {
    const reads = readsByName(small);
    expect([...everythingBehind(['findings.mossy'], reads)].sort()).toEqual(
      ['findings.mossy', 'deep', 'dog', 'facts.sum', 'figures.limit', 'facts.days', 'lawnParts'].sort(),
    );
    expect([...everythingBehind(['dog'], reads)]).toEqual(['dog']);
    expect([...everythingBehind(['nobody'], reads)]).toEqual(['nobody']);
  });

  it('is no circle where two lead to the same, and a circle is told from where it begins', () => {
    expect(
      findCircle(
        new Map([
          ['a', ['b', 'c']],
          ['b', ['d']],
          ['c', ['d']],
          ['d', []],
        ]),
      ),
    ).toBeUndefined();
    expect(
      findCircle(
        new Map([
          ['x', ['a']],
          ['a', ['b']],
          ['b', ['a']],
        ]),
      ),
    ).toEqual(['a', 'b', 'a']);
    expect(findCircle(new Map([['a', ['a']]]))).toEqual(['a', 'a']);
  });
});

describe('a pack in memory', () => {
  const data: PackData = {
    ...tinyPack({
      questions: [question('late', { section: 'second' }), question('early', { section: 'first' })],
    }),
    sections: [
      { id: 'first', title: 'First' },
      { id: 'second', title: 'Second' },
    ],
    steps: pack.steps.slice(0, 5).toReversed(),
  };

  it('has its questions by section and its steps by the order of the trade, and loses none', () => {
    const indexed = indexPack(data);
    expect(indexed.questions.map(({ id }) => id)).toEqual(['early', 'late']);
    const orders = indexed.steps.map(({ order }) => order);
    expect(orders).toEqual(data.steps.map(({ order }) => order).toSorted((a, b) => a - b));
    expect(orders).toHaveLength(5);
  });

  it('has each record by its id', () => {
    expect(pack.questionById.get('dog')?.id).toBe('dog');
    for (const [byId, list] of [
      [pack.stepById, pack.steps],
      [pack.materialById, pack.materials],
      [pack.sourceById, pack.sources],
      [pack.cautionById, pack.cautions],
      [pack.figureById, pack.figures],
      [pack.factById, pack.facts],
      [pack.findingById, pack.findings],
    ] as const) {
      expect(byId.size).toBe(list.length);
      for (const each of list) expect(byId.get(each.id)).toBe(each);
    }
  });
});
