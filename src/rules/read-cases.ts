/** Reads the training cases and the marking scheme of a rules folder: `cases/marking.json` and one file a case. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { z } from 'zod';
import type { RuleProblem } from './problem.js';
import { CASES_FOLDER } from './read.js';
import {
  type CaseBook,
  type DrillCase,
  drillCaseSchema,
  type Marking,
  markingSchema,
} from './schema-case.js';

export interface ReadCases {
  /** Undefined while the marking scheme is missing or unsound. */
  readonly book: CaseBook | undefined;
  readonly problems: readonly RuleProblem[];
  readonly fileOf: (caseId: string) => string;
}

const MARKING = 'marking.json';
const LEVELS: readonly DrillCase['level'][] = ['easy', 'middling', 'hard'];

/** The cases under `folder`; a folder without any has an empty book and no problems. */
export function readCases(folder: string): ReadCases {
  const at = join(folder, CASES_FOLDER);
  const problems: RuleProblem[] = [];
  const files = new Map<string, string>();
  const names = existsSync(at)
    ? readdirSync(at)
        .filter((name) => name.endsWith('.json'))
        .sort()
    : [];
  const read = <Shape extends z.ZodType>(name: string, schema: Shape): z.infer<Shape> | undefined => {
    const result = parseCaseText(readFileSync(join(at, name), 'utf8'), schema, `${CASES_FOLDER}${name}`);
    problems.push(...result.problems);
    return result.value;
  };
  const marking: Marking | undefined = names.includes(MARKING) ? read(MARKING, markingSchema) : undefined;
  const cases = names
    .filter((name) => name !== MARKING)
    .flatMap((name) => {
      const found = read(name, drillCaseSchema);
      if (found === undefined) return [];
      const other = files.get(found.id);
      const file = `${CASES_FOLDER}${name}`;
      if (other !== undefined)
        problems.push({ code: 'twice', file, pointer: '', kind: 'case', id: found.id, other });
      files.set(found.id, file);
      return [found];
    });
  if (marking === undefined && cases.length > 0 && problems.length === 0)
    problems.push({ code: 'missing-file', file: `${CASES_FOLDER}${MARKING}`, pointer: '' });
  const byLevel = LEVELS.flatMap((level) => cases.filter((each) => each.level === level));
  return {
    book: marking === undefined ? undefined : { marking, cases: byLevel },
    problems,
    fileOf: (caseId) => files.get(caseId) ?? CASES_FOLDER,
  };
}

/** One file's text against its shape. */
export function parseCaseText<Shape extends z.ZodType>(
  text: string,
  schema: Shape,
  file: string,
): { readonly value?: z.infer<Shape>; readonly problems: readonly RuleProblem[] } {
  let parsed: unknown;
  try {
    parsed = JSON.parse(text);
  } catch (error) {
    return { problems: [{ code: 'not-json', file, pointer: '', found: (error as Error).message }] };
  }
  const result = schema.safeParse(parsed);
  if (result.success) return { value: result.data, problems: [] };
  return {
    problems: result.error.issues.map((issue) => ({
      code: 'shape',
      file,
      pointer: `/${issue.path.map(String).join('/')}`,
      found: issue.message,
    })),
  };
}
