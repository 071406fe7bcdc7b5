/** Every journey, played through the real line mode, must still give the files beside it, byte for byte. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { Writable } from 'node:stream';
import { describe, expect, it } from 'vitest';
import { playFollow, type RecordedVisits } from '../../src/cli/follow/play-follow.js';
import { loadPack } from '../../src/cli/load-pack.js';
import { type Journey, playJourney } from '../../src/cli/play-journey.js';
import { rendered } from '../../src/cli/render-plan.js';
import type { Answers } from '../../src/interview/answers.js';

const WIDTH = 80;
const examples = new URL('../../transcripts-examples/', import.meta.url);
const folders = readdirSync(examples, { withFileTypes: true })
  .filter((each) => each.isDirectory() && existsSync(new URL(`${each.name}/journey.json`, examples)))
  .map(({ name }) => name);
const read = (folder: string, name: string): string =>
  readFileSync(new URL(`${folder}/${name}`, examples), 'utf8');

/** What an old hand would say of each lawn; written down before the program was asked. */
const VERDICTS: Readonly<Record<string, string>> = {
  'mossy-family-lawn': 'renovate',
  'shady-strip': 'renovate',
  'worn-play-lawn': 'renovate',
  'drought-brown-lawn': 'not-now',
  'past-saving': 'start-again',
  'hardly-anything-known': 'not-known',
};

describe('the journeys', () => {
  it('are the six that are promised', () => {
    expect(folders.sort()).toEqual(Object.keys(VERDICTS).sort());
  });

  it.each(folders)('%s gives the same answers, transcript and plan', async (folder) => {
    const journey = JSON.parse(read(folder, 'journey.json')) as Journey;
    let transcript = `${journey.title}\n${journey.invented}\nPlayed for ${journey.today}.\n\n`;
    const dialogue = new Writable({
      write(chunk, _encoding, done) {
        transcript += String(chunk);
        done();
      },
    });
    const { answers, plan } = await playJourney(journey, await loadPack(undefined), dialogue, WIDTH);
    expect(plan.verdict.id).toBe(VERDICTS[folder]);
    expect(`${JSON.stringify({ format: 1, answers }, null, 2)}\n`).toBe(read(folder, 'answers.json'));
    expect(transcript).toBe(read(folder, 'transcript.txt'));
    expect(await rendered(plan, 'md')).toBe(read(folder, 'plan.md'));
  });

  it('go on: the mossy family lawn is followed to its first green, and says the same each time', async () => {
    const folder = 'mossy-family-lawn';
    const journey = JSON.parse(read(folder, 'journey.json')) as Journey;
    const { answers } = JSON.parse(read(folder, 'answers.json')) as { answers: Answers };
    let told = `${journey.title}: what was done and seen\n${journey.invented}\n`;
    const dialogue = new Writable({
      write(chunk, _encoding, done) {
        told += String(chunk);
        done();
      },
    });
    const pack = await loadPack(undefined);
    const visits = JSON.parse(read(folder, 'follow.json')) as RecordedVisits;
    const log = await playFollow(visits, { answers, pack }, dialogue, WIDTH);
    expect(told).toBe(read(folder, 'follow-transcript.txt'));
    expect(log).toBe(read(folder, 'follow-log.md'));
  });
});
