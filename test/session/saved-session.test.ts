import { crc32 } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { SavedAnswer } from '../../src/session/saved-session.js';
import { readSession, writeSession } from '../../src/session/saved-session.js';
import { deep } from '../depth.js';
import { SESSION } from './sample-session.js';

const lawnPart = fc.oneof(
  fc.record({
    shape: fc.constant('rectangle' as const),
    lengthM: fc.double({ min: 0, max: 99, noNaN: true }),
    widthM: fc.nat(99),
  }),
  fc.record({
    shape: fc.constant('triangle' as const),
    sidesM: fc.tuple(fc.nat(9), fc.nat(9), fc.nat(9)),
    minus: fc.boolean(),
  }),
  fc.record({
    shape: fc.constant('offsets' as const),
    spacingM: fc.nat(9),
    offsetsM: fc.array(fc.nat(9), { maxLength: 5 }),
  }),
  fc.record({
    shape: fc.constant('outline' as const),
    pointsM: fc.array(fc.tuple(fc.integer(), fc.integer()), { maxLength: 5 }),
  }),
);
const answers = fc.uniqueArray(
  fc.record({
    questionId: fc.stringMatching(/^[a-z][A-Za-z0-9]{0,12}$/),
    value: fc.oneof(
      fc.double({ noNaN: true, noDefaultInfinity: true }).map((value) => (Object.is(value, -0) ? 0 : value)),
      fc.boolean(),
      fc.string({ unit: 'binary', maxLength: 30 }),
      fc.array(lawnPart, { minLength: 1, maxLength: 4 }),
    ),
    typed: fc.string({ unit: 'grapheme', maxLength: 30 }),
  }),
  { selector: ({ questionId }) => questionId, maxLength: 8 },
);

const { areas: _areas, inAreas: _inAreas, ...WITHOUT_AREAS } = SESSION;
const TWO_AREAS = {
  ...SESSION,
  areas: ['front', 'back'],
  inAreas: [
    { questionId: 'areaM2', value: 60, typed: '60', area: 'front' },
    { questionId: 'areaM2', value: 100, typed: '10 x 10', area: 'back' },
    { questionId: 'mossFraction', value: 0.4, typed: '40 %', area: 'back' },
  ],
};

describe('a saved session', () => {
  it('keeps the answers of several areas apart, whole and damaged', async () => {
    const text = writeSession(TWO_AREAS);
    expect(await readSession(text)).toEqual({ kind: 'whole', session: TWO_AREAS });
    const damaged = await readSession(text.slice(0, -4));
    if (damaged.kind !== 'damaged') throw new Error(damaged.kind);
    expect(damaged.salvaged.inAreas).toEqual(TWO_AREAS.inAreas);
    expect(damaged.salvaged.areas).toEqual(['front', 'back']);
    expect(damaged.salvaged.answers).toEqual(SESSION.answers);
  });

  it('is JSON, with one answer to a line', () => {
    const text = writeSession(SESSION);
    const { sum, headSum, ...fields } = JSON.parse(text);
    expect(sum).toMatch(/^[0-9a-f]{8}$/);
    expect(headSum).toMatch(/^[0-9a-f]{8}$/);
    const bare = JSON.parse(JSON.stringify(fields), (key, value) => (key === 'sum' ? undefined : value));
    expect(bare).toEqual(WITHOUT_AREAS);
    expect(text.split('\n').filter((line) => line.startsWith('{"questionId"'))).toHaveLength(7);
  });

  it('of the first version, which held nothing over, is still whole', async () => {
    const { heldOver: _, ...first } = { ...SESSION, seedbedSession: 1 };
    expect(await readSession(JSON.stringify(first))).toEqual({
      kind: 'whole',
      session: { ...SESSION, heldOver: [] },
    });
  });

  it('without an own climate, as all were before, is still whole', async () => {
    const { climate: _, ...before } = SESSION;
    expect(await readSession(writeSession(before))).toEqual({ kind: 'whole', session: before });
  });

  it('with a climate of eleven months is damaged, and says which list', async () => {
    const text = writeSession(SESSION).replace('"tMinC":[2,', '"tMinC":[');
    const reading = await readSession(text);
    if (reading.kind !== 'damaged') throw new Error(reading.kind);
    expect(reading.problems.join(' ')).toMatch(/climate\.tMinC: twelve values/);
    expect(reading.salvaged.climate).toBeUndefined();
    expect(reading.salvaged.answers).toEqual(SESSION.answers);
  });

  it('cut off after its climate gives it back', async () => {
    const reading = await readSession(writeSession(SESSION).slice(0, -60));
    expect(reading.kind === 'damaged' && reading.salvaged.climate).toEqual(SESSION.climate);
  });

  it('comes back as it was written, whatever was answered', async () => {
    await fc.assert(
      fc.asyncProperty(answers, answers, async (given, dormant) => {
        const session = { ...SESSION, answers: given as SavedAnswer[], dormant: dormant as SavedAnswer[] };
        expect(await readSession(writeSession(session))).toEqual({ kind: 'whole', session });
      }),
      { numRuns: 200 },
    );
  });

  it('cut off at any byte, never throws and loses the cut line at most', async () => {
    const bytes = Buffer.from(writeSession(SESSION), 'utf8');
    // An answer is whole when its last brace is there; the comma and the newline after it do not matter.
    const ends = [...SESSION.answers, ...SESSION.dormant, ...SESSION.heldOver].map((answer) => {
      const line = Buffer.from(JSON.stringify(answer).slice(0, -1));
      return bytes.indexOf('"}', bytes.indexOf(line) + line.length) + 2;
    });
    for (let length = 0; length < bytes.length - 1; length++) {
      const text = bytes.subarray(0, length).toString('utf8');
      const reading = await readSession(text);
      if (reading.kind !== 'damaged') throw new Error(`cut at ${length} it read as ${reading.kind}`);
      const whole = ends.filter((end) => end <= length).length;
      const { answers: kept, dormant, heldOver, lostAnswers } = reading.salvaged;
      expect(kept.length + dormant.length + heldOver.length).toBe(whole);
      expect(heldOver).toEqual(SESSION.heldOver.slice(0, heldOver.length));
      expect(kept).toEqual(SESSION.answers.slice(0, kept.length));
      expect(lostAnswers).toBeLessThanOrEqual(1);
      expect(reading.problems.length).toBeGreaterThan(0);
    }
    const withoutNewline = bytes.subarray(0, bytes.length - 1).toString('utf8');
    expect(await readSession(withoutNewline)).toEqual({ kind: 'whole', session: SESSION });
  });

  it('with any byte changed is never taken as whole, and gives back no answer that was not typed', async () => {
    const bytes = Buffer.from(writeSession(TWO_AREAS), 'utf8');
    const typed = [
      ...TWO_AREAS.answers,
      ...TWO_AREAS.dormant,
      ...TWO_AREAS.heldOver,
      ...TWO_AREAS.inAreas,
    ].map((answer) => JSON.stringify(answer));
    // Each bit of a digit or letter by itself, and the ends of the range.
    const flips = deep ? [1, 2, 4, 8, 16, 32, 64, 128, 255] : [1, 16, 255];
    for (let at = 0; at < bytes.length - 1; at++) {
      for (const flip of flips) {
        const changed = Buffer.from(bytes);
        changed[at] = (bytes[at] as number) ^ flip;
        const reading = await readSession(changed.toString('utf8'));
        const name = `byte ${at}, ${JSON.stringify(changed.subarray(at - 20, at + 20).toString('utf8'))}`;
        expect(reading.kind, name).not.toBe('whole');
        if (reading.kind !== 'damaged') continue;
        const { answers: read, dormant, heldOver, inAreas, pack, startedOn, climate } = reading.salvaged;
        const kept = [...read, ...dormant, ...heldOver, ...inAreas];
        expect(kept.length, name).toBeGreaterThanOrEqual(typed.length - 1);
        for (const answer of kept) expect(typed, name).toContain(JSON.stringify(answer));
        expect([undefined, SESSION.startedOn], name).toContain(startedOn);
        for (const [found, saved] of [
          [pack, SESSION.pack],
          [climate, SESSION.climate],
        ])
          if (found !== undefined) expect(found, name).toEqual(saved);
      }
    }
  });

  // CRC-32 of "123456789" is cbf43926: the check value of the algorithm in ISO/IEC 3309 and ITU-T V.42 (from memory).
  it('carries the check sum that its standard gives', () => {
    expect(crc32('123456789').toString(16)).toBe('cbf43926');
    const [line = ''] = writeSession(SESSION)
      .split('\n')
      .filter((each) => each.startsWith('{"questionId":"dog"'));
    const bare = '{"questionId":"dog","value":true,"typed":"y"}';
    expect(line).toBe(`${bare.slice(0, -1)},"sum":"${crc32(bare).toString(16).padStart(8, '0')}"},`);
  });

  it('edited by hand is told as changed, and what was not touched comes back', async () => {
    const text = writeSession(SESSION).replace('"value":0.4', '"value":0.9');
    const reading = await readSession(text);
    if (reading.kind !== 'damaged') throw new Error(reading.kind);
    expect(reading.problems).toContain('The file was changed since it was saved.');
    expect(reading.salvaged.answers.map(({ questionId }) => questionId)).not.toContain('mossFraction');
    expect(reading.salvaged.lostAnswers).toBe(1);
  });

  it('gives a reading of any text', async () => {
    const text = fc.oneof(fc.string({ unit: 'binary', maxLength: 60 }), fc.json());
    await fc.assert(
      fc.asyncProperty(text, async (rubbish) => {
        expect(['damaged', 'foreign']).toContain((await readSession(rubbish)).kind);
      }),
    );
    expect((await readSession('['.repeat(200_000))).kind).toBe('damaged');
    expect((await readSession(' '.repeat(2_000_000))).kind).toBe('foreign');
  });

  it('leaves other formats and other programs alone', async () => {
    for (const other of [
      { ...SESSION, format: 2 },
      { format: 1, answers: { dog: true } },
      [],
      null,
      'text',
      7,
    ])
      expect((await readSession(JSON.stringify(other))).kind).toBe('foreign');
  });

  it.each([
    ['an unknown key', { ...SESSION, extra: 1 }, /extra/i],
    ['a day that is none', { ...SESSION, startedOn: '2026-02-30' }, /startedOn: .*calendar/],
    ['a checksum that is none', { ...SESSION, pack: { ...SESSION.pack, sha256: 'x' } }, /pack.sha256: .*64/],
    [
      'a question answered twice',
      { ...SESSION, answers: [SESSION.answers[0], SESSION.answers[0]] },
      /answers: .*once/,
    ],
    [
      'a name that climbs the prototype',
      { ...SESSION, answers: [{ questionId: '__proto__', value: 1, typed: '' }] },
      /questionId/,
    ],
    [
      'a value that is none',
      { ...SESSION, answers: [{ questionId: 'dog', value: null, typed: '' }] },
      /answers.0.value/,
    ],
    [
      'a negative length',
      { ...SESSION, answers: [{ questionId: 'p', value: [{ shape: 'circle', diameterM: -1 }], typed: '' }] },
      /answers.0.value/,
    ],
  ])('names what is wrong: %s', async (_, wrong, says) => {
    const reading = await readSession(JSON.stringify(wrong));
    expect(reading).toMatchObject({ kind: 'damaged' });
    expect(reading.kind === 'damaged' && reading.problems.join('\n')).toMatch(says);
  });
});
