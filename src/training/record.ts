/** A trainee's record over cases, kept only where it is asked for: what went well by finding and skill, what comes next. */
import type { CaseBook, DrillCase } from '../rules/schema-case.js';
import type { VerdictId } from '../rules/schema-judgement.js';
import type { Attempt, DrillMode, TakenHint } from './attempt.js';
import type { DangerFate, Marks, PartId } from './marks.js';

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
  /** What was said of it and how sure; absent where it was shown, and in older records. */
  readonly verdict?: { readonly said: VerdictId; readonly isRight: boolean; readonly sure: number };
  /** By id of a finding that was named, 0 to 1. */
  readonly sure?: Readonly<Record<string, number>>;
  /** Ids of the looks, in the order in which they were taken. */
  readonly looks?: readonly string[];
  readonly hints?: readonly TakenHint[];
  /** By id of its look, how each danger was minded. */
  readonly dangers?: Readonly<Record<string, DangerFate>>;
  /** It had been done or watched before, so it tells less of what they know. */
  readonly isAgain?: boolean;
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
  const { mode, minutes, commitment, looks, hints } = attempt;
  const { total, passed, parts, dangers } = marks;
  return {
    caseId,
    on,
    mode,
    total,
    passed,
    minutes,
    findings: Object.fromEntries(named),
    parts,
    ...(commitment === undefined
      ? {}
      : {
          verdict: {
            said: commitment.verdict,
            isRight: marks.diagnosis.isVerdictRight,
            sure: commitment.sure,
          },
          sure: Object.fromEntries(commitment.findings.map(({ id, sure }) => [id, sure])),
        }),
    looks: looks.map(({ question }) => question.id),
    hints,
    dangers: Object.fromEntries(dangers.map(({ look, fate }) => [look, fate])),
  };
}

/** A case that was only watched: no marks, and yet it has been seen. */
export const watchedEntry = (caseId: string, on: string, minutes: number): DrillEntry => ({
  caseId,
  on,
  mode: 'watch',
  total: 0,
  passed: false,
  minutes,
  findings: {},
  parts: {},
});

/** The record with one more drill, which is told apart where the case had been seen. */
export function withEntry(record: DrillRecord, entry: DrillEntry): DrillRecord {
  const isAgain = record.drills.some(({ caseId }) => caseId === entry.caseId);
  return { format: 1, drills: [...record.drills, isAgain ? { ...entry, isAgain } : entry] };
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

/** Cases of the book done whole and passed; one whose looks were shown is still to be done. */
export function passedCases({ drills }: DrillRecord, cases: readonly DrillCase[]): Set<string> {
  const passed = new Set(
    drills.filter((drill) => drill.mode === 'whole' && drill.passed).map(({ caseId }) => caseId),
  );
  return new Set(cases.map(({ id }) => id).filter((id) => passed.has(id)));
}

/**
 * The case to do next: of the lowest level that is neither all passed nor left behind, the one with most of what is
 * weak. What never came counts as half weak. Undefined when every case is passed.
 */
export function nextCase(
  record: DrillRecord,
  { cases, marking }: Pick<CaseBook, 'cases' | 'marking'>,
): DrillCase | undefined {
  const { skipAfter, skipFrom, restFor } = marking.moving;
  const passed = passedCases(record, cases);
  const open = cases.filter(({ id }) => !passed.has(id));
  const isWell = ({ mode, passed: isPassed, total }: DrillEntry): boolean =>
    mode === 'whole' && isPassed && total >= skipFrom;
  const levelOf = new Map(cases.map(({ id, level }) => [id, level]));
  const levels = [...new Set(cases.map(({ level }) => level))];
  const doneWell = (level: DrillCase['level']): number =>
    new Set(
      record.drills
        .filter((drill) => isWell(drill) && levelOf.get(drill.caseId) === level)
        .map(({ caseId }) => caseId),
    ).size;
  // Who does the harder ones well need not go back to the easier; the hardest level is done to its end.
  const isLeftBehind = (level: DrillCase['level']): boolean =>
    level !== levels.at(-1) &&
    levels.slice(levels.indexOf(level)).some((other) => doneWell(other) >= skipAfter);
  const ahead = open.filter(({ level }) => !isLeftBehind(level));
  const [first] = ahead.length > 0 ? ahead : open;
  const sameLevel = (ahead.length > 0 ? ahead : open).filter(({ level }) => level === first?.level);
  const recent = record.drills.slice(-restFor).map(({ caseId }) => caseId);
  const rested = sameLevel.filter(({ id }) => !recent.includes(id));
  // Where all have been done just now, any but the last.
  const offered = rested.length > 0 ? rested : sameLevel.filter(({ id }) => id !== recent.at(-1));
  const weakness = new Map(findingStandings(record).map(({ id, right }) => [id, 1 - right]));
  const worth = ({ expected }: DrillCase): number =>
    Math.max(0, ...expected.findings.map((finding) => weakness.get(finding) ?? 1 / 2));
  return (offered.length > 0 ? offered : sameLevel).reduce<DrillCase | undefined>(
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
