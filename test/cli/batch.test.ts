import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inOrder } from '../../src/cli/in-order.js';
import { textLines } from '../../src/cli/text-lines.js';
import { newFolder, run } from './run.js';

const A = 'transcripts-examples/mossy-family-lawn/answers.json';
const { answers } = JSON.parse(readFileSync(A, 'utf8'));
const DAY = ['--today', '2027-03-13'];
const fileOf = (lines: readonly string[]): string => {
  const path = join(newFolder(), 'lawns.ndjson');
  writeFileSync(path, lines.join('\n'));
  return path;
};
const areas = Array.from({ length: 12 }, (_, index) => 20 + index);
const lawn = (areaM2: number): string => JSON.stringify({ ...answers, areaM2 });
const areasOut = (out: string): unknown[] =>
  out
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line))
    .map(({ lawn: made, line }) => made?.areaM2 ?? `line ${line}`);

describe('batch', () => {
  it('makes the same plan as "plan" does, a line each, from bare answers or an answers file on one line', () => {
    const { out } = run(['plan', A, ...DAY, '--format', 'json']);
    const lines = [JSON.stringify(answers), JSON.stringify({ format: 1, answers })];
    const ran = run(['batch', '-', ...DAY], lines.join('\n'));
    expect(ran.code).toBe(0);
    expect(
      ran.out
        .trimEnd()
        .split('\n')
        .map((line) => JSON.parse(line)),
    ).toEqual([JSON.parse(out), JSON.parse(out)]);
  });

  it.each(['1', '3'])(
    'keeps the order, names each bad line by its number and goes on, with --jobs %s',
    (jobs) => {
      const lines = areas.map(lawn);
      lines[1] = '{"areaM2": 5,';
      lines[3] = '';
      lines[4] = JSON.stringify({ ...answers, dog: 'perhaps', mosFraction: 1 });
      lines[6] = '{"areaM2": 50}';
      lines[7] = '[1]';
      const { code, out, err } = run(['batch', fileOf(lines), ...DAY, '--jobs', jobs]);
      expect(code).toBe(3);
      expect(areasOut(out)).toEqual([20, 'line 2', 22, 'line 5', 25, 'line 7', 'line 8', 28, 29, 30, 31]);
      expect(err).toBe('7 plans; 4 lines gave none.\n');
      const errors = out
        .split('\n')
        .flatMap((line) => (line.startsWith('{"line"') ? [JSON.parse(line).error] : []));
      expect(errors.map(({ code: each }) => each)).toEqual([3, 3, 3, 3]);
      expect(errors[1].faults).toHaveLength(2);
      expect(errors[2].message).toContain('each could still change the plan');
    },
  );

  it('lets assumptions stand with --assume', () => {
    const { code, out } = run(['batch', '-', '--assume', ...DAY], '{"areaM2": 50}\r\n{}\r\n');
    expect(code).toBe(0);
    expect(areasOut(out)).toEqual([50, 100]);
  });

  it.each([
    [['batch'], 2, 'takes one file'],
    [['batch', 'a', 'b'], 2, 'one too many'],
    [['batch', 'no-such.ndjson'], 5, 'no such file'],
    [['batch', '-', '--jobs', '0'], 2, 'from 1 to 64'],
    [['batch', '-', '--jobs', 'two'], 2, 'from 1 to 64'],
    [['batch', '-', '--pack', 'test'], 4, 'not sound'],
  ])('%j exits with %i', (args, code, says) => {
    const ran = run(args);
    expect([ran.code, ran.out]).toEqual([code, '']);
    expect(ran.err).toContain(says);
  });
});

describe('lines of a stream', () => {
  it('are the same however the bytes are cut, inside a letter too', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.string({ unit: 'binary' }).map((text) => text.replaceAll('\n', ' '))),
        fc.array(fc.integer({ min: 1, max: 7 })),
        async (lines, cuts) => {
          const bytes = Buffer.from(lines.map((line) => `${line}\n`).join(''));
          async function* chunks() {
            let at = 0;
            for (let next = 0; at < bytes.length; next++) {
              const size = cuts[next % Math.max(1, cuts.length)] ?? bytes.length;
              yield bytes.subarray(at, at + size);
              at += size;
            }
          }
          const found: string[] = [];
          for await (const line of textLines(chunks())) found.push(line);
          // A byte order mark at the very start is the decoder's to take away.
          expect(found).toEqual(
            bytes
              .toString()
              .replace(/^\uFEFF/, '')
              .split('\n')
              .slice(0, -1),
          );
        },
      ),
    );
  });

  it('end at the end of the stream as well, and nowhere else than at a newline', async () => {
    async function* chunks() {
      yield Buffer.from('a\u2028b\rc\nlast');
    }
    const found: string[] = [];
    for await (const line of textLines(chunks())) found.push(line);
    expect(found).toEqual(['a\u2028b\rc', 'last']);
  });
});

describe('work in order', () => {
  it('hands results back in the order of the items, with never more of them under way than the window', async () => {
    let under = 0;
    let most = 0;
    async function* items() {
      for (let item = 0; item < 30; item++) yield item;
    }
    const work = async (item: number): Promise<number> => {
      most = Math.max(most, ++under);
      await setTimeout((item * 7) % 5);
      under--;
      return item;
    };
    const found: number[] = [];
    for await (const each of inOrder(items(), work, 4)) found.push(each);
    expect(found).toEqual(Array.from({ length: 30 }, (_, item) => item));
    expect(most).toBe(4);
  });
});
