/** How long the next question takes after an answer, in a warm process, over whole sessions of generated lawns. */
import { readFileSync } from 'node:fs';
import { parseIsoDate } from '../../dist/base/dates.js';
import { openSession } from '../../dist/interview/session.js';
import { ASKED_BY_PROGRAM } from '../../dist/planner/asked-by-program.js';
import { scopeFor } from '../../dist/planner/working-scope.js';
import { indexPack } from '../../dist/rules/pack.js';
import { isAsked } from '../../dist/rules/scope.js';

const LAWNS = 300;
const WARM_UP = 30;
const today = parseIsoDate('2027-03-13');

/** The same numbers in every run (Park and Miller's generator). */
function numbers(seed) {
  let state = seed;
  return () => {
    state = (state * 16807) % 2147483647;
    return state / 2147483647;
  };
}

function answerTo(question, random) {
  const among = (list) => list[Math.floor(random() * list.length)];
  if (random() < 1 / 8) return 'unknown';
  const { min = 0, max = 1, oddBelow = min, oddAbove = max } = question.bounds ?? {};
  const kinds = {
    'yes-no': () => random() < 0.5,
    choice: () => among(question.options).value,
    date: () => question.noDate?.value ?? (question.id === 'startOn' ? '2027-03-20' : '2027-02-20'),
    fraction: () => Math.floor(random() * 34) / 100,
    text: () => 'Back lawn',
    place: () => 'Oxford',
  };
  return kinds[question.kind]?.() ?? oddBelow + random() * (oddAbove - oddBelow);
}

/** Questions that a form would ask which only leaves out what cannot arise. */
function howManyApply(pack, answers, random) {
  const all = { ...answers };
  for (const question of pack.questions) {
    if (question.id !== 'lawnParts') all[question.id] ??= answerTo(question, random);
  }
  const scope = scopeFor({ pack, answers: all, today, assume: 'said', timing: 'open' });
  return pack.questions.filter((question) => isAsked(question, scope) === true).length;
}

export async function nextQuestionTimes() {
  const pack = indexPack(JSON.parse(readFileSync(new URL('../../dist/pack.json', import.meta.url), 'utf8')));
  const random = numbers(4);
  const times = [];
  // On a shared machine the clock also counts the others' work.
  const processor = [];
  const counts = [];
  const apply = [];
  for (let lawn = 0; lawn < WARM_UP + LAWNS; lawn++) {
    const session = openSession({
      pack,
      answers: {},
      scopeOf: (answers) => scopeFor({ pack, answers, today, assume: 'said', timing: 'open' }),
      alsoAsk: ASKED_BY_PROGRAM,
    });
    let count = 0;
    for (;;) {
      const start = process.hrtime.bigint();
      const before = process.cpuUsage();
      const next = session.next();
      if (lawn >= WARM_UP) {
        const { user, system } = process.cpuUsage(before);
        times.push(Number(process.hrtime.bigint() - start) / 1e6);
        processor.push((user + system) / 1e3);
      }
      if (next === undefined) break;
      count++;
      session.answer(next.question.id, answerTo(next.question, random));
    }
    if (lawn >= WARM_UP) {
      counts.push(count);
      apply.push(howManyApply(pack, session.answers(), random));
    }
  }
  const shown = (list) => {
    const sorted = [...list].sort((a, b) => a - b);
    const at = (share) => sorted[Math.floor((sorted.length - 1) * share)].toFixed(1);
    return `p50 ${at(0.5)} ms, p99 ${at(0.99)} ms, longest ${at(1)} ms`;
  };
  const meanOf = (list) => (list.reduce((sum, count) => sum + count, 0) / list.length).toFixed(1);
  return `next question, warm, by the clock: ${shown(times)}\nby the processor: ${shown(processor)}, over ${times.length}\nquestions asked of ${pack.questions.length}: mean ${meanOf(counts)}, most ${Math.max(...counts)}, fewest ${Math.min(...counts)}, over ${LAWNS} lawns; by skipping alone: mean ${meanOf(apply)}, most ${Math.max(...apply)}`;
}
