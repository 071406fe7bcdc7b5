/** Build step: checks the bundled rules and writes them as one file, so that a session starts without zod. */
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { CliStop } from './io.js';
import { readChecked } from './load-pack.js';

const rules = fileURLToPath(new URL('../../rules', import.meta.url));
const built = fileURLToPath(new URL('../pack.json', import.meta.url));

try {
  writeFileSync(built, JSON.stringify(await readChecked(rules)));
} catch (error) {
  if (!(error instanceof CliStop)) throw error;
  process.stderr.write(`${error.message}\n`);
  process.exitCode = error.exitCode;
}
