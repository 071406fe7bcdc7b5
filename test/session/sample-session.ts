/** A session made up for tests, with an answer of every form. */
import { parseIsoDate } from '../../src/base/dates.js';
import type { SavedSession } from '../../src/session/saved-session.js';

export const SESSION: SavedSession = {
  format: 1,
  seedbedSession: 2,
  pack: { id: 'temperate', version: '1.0.0', sha256: '0123456789abcdef'.repeat(4) },
  startedOn: parseIsoDate('2026-11-25'),
  climate: {
    from: 'ours "{a}".csv, twelve monthly means',
    hasRange: true,
    tMinC: [2, 2, 3, 5, 8, 11, 13, 13, 11, 8, 5, 3],
    tMaxC: [8, 8, 11, 14, 17, 20, 22, 22, 19, 15, 11, 8],
    rainMm: [57, 43, 41, 48, 55, 50, 54, 61, 54, 74, 69, 61],
  },
  answers: [
    { questionId: 'dog', value: true, typed: 'y' },
    { questionId: 'lawnName', value: 'Mum’s "back" lawn\n{"questionId":"x"}', typed: 'it' },
    { questionId: 'mossFraction', value: 0.4, typed: '40 %', givenOn: parseIsoDate('2026-11-26') },
    { questionId: 'soilPh', value: 'unknown', typed: 'dk' },
    {
      questionId: 'lawnParts',
      value: [
        { shape: 'rectangle', lengthM: 12, widthM: 7 },
        { shape: 'circle', diameterM: 3, minus: true },
      ],
      typed: '12 x 7 - circle 3',
    },
  ],
  dormant: [{ questionId: 'dogPatches', value: false, typed: 'n' }],
  areas: [],
  inAreas: [],
  heldOver: [{ questionId: 'limeEver', value: 'a', typed: 'a' }],
};
