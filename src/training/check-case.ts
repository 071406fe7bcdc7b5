/**
 * Proves a case: the pack itself reaches the expected result, the needed looks suffice to be sure of it, the amounts
 * agree with pencil and paper, and no two cases teach the same. Each fault is one sentence.
 */
import { lawnPartsArea } from '../agronomy/area-parts.js';
import { parseIsoDate } from '../base/dates.js';
import { nearest } from '../base/nearest.js';
import type { LawnPart } from '../interview/answers.js';
import { checkAnswers } from '../interview/check-answers.js';
import { ScheduleClash } from '../planner/assemble-plan.js';
import { placeFault } from '../planner/place.js';
import { evaluate } from '../rules/evaluate.js';
import { lint, type Named } from '../rules/lint.js';
import { readableNames } from '../rules/names.js';
import type { Pack } from '../rules/pack.js';
import { explain } from '../rules/problem.js';
import type { CaseBook, DrillCase, Marking } from '../rules/schema-case.js';
import { perfectLooks } from './perfect.js';
import { GIVEN, rightAmount } from './right-amount.js';
import { brokenPairs } from './step-order.js';
import { answersOf, isThere, scopeOfSeen, type WorkedCase, workOut } from './worked-case.js';

export interface CaseFault {
  readonly caseId: string;
  readonly says: string;
}

/** Every fault of every case, and of the cases taken together. */
export function checkBook({ marking, cases }: CaseBook, pack: Pack): CaseFault[] {
  return [
    ...cases.flatMap((lesson) =>
      checkCase(lesson, pack, marking).map((says) => ({ caseId: lesson.id, says })),
    ),
    ...sameLessons(cases),
  ];
}

/** Every fault of one case. */
export function checkCase(lesson: DrillCase, pack: Pack, marking: Marking): string[] {
  const names = [...unknownNames(lesson, pack), ...sumFaults(lesson, pack)];
  if (names.length > 0) return names;
  const areaOfParts = (lawnParts: readonly LawnPart[]): number => lawnPartsArea({ lawnParts }).areaM2;
  const today = parseIsoDate(lesson.today);
  const read = checkAnswers(answersOf(lesson, marking), {
    pack,
    areaOfParts,
    placeFault: (typed) => placeFault(typed, pack.climate),
    today,
  });
  if (!read.ok) return [...read.faults];
  const worked = workedOr(() => workOut(lesson, pack, marking));
  if (typeof worked === 'string') return [worked];
  return [...resultFaults(worked), ...lookFaults(worked), ...amountFaults(worked)];
}

/** What is worked out, or why no plan can be made of it. */
function workedOr(work: () => WorkedCase): WorkedCase | string {
  try {
    return work();
  } catch (error) {
    if (error instanceof ScheduleClash) return `no plan can be made of its answers. ${error.message}`;
    throw error;
  }
}

function unknownNames(lesson: DrillCase, pack: Pack): string[] {
  const { expected, dangers, misleads, wrongTurns, amounts } = lesson;
  const has = (
    kind: string,
    known: ReadonlyMap<string, unknown>,
    ids: readonly (string | undefined)[],
  ): string[] =>
    ids
      .filter((id) => id !== undefined && !known.has(id))
      .map((id) => `there is no ${kind} "${id}". Correct the id.`);
  return [
    ...has('question', pack.questionById, [
      ...Object.keys(lesson.seen),
      ...lesson.needs,
      ...[...dangers, ...misleads].map(({ look }) => look),
    ]),
    ...has('finding', pack.findingById, [
      ...expected.findings,
      ...expected.not,
      ...wrongTurns.map(({ finding }) => finding),
    ]),
    ...has('step', pack.stepById, [
      ...expected.steps,
      ...expected.notSteps,
      ...dangers.flatMap(({ neverSteps = [] }) => neverSteps),
      ...wrongTurns.map(({ step }) => step),
      ...amounts.flatMap(({ find }) => ('step' in find ? [find.step] : [])),
    ]),
  ];
}

function resultFaults({ lesson, plan, found }: WorkedCase): string[] {
  const { expected, dangers, wrongTurns } = lesson;
  const steps = plan.steps.map(({ id }) => id);
  const wrongSteps = [...expected.notSteps, ...dangers.flatMap(({ neverSteps = [] }) => neverSteps)];
  const turns = wrongTurns.flatMap(({ finding }) => (finding === undefined ? [] : [finding]));
  return [
    ...expected.findings.filter((id) => !found.has(id)).map((id) => `the rules do not find "${id}" here.`),
    ...[...expected.not, ...turns]
      .filter((id) => found.has(id))
      .map((id) => `the rules find "${id}" here, and the case says that it is not there.`),
    ...(plan.verdict.id === expected.verdict
      ? []
      : [`the rules come to "${plan.verdict.id}", the case expects "${expected.verdict}".`]),
    ...expected.steps
      .filter((id) => !steps.includes(id))
      .map((id) => `the plan has no step "${id}"; it has ${steps.join(', ')}.`),
    ...wrongSteps
      .filter((id) => steps.includes(id))
      .map((id) => `the plan has the step "${id}", which would be a mistake.`),
    ...wrongTurns
      .filter(({ verdict }) => verdict === expected.verdict)
      .map(({ verdict }) => `"${verdict}" is expected and a wrong turn as well.`),
    ...(expected.alsoRight ?? [])
      .filter(
        ({ verdict }) => verdict === expected.verdict || wrongTurns.some((turn) => turn.verdict === verdict),
      )
      .map(({ verdict }) => `"${verdict}" holds as well, and is the verdict or a wrong turn besides.`),
    ...brokenPairs(plan, expected.steps).map(
      ([first, then]) => `the steps are out of order: the plan has "${first}" before "${then}".`,
    ),
  ];
}

function lookFaults(worked: WorkedCase): string[] {
  const { lesson, pack, good, looks, sound } = worked;
  const scope = scopeOfSeen(worked, good);
  const absent = [...good, ...lesson.misleads.map(({ look }) => look)].filter((id) => {
    const question = looks.find((each) => each.id === id);
    return question === undefined || !isThere(worked, question);
  });
  const untimely = absent.length > 0 ? [] : perfectLooks(worked).filter(({ kind }) => kind !== 'on-track');
  return [
    ...untimely.map(
      ({ question, says }) =>
        `"${question.id}" is a good look and yet judged: ${says} Add what comes first to "needs".`,
    ),
    ...absent.map((id) => `"${id}" cannot be looked at here: it is a given, has no answer, or is not asked.`),
    ...lesson.expected.findings
      .filter((id) => {
        const outcome = evaluate(pack.findingById.get(id)?.when ?? false, scope);
        return !(outcome.known && outcome.value === true);
      })
      .map((id) => `the needed looks do not suffice to find "${id}". Add what it rests on to "needs".`),
    ...lesson.needs
      .filter(
        (id) =>
          !sound.has(id) && !worked.marking.planSections.includes(pack.questionById.get(id)?.section ?? ''),
      )
      .filter((id) => lesson.amounts.length === 0 || !['areaM2', 'measuredBy'].includes(id))
      .map((id) => `"${id}" is called needed, but no finding, verdict or amount of the case rests on it.`),
    ...('lawnParts' in lesson.answers && lesson.seen.areaM2 === undefined
      ? ['the lawn is given in parts, so "seen" must say what is measured without the area.']
      : []),
  ];
}

function amountFaults(worked: WorkedCase): string[] {
  const { lesson, marking } = worked;
  if (lesson.invented && lesson.amounts.length === 0)
    return [
      'it asks for no amount. Find one that teaches something: an area, a rate, a wait, or a sum of its own.',
    ];
  return lesson.amounts.flatMap((asked) => {
    const right = rightAmount(worked, asked);
    if (right === undefined) return [`there is no amount for "${asked.id}" in the plan, or by its sum.`];
    const { least, most } = asked.byHand;
    const slips = (asked.slips ?? []).filter(
      ({ value }) => Math.abs(value - right.value) <= marking.tolerance.right * right.value,
    );
    return [
      ...(right.value >= least && right.value <= most
        ? []
        : [`"${asked.id}" is ${right.value} ${right.unit} by the rules, by hand ${least} to ${most}.`]),
      ...slips.map(({ value }) => `"${asked.id}" calls ${value} a slip, and it is right.`),
    ];
  });
}

/** A sum is a condition like those of the rules, and reads its own measures besides. */
function sumFaults(lesson: DrillCase, pack: Pack): string[] {
  return lesson.amounts.flatMap(({ id, find }) => {
    if (find.kind !== 'sum') return [];
    const given = Object.keys(find.given ?? {}).map(
      (name) => [`${GIVEN}${name}`, { kind: 'number' }] as const,
    );
    const names = new Map<string, Named>([...readableNames(pack), ...given]);
    return lint(find.value, 'number', '', { file: '', names, nearest }).map(
      (problem) => `the sum of "${id}" is not sound. ${explain(problem)}`,
    );
  });
}

/** Cases that have the same findings, verdict, key steps and misleading signs, or the same sentence. */
function sameLessons(cases: readonly DrillCase[]): CaseFault[] {
  const signature = ({ expected, misleads }: DrillCase): string =>
    JSON.stringify([
      [...expected.findings].sort(),
      expected.verdict,
      [...expected.steps].sort(),
      misleads.map(({ look }) => look).sort(),
    ]);
  return cases.flatMap((lesson, index) =>
    cases
      .slice(0, index)
      .filter((other) => signature(other) === signature(lesson) || other.lesson === lesson.lesson)
      .map((other) => ({
        caseId: lesson.id,
        says: `teaches the same as "${other.id}". Change one, or drop it.`,
      })),
  );
}
