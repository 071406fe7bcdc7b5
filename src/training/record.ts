/** A trainee's record over cases, kept only where it is asked for: what went well by finding and skill, what comes next. */
import type { DrillCase } from '../rules/schema-case.js';
import type { Attempt, DrillMode } from './attempt.js';
import type { Marks, PartId } from './marks.js';

export interface DrillRecord {
  readonly format: 1;
  readonly drills: readonly DrillEntry[];
}

export interface DrillEntry {
  readonly caseId: string;
  readonly on: string;
  readonly mode: DrillMode;
  /** 0 to 100. */
  readonly total: number;
  readonly passed: boolean;
  readonly minutes: number;
  /** What was there, named or missed; what was not there and named. */
  readonly findings: Readonly<Record<string, 'named' | 'missed' | 'wrongly named'>>;
  /** 0 to 1. */
  readonly parts: Readonly<Partial<Record<PartId, number>>>;
}

/** How a finding or a skill stands: the share that went right, and how often it came. */
export interface Standing {
  readonly id: string;
  readonly tries: number;
  /** 0 to 1. */
  readonly right: number;
}

export const EMPTY_RECORD: DrillRecord = { format: 1, drills: [] };

export function entryOf(caseId: string, on: string, attempt: Attempt, marks: Marks): DrillEntry {
  const { right, missed, wrong } = marks.diagnosis;
  const named =
    attempt.commitment === undefined
      ? []
      : [
          ...right.map((id) => [id, 'named'] as const),
          ...missed.map((id) => [id, 'missed'] as const),
          ...wrong.map((id) => [id, 'wrongly named'] as const),
        ];
  const { mode, minutes } = attempt;
  const { total, passed, parts } = marks;
  return { caseId, on, mode, total, passed, minutes, findings: Object.fromEntries(named), parts };
}

/** By finding, weakest first. */
export function findingStandings({ drills }: DrillRecord): Standing[] {
  return standings(
    drills.flatMap(({ findings }) =>
      Object.entries(findings).map(([id, how]): [string, number] => [id, how === 'named' ? 1 : 0]),
    ),
  );
}

/** By part of the marks, weakest first. */
export function skillStandings({ drills }: DrillRecord): Standing[] {
  return standings(drills.flatMap(({ parts }) => Object.entries(parts)));
}

function standings(results: readonly (readonly [string, number])[]): Standing[] {
  const ids = [...new Set(results.map(([id]) => id))];
  return ids
    .map((id) => {
      const mine = results.filter(([other]) => other === id).map(([, right]) => right);
      return { id, tries: mine.length, right: mine.reduce((sum, right) => sum + right, 0) / mine.length };
    })
    .sort((a, b) => a.right - b.right || b.tries - a.tries);
}

/** Cases done whole and passed; one whose looks were shown is still to be done. */
export const passedCases = ({ drills }: DrillRecord): Set<string> =>
  new Set(drills.filter(({ mode, passed }) => mode === 'whole' && passed).map(({ caseId }) => caseId));

/**
 * The case to do next: of the lowest level that is not all passed, the one with most of what is weak.
 * What never came counts as half weak. Undefined when every case is passed.
 */
export function nextCase(record: DrillRecord, cases: readonly DrillCase[]): DrillCase | undefined {
  const passed = passedCases(record);
  const open = cases.filter(({ id }) => !passed.has(id));
  const sameLevel = open.filter(({ level }) => level === open[0]?.level);
  const last = record.drills.at(-1)?.caseId;
  const weakness = new Map(findingStandings(record).map(({ id, right }) => [id, 1 - right]));
  const worth = ({ id, expected }: DrillCase): number =>
    // Not the same again at once, while there is another.
    id === last ? -1 : Math.max(0, ...expected.findings.map((finding) => weakness.get(finding) ?? 1 / 2));
  return sameLevel.reduce<DrillCase | undefined>(
    (best, each) => (best === undefined || worth(each) > worth(best) ? each : best),
    undefined,
  );
}

/** What is wrong with a record file, in one sentence; undefined when it is one. */
export function recordFault(value: unknown): string | undefined {
  const record = value as Partial<DrillRecord> | null;
  if (typeof record !== 'object' || record === null || record.format !== 1 || !Array.isArray(record.drills))
    return 'a record has "format": 1 and a list "drills"';
  const wrong = record.drills.findIndex((drill: Partial<DrillEntry> | null) => !isEntry(drill));
  return wrong < 0 ? undefined : `drill ${wrong + 1} of it is not whole`;
}

const isObject = (value: unknown): boolean =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

function isEntry(drill: Partial<DrillEntry> | null): boolean {
  return (
    isObject(drill) &&
    typeof drill?.caseId === 'string' &&
    typeof drill.passed === 'boolean' &&
    typeof drill.total === 'number' &&
    isObject(drill.findings) &&
    isObject(drill.parts) &&
    Object.values(drill.parts ?? {}).every((part) => typeof part === 'number')
  );
}
