/** Every condition of a pack with the place where it stands and the kind that is wanted there. */
import { once } from '../base/once.js';
import { callOf } from './call.js';
import { answerOf } from './names.js';
import type { Kind } from './operators.js';
import type { PackData } from './pack.js';
import type { Expression } from './schema.js';

export interface Placed {
  /** The record that holds it, as `step sow`. */
  readonly owner: string;
  readonly kindOfRecord: RecordKind;
  /** Key of the record: its id, or its place in the list where ids repeat or are missing. */
  readonly id: string;
  readonly pointer: string;
  readonly wanted: Kind;
  readonly expression: Expression;
  /** Whether a plan is left undecided while this is open. */
  readonly decides: boolean;
}

export type RecordKind =
  | 'question'
  | 'fact'
  | 'finding'
  | 'step'
  | 'caution'
  | 'verdict'
  | 'sign'
  | 'outlook'
  | 'watering'
  | 'trouble'
  | 'notDone'
  | 'together'
  | 'season';

export const expressionsOf = once((pack: PackData): readonly Placed[] => {
  const placed: Placed[] = [];
  const put = (
    kindOfRecord: RecordKind,
    id: string,
    pointer: string,
    expression: Expression | undefined | null,
    wanted: Kind = 'truth',
    decides = false,
    name = id,
  ): void => {
    if (expression === undefined || expression === null) return;
    placed.push({ owner: `${kindOfRecord} ${name}`, kindOfRecord, id, pointer, wanted, expression, decides });
  };
  const putAll = (id: string, pointer: string, inputs: Readonly<Record<string, Expression>>): void => {
    for (const [name, expression] of Object.entries(inputs))
      put('step', id, `${pointer}/${name}`, expression, 'number');
  };

  for (const question of pack.questions) {
    put('question', question.id, '/askWhen', question.askWhen);
    put('question', question.id, '/dontKnow/assume', question.dontKnow.assume, answerOf(question).kind);
    put('question', question.id, '/readWithin', question.readWithin, 'number');
  }
  for (const fact of pack.facts) put('fact', fact.id, '/value', fact.value, fact.kind);
  for (const finding of pack.findings) {
    put('finding', finding.id, '/when', finding.when);
    finding.evidence?.forEach((sign, index) => {
      put('finding', finding.id, `/evidence/${index}/when`, sign.when);
    });
  }
  for (const step of pack.steps) {
    put('step', step.id, '/when', step.when, 'truth', true);
    step.after.forEach((wait, index) => {
      put('step', step.id, `/after/${index}/minDays`, wait.minDays, 'number', true);
      put('step', step.id, `/after/${index}/maxDays`, wait.maxDays, 'number', true);
    });
    for (const kind of ['between', 'warmSeason', 'rainFed'] as const)
      step.window?.[kind]?.forEach(({ opensAtC, closes, rain, whileGrowing }, index) => {
        const at = `/window/${kind}/${index}`;
        put('step', step.id, `${at}/opensAtC`, opensAtC, 'number', true);
        put('step', step.id, `${at}/whileGrowing/belowC`, whileGrowing?.belowC, 'number', true);
        put('step', step.id, `${at}/whileGrowing/daysLeft`, whileGrowing?.daysLeft, 'number', true);
        put('step', step.id, `${at}/closes/belowC`, closes?.belowC, 'number', true);
        put('step', step.id, `${at}/closes/daysLeft`, closes?.daysLeft, 'number', true);
        put('step', step.id, `${at}/rain/share`, rain?.share, 'number', true);
        put('step', step.id, `${at}/rain/days`, rain?.days, 'number', true);
      });
    put('step', step.id, '/lastsDays', step.lastsDays, 'number', true);
    step.notBefore?.forEach((limit, index) => {
      put('step', step.id, `/notBefore/${index}/when`, limit.when, 'truth', true);
      put('step', step.id, `/notBefore/${index}/date`, limit.date, 'word');
      put('step', step.id, `/notBefore/${index}/plusDays`, limit.plusDays, 'number');
    });
    step.amounts.forEach((amount, index) => {
      put('step', step.id, `/amounts/${index}/when`, amount.when, 'truth', true);
      putAll(step.id, `/amounts/${index}/inputs`, amount.inputs);
    });
    step.tools.forEach((tool, index) => {
      put('step', step.id, `/tools/${index}/when`, tool.when, 'truth', true);
    });
    // Open, it is said all the same: neither leaves a plan undecided.
    step.dayChecks.forEach(({ when }, index) => {
      put('step', step.id, `/dayChecks/${index}/when`, when);
    });
    for (const [id, when] of Object.entries(step.cautionWhen ?? {}))
      put('step', step.id, `/cautionWhen/${id}`, when);
    if (step.labour !== undefined) putAll(step.id, '/labour/inputs', step.labour.inputs);
  }
  for (const caution of pack.cautions) put('caution', caution.id, '/when', caution.when, 'truth', true);
  pack.verdicts.forEach(({ id, when, open, also }, index) => {
    put('verdict', `${index}`, '/when', when, 'truth', true, id);
    put('verdict', `${index}`, '/open/from', open?.from, 'number', false, id);
    put('verdict', `${index}`, '/open/unless', open?.unless, 'truth', false, id);
    also?.forEach((more, place) => {
      put('verdict', `${index}`, `/also/${place}/when`, more.when, 'truth', false, id);
    });
  });
  for (const { id, when, harmless = [] } of pack.signs) {
    put('sign', id, '/when', when);
    harmless.forEach((reason, place) => {
      put('sign', id, `/harmless/${place}/when`, reason.when);
    });
  }
  pack.outlook.forEach((outlook, index) => {
    put('outlook', `${index}`, '/when', outlook.when, 'truth', true, `week ${outlook.weeks}`);
  });
  pack.watering.forEach((watering, index) => {
    const name = `week ${watering.fromWeek}`;
    put('watering', `${index}`, '/turnsPerDay', watering.turnsPerDay, 'number', false, name);
    put('watering', `${index}`, '/mmPerDay', watering.mmPerDay, 'number', false, name);
    put('watering', `${index}`, '/timesWaterUse', watering.timesWaterUse, 'number', false, name);
    put('watering', `${index}`, '/workMinPerTurn', watering.workMinPerTurn, 'number', false, name);
    put('watering', `${index}`, '/workMinPerL', watering.workMinPerL, 'number', false, name);
  });
  for (const { id, when, holds } of pack.troubles) {
    put('trouble', id, '/when', when);
    holds?.forEach(({ days }, index) => {
      put('trouble', id, `/holds/${index}/days`, days, 'number');
    });
  }
  for (const limit of pack.notDone) put('notDone', limit.id, '/when', limit.when, 'truth', true);
  for (const [pointer, expression] of expressionsOfSeasons(pack.seasons)) {
    const [wanted, decides] = ({ '/half': ['word', false], '/southern': ['truth', true] } as const)[
      pointer
    ] ?? ['number', false];
    put('season', 'seasons', `/seasons${pointer}`, expression, wanted, decides);
  }
  for (const rule of pack.together) put('together', rule.id, '/must', rule.must);
  return placed;
});

/** Every expression of the seasons with its place, at any depth. */
function expressionsOfSeasons(seasons: object = {}, at = ''): [string, Expression][] {
  return Object.entries(seasons).flatMap(([key, value]: [string, unknown]): [string, Expression][] => {
    if (typeof value !== 'object' || value === null) return [];
    return callOf(value as Expression) === undefined
      ? expressionsOfSeasons(value, `${at}/${key}`)
      : [[`${at}/${key}`, value as Expression]];
  });
}
