import { describe, expect, it } from 'vitest';
import { cautionsSection } from '../../src/document/cautions-section.js';
import { bullets, heading, numbered, paragraph, strong, table } from '../../src/document/nodes.js';
import { referencesOf } from '../../src/document/references.js';
import { amountNodes } from '../../src/document/step-amounts.js';
import { waitNodes } from '../../src/document/step-waits.js';
import { stepNodes } from '../../src/document/steps-section.js';
import type { PlanStep, PlanWait } from '../../src/planner/plan.js';
import { samplePlan } from './sample-plan.js';
import { scarify, sow, treatMoss } from './sample-steps.js';

const references = referencesOf(samplePlan);
const [mossKiller] = treatMoss.amounts;
const [seed, starter] = sow.amounts;
if (mossKiller === undefined || seed === undefined || starter === undefined)
  throw new Error('amounts are missing');

describe('a step', () => {
  it('says why, when, what to check, what to mind, how, how much, the wait, the end and the remedy', () => {
    expect(stepNodes(treatMoss, 1, { plan: samplePlan, references })).toEqual([
      heading(3, '1. Treat the moss, Saturday 13 March'),
      paragraph(
        strong('Why now.'),
        'Raking live moss spreads it (source 1). Moss covers 40 % of the ground.',
      ),
      paragraph(
        strong('Time.'),
        'About 1 h 30 min (1 h to 2 h). Begin by Saturday 3 April at the latest.',
        'The season is right until the end of April.',
      ),
      paragraph(strong('Before.')),
      bullets([['The leaves are dry and the soil is moist. Otherwise: wait for the next dry day.']]),
      paragraph(strong('Take care.')),
      bullets([
        [strong('Danger.'), 'The label is the law: read it first.'],
        [strong('Warning.'), 'Keep pets and children off until it is dry.'],
      ]),
      paragraph(strong('Have ready.'), 'Knapsack sprayer, 5 L; gloves.'),
      paragraph(strong('How.')),
      numbered([
        ['Sweep the paving dry and cover the first slab row.'],
        ['Spray load by load, walking slowly.'],
      ]),
      paragraph(strong('How much.'), 'Moss killer: 840 mL. 84 m² × 10 mL = 840 mL (from the label).'),
      paragraph('Moss killer in 2 loads:'),
      table(
        ['Load', 'For', 'Water', 'Product'],
        [
          ['1', '43 m²', '4.3 L', '430 mL'],
          ['2', '41 m²', '4.1 L', '410 mL'],
        ],
      ),
      paragraph(
        strong('Then wait.'),
        '14 to 21 days before step 2, scarify. It is ready when: the moss is black and pulls away dry.',
        'Live moss grows again from every piece.',
      ),
      paragraph(strong('Done when'), 'the whole lawn is evenly wet.'),
      paragraph(
        strong('If it goes wrong.'),
        'If rain came too soon, the label says whether and when you may repeat it.',
      ),
    ]);
  });

  it('says nothing about what it does not have', () => {
    const words = JSON.stringify(stepNodes(scarify, 2, { plan: samplePlan, references }));
    const idle = { ...scarify, workHours: 0, workHoursRange: { min: 0, max: 0 } };
    expect(JSON.stringify(stepNodes(idle, 2, { plan: samplePlan, references }))).not.toContain('Time.');
    for (const absent of ['Before.', 'Have ready.', 'How much.', 'Then wait.', 'at the latest', 'm²']) {
      expect(words).not.toContain(absent);
    }
  });
});

describe('what has been said already', () => {
  const again = {
    ...scarify,
    id: 'again',
    title: 'Rake',
    cautions: ['keep-off-wet', 'read-label', 'iron-stains'],
  };
  const plan = { ...samplePlan, steps: [treatMoss, scarify, again] };
  const wordsOf = (step: PlanStep, number: number): string =>
    JSON.stringify(stepNodes(step, number, { plan, references: referencesOf(plan) }));

  it('of dangers is said again in one line at every step, and in detail only before the work', () => {
    for (const [step, number] of [
      [treatMoss, 1],
      [again, 3],
    ] as const) {
      expect(wordsOf(step, number)).toContain('The label is the law: read it first.');
      expect(wordsOf(step, number)).not.toContain('The same as');
    }
    const danger = plan.cautions.find(({ severity }) => severity === 'danger');
    const detail = danger?.detail.replace(/\.$/, '') ?? 'none';
    expect(JSON.stringify(cautionsSection(plan, referencesOf(plan)))).toContain(detail);
    expect(wordsOf(again, 3)).not.toContain(detail);
  });

  it('is not said again as a reason', () => {
    expect(wordsOf(scarify, 2)).toContain('Dead moss lies where seed has to reach the soil.');
    expect(wordsOf(again, 3)).not.toContain('Dead moss lies where seed has to reach the soil.');
  });
});

describe('amounts', () => {
  it('stand as a list when there are several, each with its own mark', () => {
    expect(amountNodes([seed, starter], references)).toEqual([
      paragraph(strong('How much.')),
      bullets([
        [
          'Hard-wearing seed: 2.52 kg (1.6 to 3.4 kg). 84 m² × 30 g/m² = 2520 g (sources 1 and 2).',
          'Mix it with dry sand to see where it fell.',
        ],
        [
          'Starter feed: read it off the label.',
          'For budgeting only, never as a dose: 1.6 to 3 kg (common practice).',
        ],
      ]),
    ]);
  });

  it('give no number at all where nothing is known', () => {
    const nodes = amountNodes([{ ...starter, range: null }], references);
    expect(nodes).toEqual([paragraph(strong('How much.'), 'Starter feed: read it off the label.')]);
  });

  it.each(['published', 'common-practice', 'assumption'] as const)(
    'of basis %s have their range',
    (basis) => {
      const words = JSON.stringify(amountNodes([{ ...mossKiller, basis }], references));
      expect(words).toContain('Moss killer: 840 mL (780 to 900 mL). 84 m²');
    },
  );

  it('from a label have no range, which could be read as leave to use more', () => {
    const words = JSON.stringify(amountNodes([mossKiller, seed], references));
    expect(words).toContain('Moss killer: 840 mL. 84 m²');
    expect(words).not.toMatch(/\b(?:780|900)\b/);
    expect(words).toContain('Hard-wearing seed: 2.52 kg (1.6 to 3.4 kg).');
  });

  it('put equal loads in one row and count on from there', () => {
    const loads = [
      { count: 4, areaM2: 50, waterL: 10, product: 1, unit: 'g' },
      { count: 1, areaM2: 12.5, waterL: 2.5, product: 0.25, unit: 'g' },
    ] as const;
    expect(amountNodes([{ ...mossKiller, loads }], references).slice(1)).toEqual([
      paragraph('Moss killer in 5 loads:'),
      table(
        ['Load', 'For', 'Water', 'Product'],
        [
          ['1 to 4', '50 m² each', '10 L', '1 g'],
          ['5', '12.5 m²', '2.5 L', '0.25 g'],
        ],
      ),
    ]);
  });
});

describe('waits', () => {
  const wait: PlanWait = { step: 'treat-moss', minDays: 14, maxDays: null, sign: null, why: 'It needs time' };
  const withWaits = (step: PlanStep, ...waits: PlanWait[]): PlanStep => ({ ...step, after: waits });
  const waitsOf = (...later: PlanStep[]) => waitNodes(treatMoss, [treatMoss, ...later], references);

  it.each([
    [14, null, 'At least 14 days before step 2, scarify. It needs time.'],
    [14, 14, '14 days before step 2, scarify. It needs time.'],
    [1, 1, '1 day before step 2, scarify. It needs time.'],
    [14, 21, '14 to 21 days before step 2, scarify. It needs time.'],
  ])('of %s to %s days are said in words', (minDays, maxDays, words) => {
    expect(waitsOf(withWaits(scarify, { ...wait, minDays, maxDays }))).toEqual([
      paragraph(strong('Then wait.'), words),
    ]);
  });

  it('of several steps with the same reason are one line, others a list', () => {
    expect(waitsOf(withWaits(scarify, wait), withWaits(sow, wait))).toEqual([
      paragraph(strong('Then wait.'), 'At least 14 days before steps 2 and 3. It needs time.'),
    ]);
    expect(
      waitsOf(withWaits(scarify, wait), withWaits(sow, { ...wait, minDays: 30, why: 'Longer' })),
    ).toEqual([
      paragraph(strong('Then wait.')),
      bullets([
        ['At least 14 days before step 2, scarify. It needs time.'],
        ['At least 30 days before step 3, sow the seed. Longer.'],
      ]),
    ]);
  });

  const sign = 'The soil is moist';

  it.each([
    ['shorter, without a sign', {}, { minDays: 7 }],
    ['as long, without a sign', {}, { minDays: 14 }],
    ['shorter, without a sign, after one with a sign', { sign }, { minDays: 7 }],
    ['as long, with the same sign', { sign }, { minDays: 14, sign }],
    ['shorter, with the same sign', { sign }, { minDays: 7, sign }],
  ])('that come later and are %s, are left out', (_, earlier, later) => {
    const first = withWaits(scarify, { ...wait, ...earlier });
    const second = withWaits(sow, { ...wait, why: 'Another reason', ...later });
    expect(waitsOf(first, second)).toEqual(waitsOf(first));
    expect(waitsOf(first)).toHaveLength(1);
  });

  it.each([
    ['longer', {}, { minDays: 15 }, 'At least 15 days before step 3, sow the seed. Another reason.'],
    ['longer, with the same sign', { sign }, { minDays: 15, sign }, 'At least 15 days before step 3'],
    ['shorter, with a sign of their own', {}, { minDays: 7, sign }, 'At least 7 days before step 3'],
    ['shorter, with another sign', { sign }, { minDays: 7, sign: 'No frost' }, 'It is ready when: no frost.'],
    ['of no set days, with a sign', {}, { minDays: 0, sign }, 'No set number of days before step 3'],
  ])('that come later and are %s, are said', (_, earlier, later, words) => {
    const first = withWaits(scarify, { ...wait, ...earlier });
    const second = withWaits(sow, { ...wait, why: 'Another reason', ...later });
    const [lead, list] = waitsOf(first, second);
    expect(lead).toEqual(paragraph(strong('Then wait.')));
    expect(list?.type === 'list' ? list.children : []).toHaveLength(2);
    expect(JSON.stringify(list)).toContain(words);
    expect(JSON.stringify(list)).toContain('At least 14 days before step 2, scarify.');
  });

  it('that come earlier and are shorter, are said beside the longer one', () => {
    const words = JSON.stringify(
      waitsOf(withWaits(scarify, { ...wait, minDays: 7 }), withWaits(sow, { ...wait, why: 'Longer' })),
    );
    expect(words).toContain('At least 7 days before step 2, scarify. It needs time.');
    expect(words).toContain('At least 14 days before step 3, sow the seed. Longer.');
  });

  it('without days or a sign are only the order of the steps and are not said', () => {
    expect(waitsOf(withWaits(scarify, { ...wait, minDays: 0 }))).toEqual([]);
    expect(waitsOf(withWaits(scarify, { ...wait, minDays: 0, sign: 'The soil is moist' }))).toEqual([
      paragraph(
        strong('Then wait.'),
        'No set number of days before step 2, scarify. It is ready when: the soil is moist. It needs time.',
      ),
    ]);
  });
});
