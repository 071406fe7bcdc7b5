/** Build step: checks the bundled rules and writes them as one file, so that a session starts without zod. */
import { writeFileSync } from 'node:fs';
import { CliStop } from './io.js';
import { readChecked } from './load-pack.js';
import { BUILT_PACK, RULES_FOLDER } from './paths.js';

try {
  writeFileSync(BUILT_PACK, JSON.stringify(await readChecked(RULES_FOLDER)));
} catch (error) {
  if (!(error instanceof CliStop)) throw error;
  process.stderr.write(`${error.message}\n`);
  process.exitCode = error.exitCode;
}
