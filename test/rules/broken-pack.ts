/** Copies of the bundled rules with one file broken, and what is told about them. */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect } from 'vitest';
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
    const { data, problems, placeOf } = readPack(folder);
    const found = data === undefined ? problems : checkPack(data, PROGRAM_SIDE, placeOf);
    for (const { file: where, pointer } of found) expectPlace(join(folder, where), pointer);
    return found;
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** Walks a JSON Pointer by RFC 6901, section 4; the last part may be what is missing. */
function expectPlace(path: string, pointer: string): void {
  if (pointer === '') return;
  expect(pointer).toMatch(/^(\/([^~/]|~0|~1)*)+$/);
  const parts = pointer.slice(1).split('/');
  let at: unknown = JSON.parse(readFileSync(path, 'utf8'));
  for (const [index, part] of parts.entries()) {
    const key = part.replaceAll('~1', '/').replaceAll('~0', '~');
    const isThere = typeof at === 'object' && at !== null && Object.hasOwn(at, key);
    if (!isThere && index === parts.length - 1) return;
    expect(isThere, `${path} has nothing at ${pointer}`).toBe(true);
    at = (at as Json)[key];
  }
}

/** One sentence for each problem, joined. */
export const told = (problems: readonly RuleProblem[]): string => problems.map(explain).join('\n');
export const withField = (field: string, value: unknown) => (record: Json) => ({ ...record, [field]: value });
