/** Where the package's own files lie, wherever the built code is put. */
import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

function packageRoot(): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(join(folder, 'package.json'))) {
    const above = dirname(folder);
    if (above === folder) throw new Error('the package folder of seedbed cannot be found');
    folder = above;
  }
  return folder;
}

const ROOT = packageRoot();

export const RULES_FOLDER = join(ROOT, 'rules');
/** Written by build-pack.ts after it has checked the rules. */
export const BUILT_PACK = join(ROOT, 'dist', 'pack.json');
/** The training cases and the marking scheme, apart from the pack so that a session does not load them. */
export const BUILT_CASES = join(ROOT, 'dist', 'cases.json');
export const EXAMPLE_JOURNEY = join(ROOT, 'transcripts-examples', 'mossy-family-lawn', 'journey.json');
export const PACKAGE_FILE = join(ROOT, 'package.json');
/** Beside the executable, bundled for itself: a thread starts from a file. */
export const BATCH_WORKER = join(ROOT, 'dist', 'bin', 'batch-worker.js');
