/** A case worked out through the pack: its plan, what is true of the lawn, and which looks are good ones. */
import { parseIsoDate } from '../base/dates.js';
import type { Units } from '../base/us-units.js';
import type { Answers } from '../interview/answers.js';
import { assemblePlan } from '../planner/assemble-plan.js';
import type { Plan } from '../planner/plan.js';
import { sayerOf } from '../planner/rework.js';
import type { Say } from '../planner/texts.js';
import { scopeFor } from '../planner/working-scope.js';
import { namesIn } from '../rules/call.js';
import type { Scope } from '../rules/evaluate.js';
import { everythingBehind, readsByName } from '../rules/graph.js';
import type { Pack } from '../rules/pack.js';
import type { Expression, Question } from '../rules/schema.js';
import type { DrillCase, Marking } from '../rules/schema-case.js';
import { isAsked } from '../rules/scope.js';
import { wordedCase } from './worded-case.js';

export interface WorkedCase {
  /** Its sentences as they are told, in the trainee's units. */
  readonly lesson: DrillCase;
  /** In which the trainee reads, and means a number without a unit. */
  readonly units: Units;
  /** Fills the slots of a sentence of the pack. */
  readonly say: Say;
  readonly pack: Pack;
  readonly marking: Marking;
  /** Everything that is so, whether or not anyone looks. */
  readonly answers: Answers;
  readonly plan: Plan;
  /** Ids of the findings that are there. */
  readonly found: ReadonlySet<string>;
  /** What can be looked at or asked, in the pack's order. */
  readonly looks: readonly Question[];
  /** Looks without which nobody could be sure, or somebody could be hurt. */
  readonly good: ReadonlySet<string>;
  /** Looks that rule a look-alike or another verdict out, and every look for safety. */
  readonly sound: ReadonlySet<string>;
}

/** @throws {Error} when the pack can make no plan of the case's answers */
export function workOut(
  lesson: DrillCase,
  pack: Pack,
  marking: Marking,
  units: Units = 'metric',
): WorkedCase {
  const answers = answersOf(lesson, marking);
  const input = { pack, answers, today: parseIsoDate(lesson.today), assumeAll: true, units };
  const plan = assemblePlan(input);
  const looks = pack.questions.filter(
    ({ id }) =>
      !marking.givens.includes(id) && id !== 'lawnParts' && (Object.hasOwn(answers, id) || id === 'areaM2'),
  );
  return {
    lesson: wordedCase(lesson, units),
    units,
    say: sayerOf(input),
    pack,
    marking,
    answers,
    plan,
    found: new Set(plan.findings.filter(({ verdict }) => verdict === 'found').map(({ id }) => id)),
    looks,
    good: new Set([...lesson.needs, ...lesson.dangers.map(({ look }) => look)]),
    sound: soundLooks(lesson, pack),
  };
}

/** The usual lawn with what is different here; the area is given in one way only. */
export function answersOf({ answers }: Pick<DrillCase, 'answers'>, { usual }: Marking): Answers {
  const { areaM2, ...rest } = usual;
  const area = Object.hasOwn(answers, 'lawnParts') || areaM2 === undefined ? {} : { areaM2 };
  return { ...rest, ...area, ...answers } as Answers;
}

function soundLooks(lesson: DrillCase, pack: Pack): Set<string> {
  const alike = lesson.wrongTurns.flatMap(({ finding }) => (finding === undefined ? [] : [finding]));
  const findings = [...lesson.expected.findings, ...lesson.expected.not, ...alike];
  const behind = questionsBehind(
    pack,
    findings.map((id) => ({ var: `findings.${id}` })),
  );
  const verdict = questionsBehind(
    pack,
    pack.verdicts.map(({ when }) => when),
  );
  const safety = pack.questions.filter((question) => question.safety === true).map(({ id }) => id);
  return new Set([...behind, ...verdict, ...safety, ...lesson.misleads.map(({ look }) => look)]);
}

/** Every question that these conditions rest on. */
export function questionsBehind(pack: Pack, conditions: readonly Expression[]): string[] {
  const names = everythingBehind(conditions.flatMap(namesIn), readsByName(pack));
  return pack.questions.filter(({ id }) => names.has(id)).map(({ id }) => id);
}

/** What can be concluded from these looks alone, and from what was told at the gate. */
export function scopeOfSeen({ pack, answers, marking, lesson }: WorkedCase, seen: Iterable<string>): Scope {
  const ids = new Set([...seen, ...marking.givens]);
  // One look at the size shows its parts.
  if (ids.has('areaM2')) ids.add('lawnParts');
  const known = Object.fromEntries(Object.entries(answers).filter(([id]) => ids.has(id)));
  return scopeFor({ pack, answers: known, today: parseIsoDate(lesson.today), assume: 'nothing' });
}

/** Whether there is anything to look at: a question whose own condition is not met has no answer here. */
export function isThere({ pack, answers, lesson }: WorkedCase, question: Question): boolean {
  const today = parseIsoDate(lesson.today);
  return isAsked(question, scopeFor({ pack, answers, today, assume: 'all' })) !== false;
}
