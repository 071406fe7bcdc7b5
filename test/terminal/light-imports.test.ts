import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';

/** Packages reached by plain imports, which load at start-up; `import type` and `import()` do not. */
function packagesBehind(file: string, seen = new Set<string>()): string[] {
  if (seen.has(file)) return [];
  seen.add(file);
  const text = readFileSync(file, 'utf8');
  const imports = [...text.matchAll(/^(?:import|export)\s(?!type\b)(?:[^'";]*?\sfrom\s)?'([^']+)'/gm)].map(
    (match) => match[1] as string,
  );
  return imports.flatMap((path) =>
    path.startsWith('.') ? packagesBehind(join(dirname(file), path.replace(/\.js$/, '.ts')), seen) : [path],
  );
}

const ownPackages = (file: string) =>
  [...new Set(packagesBehind(file))].filter((name) => !name.startsWith('node:'));

describe('what a session loads before its first question', () => {
  it.each([
    'src/terminal/line-asker.ts',
    'src/terminal/session-loop.ts',
    'src/interview/read-answer.ts',
    'src/interview/show-answer.ts',
    'src/session/store.ts',
    'src/session/saved-session.ts',
  ])('%s loads no package at all', (file) => {
    expect(ownPackages(file)).toEqual([]);
  });

  it('src/terminal/clack-asker.ts loads clack and nothing else', () => {
    expect(ownPackages('src/terminal/clack-asker.ts').sort()).toEqual(['@clack/core', '@clack/prompts']);
  });

  it('is told apart from what is really loaded, zod in the schema of a session', () => {
    expect(ownPackages('src/session/session-schema.ts')).toEqual(['zod']);
  });
});
