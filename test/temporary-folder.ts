/** One temporary folder for a whole run, gone when it ends: whatever a test or a program it started leaves there. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export function setup(): () => void {
  const folder = mkdtempSync(join(tmpdir(), 'seedbed-tests-'));
  process.env.TMPDIR = folder;
  return () => rmSync(folder, { recursive: true, force: true, maxRetries: 3 });
}
