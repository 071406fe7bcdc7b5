import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { SavedAnswer } from '../../src/session/saved-session.js';
import { readSession, writeSession } from '../../src/session/saved-session.js';
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
    expect(JSON.parse(text)).toEqual(WITHOUT_AREAS);
    expect(text.split('\n').filter((line) => line.startsWith('{"questionId"'))).toHaveLength(7);
  });

  it('of the first version, which held nothing over, is still whole', async () => {
    const { heldOver: _, ...first } = SESSION;
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
      const line = Buffer.from(JSON.stringify(answer));
      return bytes.indexOf(line) + line.length;
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

  it('with any byte changed, never throws and loses one answer at most', async () => {
    const bytes = Buffer.from(writeSession(SESSION), 'utf8');
    await fc.assert(
      fc.asyncProperty(fc.nat(bytes.length - 1), fc.nat(255), async (at, value) => {
        const changed = Buffer.from(bytes);
        changed[at] = value;
        const reading = await readSession(changed.toString('utf8'));
        if (reading.kind !== 'damaged') return;
        const { answers: read, dormant, heldOver } = reading.salvaged;
        const kept = [...read, ...dormant, ...heldOver].length;
        expect(kept).toBeGreaterThanOrEqual(SESSION.answers.length + SESSION.dormant.length - 1);
      }),
      { numRuns: 1000 },
    );
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
