/** Whatever is typed in a drill, in whatever order, it goes on or ends in order, and nothing is told too early. */
import { PassThrough } from 'node:stream';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runDrill } from '../../src/cli/drill/run-drill.js';
import { createLineAsker } from '../../src/terminal/line-asker.js';
import type { DrillMode } from '../../src/training/attempt.js';
import { markAttempt } from '../../src/training/marks.js';
import type { WorkedCase } from '../../src/training/worked-case.js';
import { byId, drillText, worked } from '../training/book.js';

async function played(each: WorkedCase, mode: DrillMode, lines: readonly string[], width = 80) {
  const input = new PassThrough();
  input.end(lines.map((line) => `${line.replace(/[\r\n]/g, ' ')}\n`).join(''));
  const { stream, text } = drillText();
  const read = () => ({ kind: 'refused', says: '' }) as const;
  const asker = createLineAsker({ input, output: stream, width, colour: false, read });
  const end = await runDrill({ asker, worked: each, feedback: 'at-end' }, mode, () => 1);
  asker.close();
  return { end, text: text() };
}

const LABELS = byId('spongy-green').looks.map(({ label }) => label);

const word = fc.oneof(
  { weight: 6, arbitrary: fc.constantFrom(...LABELS) },
  {
    weight: 6,
    arbitrary: fc.constantFrom(
      'commit',
      'hint',
      'list',
      'seen',
      'back',
      'why',
      'none',
      '',
      '1',
      '3',
      '50',
      '1, 2',
      '99 %',
    ),
  },
  {
    weight: 2,
    arbitrary: fc.constantFrom(
      'suppose dog yes',
      'what if thatch depth 20',
      'suppose',
      '12 x 7',
      '840 mL',
      '2 weeks',
    ),
  },
  { weight: 1, arbitrary: fc.string({ unit: 'grapheme' }) },
  {
    weight: 1,
    arbitrary: fc.constantFrom('\x1b[2J', '__proto__', 'constructor', '\u202e', 'x'.repeat(3000)),
  },
);

describe('a drill', () => {
  it('bears anything that is typed', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(...worked),
        fc.constantFrom<DrillMode>('whole', 'finish', 'watch'),
        fc.array(word, { maxLength: 40 }),
        async (each, mode, lines) => {
          const { end, text } = await played(each, mode, lines);
          expect(text).not.toContain('\x1b');
          expect(text).not.toMatch(/undefined|NaN|\[object/);
          const { total } = markAttempt(each, end.attempt);
          expect(Number.isFinite(total)).toBe(true);
        },
      ),
      { numRuns: 150, seed: 28 },
    );
  });

  it('answers a what-if at every prompt, also between the amounts', async () => {
    const lines = ['suppose dog no', 'commit', '3', 'suppose dog no', '80', 'what if moss cover 0', 'mossy'];
    const { text } = await played(byId('spongy-green'), 'whole', lines);
    expect(text.match(/Suppose for now: dog on the lawn, no/g)).toHaveLength(2);
    expect(text).toMatch(/Suppose for now: moss cover, 0 %/);
  });

  it('keeps every line within the width, down to 40 columns', async () => {
    for (const each of worked) {
      const all = each.looks.map(({ label }) => label);
      const { text } = await played(
        each,
        'whole',
        ['list', ...all, 'seen', 'hint', 'commit', '1', '50', 'none'],
        40,
      );
      for (const line of text.split('\n')) expect(line.length, line).toBeLessThanOrEqual(40);
    }
  });

  it('lets one who leaves keep the looks that were taken', async () => {
    const { end } = await played(byId('july-straw'), 'whole', ['tug test', 'last rain', 'quit']);
    expect(end.outcome).toBe('left');
    expect(end.attempt.looks.map(({ question }) => question.id)).toEqual(['tugTest', 'lastRainDaysAgo']);
  });
});
