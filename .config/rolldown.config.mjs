/**
 * Bundles the compiled files so that the two ways in that people wait for load few modules: loading a module costs more
 * than running it. What help needs is one file, what the first question needs besides is a second.
 */
import { readFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

const compiled = fileURLToPath(new URL('../dist/', import.meta.url));
const STATIC_IMPORT = /^(?:import|export)\b[^;'"(]*?['"](\.[^'"]+)['"]/gm;

/** The files that these ones bring with them before anything runs. */
function broughtAlong(names) {
  const seen = new Set();
  const visit = (file) => {
    if (seen.has(file)) return;
    seen.add(file);
    for (const [, path] of readFileSync(file, 'utf8').matchAll(STATIC_IMPORT)) visit(resolve(dirname(file), path));
  };
  for (const name of names) visit(resolve(compiled, name));
  return seen;
}

const start = broughtAlong(['cli/main.js']);
// It awaits at the top: what is loaded later must not wait for it in turn.
start.delete(resolve(compiled, 'cli/main.js'));
const firstQuestion = broughtAlong([
  'cli/commands/ask.js',
  'cli/load-pack.js',
  'cli/node-io.js',
  'terminal/clack-asker.js',
]);
export default {
  input: [resolve(compiled, 'cli/main.js'), resolve(compiled, 'cli/batch-worker.js')],
  external: ['marked', 'marked-terminal', 'zod'],
  platform: 'node',
  logLevel: 'silent',
  output: {
    dir: resolve(compiled, 'bin'),
    cleanDir: true,
    format: 'esm',
    advancedChunks: {
      groups: [
        { name: 'start', test: (id) => start.has(id), priority: 2 },
        { name: 'first-question', test: (id) => firstQuestion.has(id), priority: 1 },
      ],
    },
  },
};
