/** Copies of the bundled rules with one file broken, and what is told about them. */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PROGRAM_SIDE } from '../../src/cli/program-side.js';
import { checkPack } from '../../src/rules/check.js';
import { explain, type RuleProblem } from '../../src/rules/problem.js';
import { readPack } from '../../src/rules/read.js';

export type Json = Record<string, unknown>;

/** Problems of a copy of the bundled rules with one file changed. */
export function problemsWith(file: string, change: (content: never) => unknown): readonly RuleProblem[] {
  const folder = mkdtempSync(join(tmpdir(), 'seedbed-rules-'));
  try {
    cpSync('rules', folder, { recursive: true });
    const path = join(folder, file);
    const changed = change(JSON.parse(readFileSync(path, 'utf8')) as never);
    if (changed === undefined) rmSync(path);
    else writeFileSync(path, typeof changed === 'string' ? changed : JSON.stringify(changed));
    const { data, problems, fileOf } = readPack(folder);
    return data === undefined ? problems : checkPack(data, PROGRAM_SIDE, fileOf);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** One sentence for each problem, joined. */
export const told = (problems: readonly RuleProblem[]): string => problems.map(explain).join('\n');
export const withField = (field: string, value: unknown) => (record: Json) => ({ ...record, [field]: value });
