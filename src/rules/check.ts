/**
 * Cross-checks of a whole pack: every id leads somewhere, every condition is sound, nothing lies about unused.
 * All problems are gathered, none stops the search. What the program itself offers and reads is passed in.
 */
import { jsonPointer } from '../base/json-pointer.js';
import { checkAssumptions } from './check-assumptions.js';
import { recordOf } from './dot.js';
import { expressionsOf, type Placed } from './expressions.js';
import { findCircle, readsByName } from './graph.js';
import { lint } from './lint.js';
import { readableNames } from './names.js';
import type { PackData } from './pack.js';
import type { Place, RuleProblem } from './problem.js';
import { namesRead } from './readers.js';
import { referencesOf } from './references.js';
import { orderFaults } from './skeleton.js';
import { sentencesOf, slotsIn } from './slots.js';

/** The program's side of the contract with a pack. */
export interface ProgramSide {
  /** Formula name to the inputs it must be given. */
  readonly formulas: Readonly<Record<string, readonly string[]>>;
  /** Questions that the program reads by itself. */
  readonly questions: readonly string[];
  /** Figures that it reads by itself. */
  readonly figures: readonly string[];
  /** Facts that it reads by itself. */
  readonly facts: readonly string[];
  /** Sources that it cites by itself. */
  readonly sources: readonly string[];
  readonly nearest: (name: string, names: readonly string[]) => string | undefined;
}

/** Where a record stands; its key is its id, or its place in the list where ids repeat or are missing. */
export type PlaceOf = (kind: string, key: string, pointer?: string) => Place;

export function checkPack(pack: PackData, program: ProgramSide, placeOf: PlaceOf): RuleProblem[] {
  return [
    ...checkIds(pack, program, placeOf),
    ...checkInputs(pack, program, placeOf),
    ...checkExpressions(pack, program, placeOf),
    ...checkLastVerdict(pack, placeOf),
    ...checkCircles(pack, placeOf),
    ...checkOrder(pack, placeOf),
    ...checkAssumptions(pack, placeOf),
    ...checkSlots(pack, program, placeOf),
    ...checkUse(pack, program, placeOf),
  ];
}

function checkIds(pack: PackData, program: ProgramSide, placeOf: PlaceOf): RuleProblem[] {
  const idsOf = (records: readonly { readonly id: string }[]): string[] => records.map(({ id }) => id);
  const known: Record<string, readonly string[]> = {
    source: idsOf(pack.sources),
    figure: idsOf(pack.figures),
    fact: idsOf(pack.facts),
    section: idsOf(pack.sections),
    phase: idsOf(pack.phases),
    question: idsOf(pack.questions),
    finding: idsOf(pack.findings),
    step: idsOf(pack.steps),
    material: idsOf(pack.materials),
    caution: idsOf(pack.cautions),
    formula: Object.keys(program.formulas),
  };
  const byProgram = [
    ...program.sources.map((id) => ({ kind: 'source', file: 'sources.json', id })),
    ...program.figures.map((id) => ({ kind: 'figure', file: 'figures', id })),
    ...program.facts.map((id) => ({ kind: 'fact', file: 'facts.json', id })),
  ]
    .filter(({ kind, id }) => known[kind]?.includes(id) !== true)
    .map((missing): RuleProblem => ({ code: 'unknown-id', ...missing, pointer: '' }));
  const byRecords = referencesOf(pack)
    .filter(({ kind, id }) => known[kind]?.includes(id) !== true)
    .map(({ from, fromKey, pointer, kind, id }): RuleProblem => {
      const nearest = program.nearest(id, known[kind] ?? []);
      const place = placeOf(from, fromKey, pointer);
      return { code: 'unknown-id', ...place, kind, id, ...(nearest === undefined ? {} : { nearest }) };
    });
  return [...byProgram, ...byRecords];
}

/** Every input that a formula needs must be given. */
function checkInputs(pack: PackData, program: ProgramSide, placeOf: PlaceOf): RuleProblem[] {
  return pack.steps.flatMap(({ id, amounts, labour }) => {
    const uses = [
      ...amounts.map((amount, index) => ({ ...amount, at: jsonPointer('amounts', index, 'inputs') })),
      ...(labour === undefined ? [] : [{ ...labour, at: '/labour/inputs' }]),
    ];
    return uses.flatMap(({ formula, inputs, at }) => {
      const wanted = Object.hasOwn(program.formulas, formula) ? (program.formulas[formula] ?? []) : [];
      return wanted
        .filter((input) => !Object.hasOwn(inputs, input))
        .map((input): RuleProblem => ({ code: 'no-input', ...placeOf('step', id, at), formula, id: input }));
    });
  });
}

function checkExpressions(pack: PackData, program: ProgramSide, placeOf: PlaceOf): RuleProblem[] {
  const names = readableNames(pack);
  const plainNames = new Map([...names].filter(([name]) => !/^(facts|findings)\./.test(name)));
  return expressionsOf(pack).flatMap((placed) => {
    const { pointer, ...place } = placeOf(placed.kindOfRecord, placed.id, placed.pointer);
    return lint(placed.expression, placed.wanted, pointer, {
      ...place,
      names: placed.kindOfRecord === 'together' ? plainNames : names,
      nearest: program.nearest,
    }).filter((problem) => !isPlainAssumption(placed, problem));
  });
}

/** A literal assumption is an answer, not a threshold: its number needs no figure. */
const isPlainAssumption = (placed: Placed, problem: RuleProblem): boolean =>
  problem.code === 'bare-number' &&
  placed.pointer === '/dontKnow/assume' &&
  typeof placed.expression === 'number';

/** Verdicts are tried in order, and one must always be left. */
function checkLastVerdict(pack: PackData, placeOf: PlaceOf): RuleProblem[] {
  const last = pack.verdicts.length - 1;
  return pack.verdicts[last]?.when === true
    ? []
    : [{ code: 'last-verdict', ...placeOf('verdict', String(Math.max(0, last)), '/when') }];
}

/** Neither names that are read nor steps that are waited for may lead back to where they began. */
function checkCircles(pack: PackData, placeOf: PlaceOf): RuleProblem[] {
  const tell = (circle: readonly string[] | undefined, recordOf: (name: string) => [string, string]) => {
    const [first] = circle ?? [];
    if (circle === undefined || first === undefined) return [];
    const problem: RuleProblem = {
      code: 'circle',
      ...placeOf(...recordOf(first)),
      path: circle.join(' -> '),
    };
    return [problem];
  };
  const waits = new Map(pack.steps.map(({ id, after }) => [id, after.map(({ step }) => step)]));
  return [
    ...tell(findCircle(readsByName(pack)), (name) => recordOf(name).split(' ') as [string, string]),
    ...tell(findCircle(waits), (id) => ['step', id]),
  ];
}

/** Work of one day is listed by `order`, so that must say the same as the phases and the waits. */
const checkOrder = (pack: PackData, placeOf: PlaceOf): RuleProblem[] =>
  orderFaults(pack).map(
    ({ first, later, why }): RuleProblem => ({
      code: 'order',
      ...placeOf('step', later, '/order'),
      id: later,
      first,
      why,
    }),
  );

/** A slot is filled with a figure or a fact that is a number. */
function checkSlots(pack: PackData, program: ProgramSide, placeOf: PlaceOf): RuleProblem[] {
  const names = [...readableNames(pack)]
    .filter(([name, { kind }]) => kind === 'number' && /^(figures|facts)\./.test(name))
    .map(([name]) => name);
  return sentencesOf(pack).flatMap(({ kind, id, pointer, text }) =>
    slotsIn(text)
      .filter((name) => !names.includes(name))
      .map((name): RuleProblem => {
        const near = program.nearest(name, names);
        const place = placeOf(kind, id, pointer);
        return { code: 'unknown-name', ...place, id: name, ...(near === undefined ? {} : { nearest: near }) };
      }),
  );
}

/** What nobody uses is a slip; figures, which are a table to draw on, are told apart (see readers.ts). */
function checkUse(pack: PackData, program: ProgramSide, placeOf: PlaceOf): RuleProblem[] {
  const read = namesRead(pack);
  const referred = new Set(referencesOf(pack).map(({ kind, id }) => `${kind} ${id}`));
  const unused = (
    kind: string,
    records: readonly { readonly id: string }[],
    isUsed: (id: string) => boolean,
  ): RuleProblem[] =>
    records
      .filter(({ id }) => !isUsed(id))
      .map(({ id }) => ({ code: 'unused', ...placeOf(kind, id), kind, id }));
  const isReferred = (kind: string) => (id: string) => referred.has(`${kind} ${id}`);
  return [
    ...unused('question', pack.questions, (id) => read.has(id) || program.questions.includes(id)),
    ...unused('fact', pack.facts, (id) => read.has(`facts.${id}`) || program.facts.includes(id)),
    ...unused('source', pack.sources, (id) => isReferred('source')(id) || program.sources.includes(id)),
    ...unused('caution', pack.cautions, isReferred('caution')),
    ...unused('material', pack.materials, isReferred('material')),
  ];
}
