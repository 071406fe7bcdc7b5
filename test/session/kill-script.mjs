// Saves one answer more each time and says so, until it is killed. Run by kill.test.ts from the compiled source.
import { openStore } from './session/store.js';

const [folder, first] = [process.argv[2], Number(process.argv[3])];
const store = openStore({ folder });
const answers = [];
for (let count = 0; ; count++) {
  answers.push({ questionId: `q${count}`, value: count, typed: String(count) });
  if (count < first) continue;
  await store.save('a', {
    format: 1,
    seedbedSession: 2,
    pack: { id: 'p', version: '1.0.0', sha256: '0'.repeat(64) },
    startedOn: '2026-11-25',
    answers,
    dormant: [],
    heldOver: [],
    areas: [],
    inAreas: [],
  });
  process.stdout.write(`${answers.length}\n`);
}
