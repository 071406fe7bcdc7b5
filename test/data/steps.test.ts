/** The words and the cautions of the steps. */
import { describe, expect, it } from 'vitest';
import { SLOT } from '../../src/rules/slots.js';
import { pack } from '../planner/any-lawn.js';

const textsOf = ({ id }: { id: string }): string[] => {
  const step = pack.stepById.get(id);
  if (step === undefined) return [];
  return [
    step.title,
    step.purpose,
    ...step.how,
    step.doneWhen,
    step.ifNot,
    ...step.dayChecks.flatMap(({ check, otherwise }) => [check, otherwise]),
    ...step.after.flatMap(({ why, sign }) => [why, sign ?? '']),
    ...(step.notBefore ?? []).map(({ why }) => why),
    ...step.amounts.map(({ note }) => note ?? ''),
    step.window?.why ?? '',
  ];
};

/** Cautions that go with every step which puts a moss product on the lawn. */
const WITH_MOSS_PRODUCT = [
  'label-first',
  'spray-protect-yourself',
  'keep-in-original-pack',
  'moss-killer-children',
  'moss-killer-dog',
  'iron-stains-paving',
  'water-strip',
  'no-chemical-down-drain',
  'not-in-frost',
  'not-in-heat-or-drought',
];
const WITH_SCARIFIER = [
  'electric-rcd',
  'electric-cable',
  'electric-wet',
  'petrol-fuel',
  'machine-clear-ground',
  'machine-hands-off',
  'machine-eyes-ears-feet',
  'slope',
  'hedgehogs-first',
];

describe.each(pack.steps)('step $id', (step) => {
  it('has no bare figure in its words: numbers come through slots, with their source', () => {
    for (const text of textsOf(step)) expect(text.replace(SLOT, '')).not.toMatch(/\d/);
  });

  it('is calm, short and British', () => {
    for (const text of textsOf(step)) {
      expect(text).not.toMatch(/!/);
      expect(text.length).toBeLessThanOrEqual(260);
      expect(text).not.toMatch(/\b(color|gray|fertilizer|mold|center|meter|liter)\b/i);
    }
  });

  it('waits for no step twice and not for itself', () => {
    const before = step.after.map((wait) => wait.step);
    expect(new Set(before).size).toBe(before.length);
    expect(before).not.toContain(step.id);
  });
});

describe('cautions', () => {
  it('go with every moss product', () => {
    const steps = pack.steps.filter(({ amounts }) =>
      amounts.some(({ material }) => material.startsWith('moss-product')),
    );
    expect(steps.map(({ id }) => id)).toEqual(['treat-moss']);
    for (const { cautions } of steps) expect(cautions).toEqual(expect.arrayContaining(WITH_MOSS_PRODUCT));
  });

  it('go with every scarifier', () => {
    const steps = pack.steps.filter(({ tools }) =>
      tools.some(({ id }) => id === 'scarifier-electric' || id === 'scarifier-petrol'),
    );
    expect(steps.map(({ id }) => id)).toEqual(['scarify']);
    for (const { cautions } of steps) expect(cautions).toEqual(expect.arrayContaining(WITH_SCARIFIER));
  });

  it('of handling a machine go with everything that is hired', () => {
    const hired = new Set(pack.materials.filter(({ kind }) => kind === 'hire').map(({ id }) => id));
    const steps = pack.steps.filter(({ tools }) => tools.some(({ id }) => hired.has(id)));
    expect(steps.map(({ id }) => id).sort()).toEqual(['core', 'scarify']);
    for (const { id, cautions } of steps)
      expect(cautions, id).toEqual(
        expect.arrayContaining([
          'machine-clear-ground',
          'machine-hands-off',
          'machine-eyes-ears-feet',
          'machine-hire-two-people',
          'slope',
        ]),
      );
  });

  it('warn of services wherever the ground is opened, and of dust wherever soil or compost is opened', () => {
    for (const id of ['fork', 'core', 'dig-over', 'clear-old-turf', 'weed-by-hand', 'fix-drainage']) {
      expect(pack.stepById.get(id)?.cautions, id).toContain('buried-services');
    }
    for (const id of ['soil-bed', 'cover-seed'])
      expect(pack.stepById.get(id)?.cautions, id).toContain('compost-lungs');
  });

  it('keep dog and children off feed and new seed', () => {
    for (const id of ['feed', 'first-feed'])
      expect(pack.stepById.get(id)?.cautions).toEqual(
        expect.arrayContaining(['feed-dog', 'feed-children', 'feed-water-course']),
      );
    expect(pack.stepById.get('keep-off')?.cautions).toEqual(
      expect.arrayContaining(['keep-off-new-seed-dog', 'keep-off-new-seed-children']),
    );
  });
});

describe('the order of the trade', () => {
  // Common practice, no source: kill the moss, wait, cut, cut low, scarify, clear, loosen, thin bed, sow, cover, water, keep off.
  const ORDER = [
    'treat-moss',
    'cut',
    'low-cut',
    'scarify',
    'clear',
    'fork',
    'soil-bed',
    'sow',
    'cover-seed',
    'water-in',
  ];

  it('is kept by the waits, step after step', () => {
    const comesAfter = (later: string, earlier: string, seen = new Set<string>()): boolean => {
      if (seen.has(later)) return false;
      seen.add(later);
      return (
        pack.stepById
          .get(later)
          ?.after.some(({ step }) => step === earlier || comesAfter(step, earlier, seen)) === true
      );
    };
    for (const [index, earlier] of ORDER.entries()) {
      for (const later of ORDER.slice(index + 1))
        expect(comesAfter(later, earlier), `${later} after ${earlier}`).toBe(true);
    }
  });
});
