/** Prompts and streams for the tests of the askers. */
import { PassThrough, Writable } from 'node:stream';
import { readAnswer } from '../../src/interview/read-answer.js';
import type { Question } from '../../src/rules/schema.js';
import type { Prompt } from '../../src/terminal/asker.js';
import { SAMPLES, TODAY } from '../interview/read-samples.js';

export const read = (question: Question, typed: string) => readAnswer(question, typed, TODAY);

export function promptFor(question: Question, parts: Partial<Prompt> = {}): Prompt {
  return {
    question,
    units: 'metric',
    number: 4,
    mayFollow: 12,
    sectionTitle: 'A look at it',
    opensSection: true,
    suggested: undefined,
    suggestedText: undefined,
    dontKnowText: 'No matter. I will assume springy.',
    why: 'A springy lawn has a layer of old stems between grass and soil.',
    walk: '# A walk round the lawn',
    help: 'Walk across it in soft shoes.',
    ...parts,
  };
}

export const FEEL = promptFor({ ...SAMPLES.feel, text: 'How does the lawn feel when you walk across it?' });
export const SUN = promptFor({ ...SAMPLES.sun, text: 'How many hours of sun does it get?' });
export const NAME = promptFor({ ...SAMPLES.name, text: 'What shall the plan call it?' });

export interface Tape {
  readonly output: Writable & { columns?: number; rows?: number };
  text(): string;
}

/** An output that keeps what was written. */
export function tape(): Tape {
  let text = '';
  const output = new Writable({
    decodeStrings: false,
    write(chunk, _encoding, done) {
      text += String(chunk);
      done();
    },
  });
  return { output, text: () => text };
}

/** An input that holds these lines and then ends. */
export function pipedLines(...lines: readonly string[]): PassThrough {
  const input = new PassThrough();
  input.end(lines.map((line) => `${line}\n`).join(''));
  return input;
}
