/** Runs the built program as a user would; `npm test` builds it first. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const MAIN = fileURLToPath(new URL('../../dist/bin/main.js', import.meta.url));

export interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

export const newFolder = (): string => mkdtempSync(join(tmpdir(), 'seedbed-test-'));

export function run(args: readonly string[], input = '', state = newFolder()): Ran {
  const env = { PATH: process.env.PATH, HOME: state, XDG_STATE_HOME: state, TERM: 'xterm' };
  const { status, stdout, stderr } = spawnSync(process.execPath, [MAIN, ...args], {
    input,
    env,
    // What never ends is a failure too.
    timeout: 60_000,
    encoding: 'utf8',
  });
  return { code: status, out: stdout, err: stderr };
}
