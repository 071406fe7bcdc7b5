/**
 * Cross-checks of a whole pack: every id leads somewhere, every condition is sound, nothing lies about unused.
 * All problems are gathered, none stops the search. What the program itself offers and reads is passed in.
 */

import { namesIn } from './call.js';
import { checkAssumptions } from './check-assumptions.js';
import { expressionsOf, type Placed } from './expressions.js';
import { findCircle, readsByName } from './graph.js';
import { lint } from './lint.js';
import { readableNames } from './names.js';
import type { PackData } from './pack.js';
import type { RuleProblem } from './problem.js';
import type { Citation } from './schema.js';
import { sentencesOf, slotsIn } from './slots.js';

/** The program's side of the contract with a pack. */
export interface ProgramSide {
  /** Formula name to the inputs it must be given. */
  readonly formulas: Readonly<Record<string, readonly string[]>>;
  /** Questions that the program reads by itself. */
  readonly questions: readonly string[];
  /** Sources that it cites by itself. */
  readonly sources: readonly string[];
  readonly nearest: (name: string, names: readonly string[]) => string | undefined;
}

/** Where each record stands, as `kind id` to file, so that a problem can name the file. */
export type FileOf = (kind: string, id: string) => string;

export function checkPack(pack: PackData, program: ProgramSide, fileOf: FileOf): RuleProblem[] {
  return [
    ...checkIds(pack, program, fileOf),
    ...checkExpressions(pack, program, fileOf),
    ...checkCircles(pack, fileOf),
    ...checkAssumptions(pack, fileOf),
    ...checkSlots(pack, program, fileOf),
    ...checkUse(pack, program, fileOf),
  ];
}

interface Reference {
  readonly from: string;
  readonly fromId: string;
  readonly pointer: string;
  readonly kind: string;
  readonly id: string;
}

function referencesOf(pack: PackData): Reference[] {
  const references: Reference[] = [];
  const cite = (from: string, fromId: string, sources: readonly Citation[], pointer = '/sources'): void => {
    for (const { id } of sources) references.push({ from, fromId, pointer, kind: 'source', id });
  };
  const refer = (
    from: string,
    fromId: string,
    pointer: string,
    kind: string,
    ids: readonly string[],
  ): void => {
    for (const id of ids) references.push({ from, fromId, pointer, kind, id });
  };
  for (const figure of pack.figures) cite('figure', figure.id, figure.sources);
  for (const question of pack.questions) {
    refer('question', question.id, '/section', 'section', [question.section]);
    const implying = question.impliedBy?.map(({ answered }) => answered) ?? [];
    refer('question', question.id, '/impliedBy', 'question', implying);
  }
  for (const finding of pack.findings) {
    cite('finding', finding.id, finding.sources);
    refer('finding', finding.id, '/leadsTo', 'step', finding.leadsTo);
  }
  for (const step of pack.steps) {
    cite('step', step.id, step.sources);
    cite('step', step.id, step.window?.sources ?? [], '/window/sources');
    refer(
      'step',
      step.id,
      '/after',
      'step',
      step.after.map((wait) => wait.step),
    );
    refer(
      'step',
      step.id,
      '/tools',
      'material',
      step.tools.map((tool) => tool.id),
    );
    refer('step', step.id, '/cautions', 'caution', step.cautions);
    refer(
      'step',
      step.id,
      '/amounts',
      'material',
      step.amounts.map((amount) => amount.material),
    );
    refer(
      'step',
      step.id,
      '/amounts',
      'formula',
      step.amounts.map((amount) => amount.formula),
    );
    if (step.labour !== undefined) refer('step', step.id, '/labour', 'formula', [step.labour.formula]);
  }
  for (const caution of pack.cautions) cite('caution', caution.id, caution.sources);
  for (const verdict of pack.verdicts) cite('verdict', verdict.id, verdict.sources);
  for (const outlook of pack.outlook) cite('outlook', `${outlook.weeks}`, outlook.sources);
  for (const watering of pack.watering) cite('watering', `${watering.fromWeek}`, watering.sources);
  refer('climate', '', '/sourceId', 'source', [pack.climate.sourceId]);
  return references;
}

function checkIds(pack: PackData, program: ProgramSide, fileOf: FileOf): RuleProblem[] {
  const known: Record<string, readonly string[]> = {
    source: pack.sources.map((source) => source.id),
    section: pack.sections.map((section) => section.id),
    question: pack.questions.map((question) => question.id),
    step: pack.steps.map((step) => step.id),
    material: pack.materials.map((material) => material.id),
    caution: pack.cautions.map((caution) => caution.id),
    formula: Object.keys(program.formulas),
  };
  const problems: RuleProblem[] = program.sources
    .filter((id) => !known.source?.includes(id))
    .map((id) => ({ code: 'unknown-id', file: 'sources.json', pointer: '', kind: 'source', id }));
  for (const { from, fromId, pointer, kind, id } of referencesOf(pack)) {
    if (known[kind]?.includes(id)) continue;
    const nearest = program.nearest(id, known[kind] ?? []);
    problems.push({
      code: 'unknown-id',
      file: fileOf(from, fromId),
      pointer: `/${fromId}${pointer}`,
      kind,
      id,
      ...(nearest === undefined ? {} : { nearest }),
    });
  }
  for (const step of pack.steps) {
    const uses = [
      ...step.amounts.map((amount) => ({ ...amount, at: 'amounts' })),
      ...(step.labour === undefined ? [] : [{ ...step.labour, at: 'labour' }]),
    ];
    for (const { formula, inputs, at } of uses) {
      const wanted = Object.hasOwn(program.formulas, formula) ? (program.formulas[formula] ?? []) : [];
      for (const name of wanted.filter((input) => !Object.hasOwn(inputs, input))) {
        problems.push({
          code: 'unknown-id',
          file: fileOf('step', step.id),
          pointer: `/${step.id}/${at}/${formula}`,
          kind: 'input',
          id: name,
        });
      }
    }
  }
  return problems;
}

function checkExpressions(pack: PackData, program: ProgramSide, fileOf: FileOf): RuleProblem[] {
  const names = readableNames(pack);
  return expressionsOf(pack).flatMap((placed) =>
    lint(placed.expression, placed.wanted, `/${placed.id}${placed.pointer}`, {
      file: fileOf(placed.kindOfRecord, placed.id),
      names,
      nearest: program.nearest,
    }).filter((problem) => !isPlainAssumption(placed, problem)),
  );
}

/** A literal assumption is an answer, not a threshold: its number needs no figure. */
const isPlainAssumption = (placed: Placed, problem: RuleProblem): boolean =>
  problem.code === 'bare-number' &&
  placed.pointer === '/dontKnow/assume' &&
  typeof placed.expression === 'number';

/** Neither names that are read nor steps that are waited for may lead back to where they began. */
function checkCircles(pack: PackData, fileOf: FileOf): RuleProblem[] {
  const tell = (circle: readonly string[] | undefined, placeOf: (name: string) => [string, string]) => {
    const [first] = circle ?? [];
    if (circle === undefined || first === undefined) return [];
    const [kind, id] = placeOf(first);
    const problem: RuleProblem = {
      code: 'circle',
      file: fileOf(kind, id),
      pointer: `/${id}`,
      path: circle.join(' -> '),
    };
    return [problem];
  };
  const waits = new Map(pack.steps.map(({ id, after }) => [id, after.map(({ step }) => step)]));
  return [
    ...tell(findCircle(readsByName(pack)), recordNamed),
    ...tell(findCircle(waits), (id) => ['step', id]),
  ];
}

/** The kind and id of the record that a condition reads under this name. */
function recordNamed(name: string): [string, string] {
  const [folder = '', id] = name.split('.');
  return id === undefined ? ['question', name] : [folder.replace(/s$/, ''), id];
}

/** A slot is filled with a figure or a fact that is a number. */
function checkSlots(pack: PackData, program: ProgramSide, fileOf: FileOf): RuleProblem[] {
  const names = [...readableNames(pack)]
    .filter(([name, { kind }]) => kind === 'number' && /^(figures|facts)\./.test(name))
    .map(([name]) => name);
  return sentencesOf(pack).flatMap(({ kind, id, text }) =>
    slotsIn(text)
      .filter((name) => !names.includes(name))
      .map((name): RuleProblem => {
        const near = program.nearest(name, names);
        const place = { file: fileOf(kind, id), pointer: `/${id}` };
        return { code: 'unknown-name', ...place, id: name, ...(near === undefined ? {} : { nearest: near }) };
      }),
  );
}

/** Figures are a table to draw on, and need no reader; everything else that nobody uses is a slip. */
function checkUse(pack: PackData, program: ProgramSide, fileOf: FileOf): RuleProblem[] {
  const read = new Set(expressionsOf(pack).flatMap((placed) => namesIn(placed.expression)));
  for (const fact of pack.facts) for (const name of fact.reads ?? []) read.add(name);
  for (const { text } of sentencesOf(pack)) for (const name of slotsIn(text)) read.add(name);
  const referred = new Set(referencesOf(pack).map(({ kind, id }) => `${kind} ${id}`));
  const unused = (kind: string, ids: readonly string[], isUsed: (id: string) => boolean): RuleProblem[] =>
    ids
      .filter((id) => !isUsed(id))
      .map((id) => ({ code: 'unused', file: fileOf(kind, id), pointer: `/${id}`, kind, id }));
  return [
    ...unused(
      'question',
      pack.questions.map(({ id }) => id),
      (id) => read.has(id) || program.questions.includes(id),
    ),
    ...unused(
      'fact',
      pack.facts.map(({ id }) => id),
      (id) => read.has(`facts.${id}`),
    ),
    ...unused(
      'source',
      pack.sources.map(({ id }) => id),
      (id) => referred.has(`source ${id}`) || program.sources.includes(id),
    ),
    ...unused(
      'caution',
      pack.cautions.map(({ id }) => id),
      (id) => referred.has(`caution ${id}`),
    ),
    ...unused(
      'material',
      pack.materials.map(({ id }) => id),
      (id) => referred.has(`material ${id}`),
    ),
  ];
}
