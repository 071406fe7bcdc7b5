/**
 * Prints how long things take, against bare node in the same run. Medians of interleaved runs; nothing here passes or fails.
 * Run with `npm run bench`.
 */
import { spawnSync } from 'node:child_process';
import { readFileSync, statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { netTimes } from './net.mjs';
import { nextQuestionTimes } from './next-question.mjs';

const RUNS = 21;
const main = fileURLToPath(new URL('../../dist/bin/main.js', import.meta.url));
const answers = fileURLToPath(
  new URL('../../transcripts-examples/mossy-family-lawn/answers.json', import.meta.url),
);

const timed = (args) => {
  const start = process.hrtime.bigint();
  spawnSync(process.execPath, args, { stdio: ['ignore', 'pipe', 'pipe'] });
  return Number(process.hrtime.bigint() - start) / 1e6;
};

/** Time until the first question stands on the screen of a real terminal. */
async function firstQuestion() {
  const { spawn: openTerminal } = await import('@lydell/node-pty');
  return new Promise((resolve) => {
    const start = process.hrtime.bigint();
    const env = { ...process.env, XDG_STATE_HOME: `/tmp/seedbed-bench-${process.pid}` };
    const terminal = openTerminal(process.execPath, [main], { cols: 80, rows: 30, env });
    let seen = '';
    terminal.onData((data) => {
      seen += data;
      if (!seen.includes('?')) return;
      resolve(Number(process.hrtime.bigint() - start) / 1e6);
      terminal.kill();
      seen = '';
    });
  });
}

/** Bare node in a terminal of the same kind, so that the terminal's own cost is in both. */
async function bareInTerminal() {
  const { spawn: openTerminal } = await import('@lydell/node-pty');
  return new Promise((resolve) => {
    const start = process.hrtime.bigint();
    const terminal = openTerminal(process.execPath, ['-e', 'process.stdout.write("?")'], {
      cols: 80,
      rows: 30,
    });
    terminal.onData(() => {
      resolve(Number(process.hrtime.bigint() - start) / 1e6);
      terminal.kill();
    });
  });
}

const median = (times) => [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)];
const cases = {
  'bare node (node -e 0)': () => timed(['-e', '0']),
  help: () => timed([main, '--help']),
  'bare node in a terminal': bareInTerminal,
  'first question in a terminal': firstQuestion,
  'plan FILE to Markdown': () => timed([main, 'plan', answers, '--today', '2027-03-13', '--assume']),
};
const times = Object.fromEntries(Object.keys(cases).map((name) => [name, []]));
for (let run = 0; run < RUNS; run++)
  for (const [name, measure] of Object.entries(cases)) times[name].push(await measure());

const base = { 'first question in a terminal': 'bare node in a terminal' };
console.log(`Medians of ${RUNS} interleaved runs, node ${process.version}\n`);
for (const [name, list] of Object.entries(times)) {
  const against = base[name] ?? 'bare node (node -e 0)';
  console.log(
    `${name.padEnd(30)} ${median(list).toFixed(1).padStart(7)} ms   x ${(median(list) / median(times[against])).toFixed(2)}`,
  );
}
console.log(`\n${await nextQuestionTimes()}`);
console.log(`\n${netTimes()}`);
const pack = fileURLToPath(new URL('../../dist/pack.json', import.meta.url));
console.log(`\nbuilt pack: ${(statSync(pack).size / 1024).toFixed(0)} KiB`);
const lock = JSON.parse(readFileSync(new URL('../../package-lock.json', import.meta.url), 'utf8'));
const production = Object.entries(lock.packages).filter(
  ([path, { dev, optional }]) => path !== '' && !dev && !optional,
);
console.log(`production packages: ${production.length}`);
process.exit(0);
