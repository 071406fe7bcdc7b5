/** Every recorded drill, played through the real line mode, must still give the files beside it, byte for byte. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { Writable } from 'node:stream';
import { describe, expect, it } from 'vitest';
import { loadCases } from '../../src/cli/load-cases.js';
import { loadPack } from '../../src/cli/load-pack.js';
import { playDrill, type RecordedDrill } from '../../src/cli/play-drill.js';
import { drillText } from '../training/book.js';

const WIDTH = 80;
const examples = new URL('../../transcripts-examples/', import.meta.url);
const folders = readdirSync(examples).filter((name) => existsSync(new URL(`${name}/drill.json`, examples)));
const read = (folder: string, name: string): string =>
  readFileSync(new URL(`${folder}/${name}`, examples), 'utf8');

/** What a trainer would say of each; written down before the program was asked. */
const PASSED: Readonly<Record<string, boolean>> = {
  'drill-finish-the-sums': true,
  'drill-misled-by-dry-ground': false,
  'drill-spongy-green': true,
};

describe('the recorded drills', () => {
  it('are the three that are promised', () => {
    expect(folders.sort()).toEqual(Object.keys(PASSED).sort());
  });

  it.each(folders)('%s gives the same transcript and debrief', async (folder) => {
    const drill = JSON.parse(read(folder, 'drill.json')) as RecordedDrill;
    let transcript = `${drill.title}\n${drill.invented}\n\n`;
    const dialogue = new Writable({
      write(chunk, _encoding, done) {
        transcript += String(chunk);
        done();
      },
    });
    const pack = await loadPack(undefined);
    const book = await loadCases(undefined, pack);
    const { debrief, marks } = await playDrill(drill, { pack, book }, dialogue, WIDTH);
    expect(marks.passed).toBe(PASSED[folder]);
    expect(transcript).toBe(read(folder, 'transcript.txt'));
    expect(debrief).toBe(read(folder, 'debrief.md'));
  });

  it('end before the commit without a mark when the lines end', async () => {
    const pack = await loadPack(undefined);
    const book = await loadCases(undefined, pack);
    const drill = {
      title: 'short',
      invented: '',
      case: 'hard-as-the-road',
      mode: 'whole',
      minutes: 1,
      typed: ['dog'],
    } as const;
    await expect(playDrill(drill, { pack, book }, drillText().stream, WIDTH)).rejects.toThrow(/end before/);
  });
});
