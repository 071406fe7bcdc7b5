import { describe, expect, it } from 'vitest';
import { cautionLines, cautionsSection } from '../../src/document/cautions-section.js';
import { bullets, heading, strong } from '../../src/document/nodes.js';
import { referencesOf } from '../../src/document/references.js';
import { samplePlan } from './sample-plan.js';

const references = referencesOf(samplePlan);

describe('cautions', () => {
  it('stand once, worst first, with the detail where it can kill or is for pets', () => {
    expect(cautionsSection(samplePlan, references)).toEqual([
      heading(2, 'Before you start'),
      heading(3, 'Danger'),
      bullets([
        [
          strong('The label is the law: read it first.'),
          'Wear what it asks for (assumption, source 2). Steps 1 and 2.',
        ],
      ]),
      heading(3, 'Warnings'),
      bullets([
        [
          strong('Keep pets and children off until it is dry.'),
          'The label’s own time counts if it is longer (source 1). Step 1.',
        ],
      ]),
      heading(3, 'Good to know'),
      bullets([[strong('Iron stains paving for good.'), 'Common practice. Step 1.']]),
    ]);
  });

  const severities = ['danger', 'warning', 'caution', 'notice', 'note'] as const;
  const people = ['you', 'children', 'pets', 'wildlife', 'water', 'property', 'grass'] as const;

  it.each(severities.flatMap((severity) => people.map((who) => [severity, who] as const)))(
    'say the detail of a %s for %s only where the worst can happen, the line always',
    (severity, who) => {
      const [caution] = samplePlan.cautions;
      if (caution === undefined) throw new Error('the sample plan has cautions');
      const plan = { ...samplePlan, cautions: [{ ...caution, severity, who }] };
      const isTold = severity === 'danger' || severity === 'warning' || who === 'children' || who === 'pets';
      expect(cautionsSection(plan, references).at(-1)).toEqual(
        bullets([
          [
            strong('Iron stains paving for good.'),
            isTold
              ? 'Sweep dry granules off before they get wet (common practice). Step 1.'
              : 'Common practice. Step 1.',
          ],
        ]),
      );
    },
  );

  it.each([
    ['published', 'invented-moss', 'Source 1. Step 1.'],
    ['assumption', 'invented-seed', 'Assumption, source 2. Step 1.'],
    ['published', 'not-in-the-list', 'Step 1.'],
  ] as const)('without their detail end in a mark that is a sentence: %s, %s', (basis, id, words) => {
    const [caution] = samplePlan.cautions;
    if (caution === undefined) throw new Error('the sample plan has cautions');
    const cautions = [{ ...caution, basis, sources: [{ id, at: 'part 1' }] }];
    expect(cautionsSection({ ...samplePlan, cautions }, references).at(-1)).toEqual(
      bullets([[strong('Iron stains paving for good.'), words]]),
    );
  });

  it('are one short line in a step, danger first, and only its own', () => {
    expect(cautionLines(['keep-off-wet', 'read-label'], samplePlan.cautions)).toEqual([
      [strong('Danger.'), 'The label is the law: read it first.'],
      [strong('Warning.'), 'Keep pets and children off until it is dry.'],
    ]);
    expect(cautionLines(['read-label'], samplePlan.cautions)).toHaveLength(1);
  });

  it('that are only good to know are not said again in a step', () => {
    expect(cautionLines(['iron-stains'], samplePlan.cautions)).toEqual([]);
  });
});
