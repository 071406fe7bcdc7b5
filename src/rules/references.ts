/** Every id in a record that must lead to another record, with the place where it stands. */
import { jsonPointer } from '../base/json-pointer.js';
import type { PackData } from './pack.js';
import type { Citation, Finding, Question, Step } from './schema.js';
import type { SignRule } from './schema-judgement.js';

export interface Reference {
  /** Kind and key of the record that holds it. */
  readonly from: string;
  readonly fromKey: string;
  /** Place inside that record. */
  readonly pointer: string;
  /** What it must lead to. */
  readonly kind: string;
  readonly id: string;
}

/** Ids inside one record, before it is said which record that is. */
type Inside = Omit<Reference, 'from' | 'fromKey'>;

export function referencesOf(pack: PackData): Reference[] {
  const from = (kind: string, key: string | number, inside: readonly Inside[]): Reference[] =>
    inside.map((each) => ({ ...each, from: kind, fromKey: String(key) }));
  const citing = <Item extends { readonly sources: readonly Citation[] }>(
    kind: string,
    items: readonly Item[],
    keyOf: (item: Item, index: number) => string | number,
  ): Reference[] => items.flatMap((item, index) => from(kind, keyOf(item, index), cited(item.sources)));
  const idOf = ({ id }: { readonly id: string }): string => id;
  const placeOf = (_: unknown, index: number): number => index;
  return [
    ...citing('figure', pack.figures, idOf),
    ...pack.questions.flatMap((question) => from('question', question.id, ofQuestion(question))),
    ...citing('finding', pack.findings, idOf),
    ...pack.findings.flatMap((finding) => from('finding', finding.id, ofFinding(finding))),
    ...citing('step', pack.steps, idOf),
    ...pack.steps.flatMap((step) => from('step', step.id, ofStep(step))),
    ...pack.materials.flatMap(({ id, density }) =>
      density === undefined
        ? []
        : from('material', id, [{ pointer: '/density', kind: 'figure', id: density }]),
    ),
    ...citing('caution', pack.cautions, idOf),
    ...citing('verdict', pack.verdicts, placeOf),
    ...citing('outlook', pack.outlook, placeOf),
    ...citing('watering', pack.watering, placeOf),
    ...citing('trouble', pack.troubles, idOf),
    ...pack.troubles.flatMap(({ id, holds = [] }) =>
      from(
        'trouble',
        id,
        listed(
          'step',
          'holds',
          holds.map(({ step }) => step),
          'step',
        ),
      ),
    ),
    ...pack.verdicts.flatMap(({ open }, index) => from('verdict', index, ofOpenSigns(open?.signs ?? []))),
    ...citing('sign', pack.signs, idOf),
    ...pack.signs.flatMap((sign) => from('sign', sign.id, ofSign(sign))),
    ...from('climate', '', [{ pointer: '/sourceId', kind: 'source', id: pack.climate.sourceId }]),
  ];
}

const cited = (sources: readonly Citation[], at: readonly string[] = []): Inside[] =>
  sources.map(({ id }, index) => ({
    pointer: jsonPointer(...at, 'sources', index, 'id'),
    kind: 'source',
    id,
  }));

const listed = (kind: string, field: string, ids: readonly string[], key?: string): Inside[] =>
  ids.map((id, index) => ({
    pointer: jsonPointer(field, index, ...(key === undefined ? [] : [key])),
    kind,
    id,
  }));

function ofQuestion({ section, impliedBy = [], follows }: Question): Inside[] {
  const implying = impliedBy.map(({ answered }) => answered);
  return [
    { pointer: '/section', kind: 'section', id: section },
    ...listed('question', 'impliedBy', implying, 'answered'),
    ...(follows === undefined ? [] : [{ pointer: '/follows', kind: 'question', id: follows }]),
  ];
}

function ofFinding({ leadsTo, examples }: Finding): Inside[] {
  const answered = Object.entries(examples).flatMap(([verdict, list]) =>
    list.flatMap((answers, index) =>
      Object.keys(answers).map((id) => ({
        pointer: jsonPointer('examples', verdict, index, id),
        kind: 'question',
        id,
      })),
    ),
  );
  return [...listed('step', 'leadsTo', leadsTo), ...answered];
}

const ofOpenSigns = (signs: readonly (readonly string[])[]): Inside[] =>
  signs.flatMap((ids, index) =>
    ids.map((id, place) => ({ pointer: jsonPointer('open', 'signs', index, place), kind: 'question', id })),
  );

function ofSign({ questions, findings = [], maybe }: SignRule): Inside[] {
  return [
    ...listed('question', 'questions', questions),
    ...listed('finding', 'findings', findings),
    ...maybe.flatMap(({ sources = [] }, index) => cited(sources, ['maybe', String(index)])),
  ];
}

function ofStep({
  phase,
  serves = [],
  window,
  after,
  dayChecks,
  tools,
  cautions,
  cautionWhen = {},
  amounts,
  labour,
}: Step): Inside[] {
  const ids = (list: readonly { readonly id: string }[]): string[] => list.map(({ id }) => id);
  return [
    { pointer: '/phase', kind: 'phase', id: phase },
    ...listed('step', 'serves', serves),
    ...dayChecks.flatMap(({ unlessKnown }, index) =>
      unlessKnown === undefined
        ? []
        : [{ pointer: jsonPointer('dayChecks', index, 'unlessKnown'), kind: 'question', id: unlessKnown }],
    ),
    ...cited(window?.sources ?? [], ['window']),
    ...listed(
      'step',
      'after',
      after.map(({ step }) => step),
      'step',
    ),
    ...listed('material', 'tools', ids(tools), 'id'),
    ...listed('caution', 'cautions', cautions),
    ...Object.keys(cautionWhen)
      .filter((id) => !cautions.includes(id))
      .map((id) => ({ pointer: jsonPointer('cautionWhen', id), kind: 'caution of this step', id })),
    ...listed(
      'material',
      'amounts',
      amounts.map(({ material }) => material),
      'material',
    ),
    ...listed(
      'formula',
      'amounts',
      amounts.map(({ formula }) => formula),
      'formula',
    ),
    ...(labour === undefined ? [] : [{ pointer: '/labour/formula', kind: 'formula', id: labour.formula }]),
  ];
}
