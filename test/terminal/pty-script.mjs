// Run in a pseudo-terminal by clack-pty.test.ts, from a folder that holds the compiled source.

import { readAnswer } from './interview/read-answer.js';
import { createClackAsker } from './terminal/clack-asker.js';

const { prompts } = JSON.parse(process.argv[2]);
const asker = createClackAsker({
  input: process.stdin,
  output: process.stdout,
  width: process.stdout.columns,
  colour: true,
  read: (question, typed) => readAnswer(question, typed, '2026-11-25'),
});
for (const prompt of prompts) {
  const reply = await asker.ask(prompt);
  process.stdout.write(`\nREPLY ${JSON.stringify(reply)}\n`);
}
asker.close();
process.stdout.write(`DONE raw=${process.stdin.isRaw}\n`);
