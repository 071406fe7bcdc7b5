import { describe, expect, it } from 'vitest';
import { findingsSection } from '../../src/document/findings-section.js';
import { bullets, heading, paragraph, strong } from '../../src/document/nodes.js';
import { referencesOf } from '../../src/document/references.js';
import { samplePlan } from './sample-plan.js';

const references = referencesOf(samplePlan);

describe('findings', () => {
  it('come likely first, with the hand test for what is only possible', () => {
    expect(findingsSection(samplePlan, references)).toEqual([
      heading(2, 'What is wrong'),
      paragraph(
        strong('Moss has taken over: likely.'),
        'Moss covers 40 % of the ground. Seed that lands on moss never reaches the soil (source 1).',
      ),
      paragraph(
        strong('The grass is thin: possible.'),
        'You can see soil in places. Weeds come up in gaps. Signs for it: bare ground is 10 %.',
        'Signs against it: it was cut yesterday. The signs disagree. To be surer: count the hits of a pin at fifty points.',
      ),
      paragraph('1 other fault looked for and not found.'),
      heading(3, 'What I cannot tell yet'),
      paragraph('The plan goes on as if this were so:'),
      bullets([
        [
          strong('The soil is compacted: possible.'),
          'It has not rained for 31 days, so the screwdriver proves nothing.',
          'To settle it: push the screwdriver in again two days after rain.',
        ],
      ]),
    ]);
  });

  it('that nothing points to are named in short, others with what would settle them', () => {
    const [open] = samplePlan.findings;
    if (open === undefined) throw new Error('the sample plan has findings');
    const plain = { ...open, assumedSo: false, because: 'Not answered: soil' };
    const findings = [plain, { ...plain, signsFor: ['It is hard'] }];
    expect(findingsSection({ ...samplePlan, findings }, references).slice(3)).toEqual([
      paragraph('There is a sign of this, but the plan goes on as if it were not so:'),
      bullets([
        [
          strong('The soil is compacted: possible.'),
          'Not answered: soil. Signs for it: it is hard.',
          'To settle it: push the screwdriver in again two days after rain.',
        ],
      ]),
      paragraph('Nothing points to this, and the plan goes on as if it were not so:'),
      bullets([[strong('The soil is compacted.'), 'Not answered: soil.']]),
    ]);
  });

  it('that were looked for and not found are one sentence with their count, none of them by name', () => {
    const notFound = samplePlan.findings.filter(({ verdict }) => verdict === 'notFound');
    const findings = Array.from({ length: 23 }, (_, index) => ({ ...notFound[0], id: `dark-${index}` }));
    const nodes = findingsSection({ ...samplePlan, findings } as typeof samplePlan, references);
    expect(nodes.slice(2)).toEqual([paragraph('23 other faults looked for and not found.')]);
    const found = samplePlan.findings.filter(({ verdict }) => verdict === 'found');
    expect(JSON.stringify(findingsSection({ ...samplePlan, findings: found }, references))).not.toContain(
      'looked for',
    );
  });

  it('that the signs disagree about are named although not found, with the hand test', () => {
    const notFound = samplePlan.findings.filter(({ verdict }) => verdict === 'notFound');
    const disputed = {
      ...notFound[0],
      title: 'The soil is hard',
      strength: 'possible',
      because: 'It is soft.',
    };
    const signs = { signsFor: ['It rings'], signsAgainst: ['It crumbles'], tellsApart: 'Dig a hole.' };
    const findings = [
      { ...disputed, ...signs },
      { ...disputed, ...signs, signsAgainst: [] },
    ];
    const nodes = findingsSection({ ...samplePlan, findings } as unknown as typeof samplePlan, references);
    expect(nodes.slice(2)).toEqual([
      paragraph('2 other faults looked for and not found.'),
      paragraph('Not found, although signs speak for it:'),
      bullets([
        [
          strong('The soil is hard: possible.'),
          'It is soft. Signs for it: it rings. Signs against it: it crumbles. The signs disagree.',
          'To settle it: dig a hole.',
        ],
      ]),
    ]);
  });

  it.each([
    ['one of its questions was assumed', ['soilTest', 'underfoot'], true],
    ['its questions were not assumed', ['soilTest'], false],
    ['no question would settle it', [], false],
  ])('that cannot be told: where %s', (_, open, isShown) => {
    const findings = samplePlan.findings.map((finding) =>
      finding.verdict === 'cannotTell' ? { ...finding, open } : finding,
    );
    const words = JSON.stringify(findingsSection({ ...samplePlan, findings }, references));
    expect(words.includes('What I cannot tell yet')).toBe(isShown);
    expect(words.includes('The soil is compacted')).toBe(isShown);
  });

  it('that cannot be told are not shown when nothing was assumed, and never a found one for its questions', () => {
    const findings = samplePlan.findings.map((finding) => ({ ...finding, open: ['underfoot'] }));
    const settled = findingsSection({ ...samplePlan, findings, assumptions: [] }, references);
    expect(JSON.stringify(settled)).not.toContain('What I cannot tell yet');
    const open = JSON.stringify(findingsSection({ ...samplePlan, findings }, references).slice(4));
    expect(open).toContain('The soil is compacted: possible.');
    expect(open).not.toMatch(/Moss has taken over|The grass is thin|too dark/);
  });

  it('say so when nothing is certain', () => {
    const findings = samplePlan.findings.filter(({ verdict }) => verdict !== 'found');
    const [, second] = findingsSection({ ...samplePlan, findings }, references);
    expect(second).toEqual(paragraph('Nothing for certain, from the answers given.'));
  });
});
