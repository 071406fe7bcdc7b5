/** What a step puts into somebody's hands brings its cautions with it. Which ones: common practice, and the label or manual goes first. */
import { describe, expect, it } from 'vitest';
import { findCircle } from '../../src/rules/graph.js';
import type { Step } from '../../src/rules/schema.js';
import { pack } from '../planner/any-lawn.js';

const usesTool =
  (...ids: readonly string[]) =>
  (step: Step): boolean =>
    step.tools.some(({ id }) => ids.includes(id));
const usesMaterial =
  (pattern: RegExp) =>
  (step: Step): boolean =>
    step.amounts.some(({ material }) => pattern.test(material));

/** What is used, the steps that must be found to use it, and the cautions that go with each. */
const SAFETY: readonly (readonly [string, (step: Step) => boolean, number, string])[] = [
  [
    'a corer',
    usesTool('hollow-tine-corer'),
    1,
    `buried-services tree-roots slope machine-clear-ground
    machine-hands-off machine-eyes-ears-feet machine-hire-two-people vibration noise-hours
    machine-guards petrol-fuel engine-fumes`,
  ],
  [
    'a scarifier',
    usesTool('scarifier-electric', 'scarifier-petrol'),
    1,
    `slope machine-clear-ground
    machine-hands-off machine-eyes-ears-feet vibration noise-hours electric-rcd electric-cable electric-wet
    electric-cut-cable electric-hands-off machine-guards engine-fumes
    petrol-fuel machine-hire-two-people ground-bees hedgehogs-first tree-roots`,
  ],
  [
    'a mower',
    usesTool('mower'),
    4,
    'mower-hands mower-engine mower-clear-ground mower-mains mower-bank slope hedgehogs-first',
  ],
  ['canes', usesTool('canes-and-string'), 3, 'cane-caps'],
  [
    'a sprayer',
    usesTool('garden-sprayer'),
    1,
    `label-first spray-wind spray-no-still-air
    spray-protect-yourself keep-in-original-pack no-rain-before-dry water-strip product-swallowed treated-keep-off`,
  ],
  ['a spade or fork', usesTool('spade', 'garden-fork'), 6, 'buried-services struck-service'],
  ['a wheelbarrow', usesTool('wheelbarrow'), 5, 'lifting'],
  ['a saw', usesTool('pruning-saw'), 1, 'tree-work-licensed birds-nesting-trees'],
  ['soil or compost from a bag', usesMaterial(/^(topsoil|seed-cover)$/), 2, 'compost-lungs tetanus-soil'],
  [
    'feed',
    usesMaterial(/-feed$/),
    2,
    'feed-dog feed-children fed-keep-off feed-water-course paving-sweep-feed not-in-frost product-swallowed',
  ],
  ['lime', usesMaterial(/^lime$/), 1, 'lime-eyes lime-kind product-swallowed'],
  ['a wetting agent', usesMaterial(/^wetting-agent$/), 1, 'label-first water-strip no-chemical-down-drain'],
  ['water from the mains', usesTool('hose', 'sprinkler'), 2, 'hosepipe-ban'],
  [
    'a weedkiller',
    ({ id }) => id === 'weedkiller-later',
    1,
    `label-first weedkiller-dog weedkiller-children
    weedkiller-label-seed-wait water-strip`,
  ],
];

describe('a step that takes', () => {
  it.each(SAFETY)('%s lists its cautions', (_, uses, atLeast, wanted) => {
    const steps = pack.steps.filter(uses);
    expect(steps.length).toBeGreaterThanOrEqual(atLeast);
    for (const { id, cautions } of steps)
      expect(cautions, id).toEqual(expect.arrayContaining(wanted.split(/\s+/)));
  });
});

describe('protective kit', () => {
  it.each([
    ['machine-eyes-ears-feet', 'stout-shoes ear-defenders'],
    ['lime-eyes', 'goggles gloves dust-mask'],
    ['spray-protect-yourself', 'goggles gloves'],
  ])('asked for by %s is among the tools', (caution, kit) => {
    const steps = pack.steps.filter(({ cautions }) => cautions.includes(caution));
    expect(steps).not.toEqual([]);
    for (const { id, tools } of steps)
      expect(
        tools.map((tool) => tool.id),
        id,
      ).toEqual(expect.arrayContaining(kit.split(' ')));
  });
});

describe('steps', () => {
  it('do not wait for each other in a circle', () => {
    expect(
      findCircle(new Map(pack.steps.map(({ id, after }) => [id, after.map(({ step }) => step)]))),
    ).toBeUndefined();
  });

  it('come after what they wait for, in the list too', () => {
    const orderOf = (id: string): number => pack.stepById.get(id)?.order ?? Number.NaN;
    for (const { id, order, after } of pack.steps)
      for (const { step } of after) expect(orderOf(step), `${step} before ${id}`).toBeLessThan(order);
  });

  it('list no caution and no tool twice', () => {
    for (const { id, cautions, tools } of pack.steps) {
      expect(new Set(cautions).size, id).toBe(cautions.length);
      expect(new Set(tools.map((tool) => tool.id)).size, id).toBe(tools.length);
    }
  });

  it('are each led to by a finding, or belong to the sequence of a renovation', () => {
    const led = new Set(pack.findings.flatMap(({ leadsTo }) => leadsTo));
    const sequence = pack.steps.filter(({ id }) => !led.has(id)).map(({ id }) => id);
    const waitsOrIsWaitedFor = (id: string): boolean =>
      pack.steps.some((step) =>
        step.id === id ? step.after.length > 0 : step.after.some((wait) => wait.step === id),
      );
    expect(sequence.filter((id) => !waitsOrIsWaitedFor(id))).toEqual([]);
  });
});

describe('figures that divide', () => {
  it('reach nowhere to 0, so that no amount can grow without end', () => {
    const divisors = pack.figures.filter(({ id }) =>
      /efficiency|-width-m$|-speed-km-h$|m2-per-h$|pure-live-fraction|neutralising|bag-nitrogen-percent/.test(
        id,
      ),
    );
    expect(divisors.length).toBeGreaterThan(12);
    for (const { id, range } of divisors) expect(range.min, id).toBeGreaterThan(0);
  });
});
