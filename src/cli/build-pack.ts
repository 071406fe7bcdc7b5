/** Build step: checks the bundled rules and writes them as one file, cases apart, so that a session starts without zod. */
import { writeFileSync } from 'node:fs';
import { indexPack } from '../rules/pack.js';
import { CliStop } from './io.js';
import { readCheckedCases } from './load-cases.js';
import { readChecked } from './load-pack.js';
import { BUILT_CASES, BUILT_PACK, RULES_FOLDER } from './paths.js';

try {
  const data = await readChecked(RULES_FOLDER);
  writeFileSync(BUILT_PACK, JSON.stringify(data));
  writeFileSync(BUILT_CASES, JSON.stringify(await readCheckedCases(RULES_FOLDER, indexPack(data))));
} catch (error) {
  if (!(error instanceof CliStop)) throw error;
  process.stderr.write(`${error.message}\n`);
  process.exitCode = error.exitCode;
}
