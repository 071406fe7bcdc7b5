import { describe, expect, it } from 'vitest';
import { parseIsoDate } from '../../src/base/dates.js';
import { assumptionsSection } from '../../src/document/assumptions-section.js';
import { glanceSection } from '../../src/document/glance-section.js';
import { bullets, heading, paragraph, strong, table } from '../../src/document/nodes.js';
import { referencesOf } from '../../src/document/references.js';
import { shoppingSection } from '../../src/document/shopping-section.js';
import { sourcesSection } from '../../src/document/sources-section.js';
import { titleSection } from '../../src/document/title-section.js';
import { wateringSection } from '../../src/document/watering-section.js';
import { samplePlan } from './sample-plan.js';
import { sow } from './sample-steps.js';

const references = referencesOf(samplePlan);

describe('the title', () => {
  const titled = (fields: object) => titleSection({ ...samplePlan, ...fields });
  const [march, april] = [parseIsoDate('2026-10-03'), parseIsoDate('2027-04-10')];

  it('names the lawn, the year and the size with what the measuring allows', () => {
    expect(titled({})).toEqual([
      heading(1, 'Lawn plan for Mill End, back lawn, 2027'),
      paragraph(
        'Made on Thursday 11 March 2027 for Lower Wickham. The lawn is 84 m², paced out, so somewhere from 78 to 90 m². Measure it again with a tape.',
      ),
    ]);
  });

  it('names both years when the work runs over the new year', () => {
    const steps = [{ ...sow, startOn: march, endOn: april }];
    expect(titled({ steps, name: ' ' })[0]).toEqual(heading(1, 'Lawn plan, 2026 to 2027'));
  });
});

describe('the job at a glance', () => {
  const publishedMonths =
    'The seasons are the published months. A cold or high garden is later in spring and earlier in autumn. A climate file of your own brings days.';
  const tableOf = (plan: typeof samplePlan) => glanceSection(plan, references).at(-1);

  it('has a drawing, then a table with a row a step: days, latest start and work', () => {
    expect(glanceSection(samplePlan, references)).toEqual([
      heading(2, 'The whole job at a glance'),
      paragraph('3 steps, about 5 h 15 min of work in all.', publishedMonths),
      // Weeks from 13 March: 13, 20 and 27 March, 3 April.
      {
        type: 'code',
        lang: 'text',
        value: [
          '                         Mar',
          '1. Treat the moss        #...',
          '2. Scarify               ..#.',
          '3. Sow the seed          ...#',
          'one column a week',
        ].join('\n'),
      },
      table(
        ['Step', 'When', 'Start at the latest', 'Work'],
        [
          ['1. Treat the moss', 'Saturday 13 March', 'Saturday 3 April', 'about 1 h 30 min'],
          ['2. Scarify', 'Saturday 27 March to Sunday 28 March', '', 'about 3 h'],
          ['3. Sow the seed', 'Saturday 3 April', 'Saturday 15 May', 'about 45 min'],
        ],
      ),
    ]);
  });

  it('has no drawing for a single step', () => {
    const nodes = glanceSection({ ...samplePlan, steps: [sow] }, references);
    expect(nodes.map(({ type }) => type)).toEqual(['heading', 'paragraph', 'table']);
  });

  it('has an empty cell for a step without work, and no sum where no step has any', () => {
    const idle = { ...sow, title: 'Keep off', workHours: 0, latestOn: null };
    expect(tableOf({ ...samplePlan, steps: [{ ...sow, latestOn: null }, idle] })).toEqual(
      table(
        ['Step', 'When', 'Work'],
        [
          ['1. Sow the seed', 'Saturday 3 April', 'about 45 min'],
          ['2. Keep off', 'Saturday 3 April', ''],
        ],
      ),
    );
    const [, lead] = glanceSection({ ...samplePlan, steps: [idle, idle] }, references);
    expect(lead).toEqual(paragraph('2 steps.', publishedMonths));
  });

  it('names the station whose months set the seasons, and how far off it is', () => {
    const climate = {
      station: 'Oxford',
      km: 14.2,
      neighbours: [],
      hasWaterUse: true,
      period: '1991-2020',
      licenceLine: 'Open data.',
      own: null,
    };
    const [, lead] = glanceSection({ ...samplePlan, climate }, references);
    expect(JSON.stringify(lead)).toContain(
      'The seasons follow the monthly means of 1991-2020 at Oxford, 14 km away.',
    );
    expect(JSON.stringify(sourcesSection({ ...samplePlan, climate }))).toContain('Open data.');
  });

  it('has the latest start once: with the step whose season sets it, and with what must begin even earlier', () => {
    const season = { ...sow, window: 'Until mid May.' };
    const rake = { ...season, title: 'Rake', window: null };
    const dig = { ...rake, title: 'Dig', latestOn: parseIsoDate('2027-05-01') };
    expect(tableOf({ ...samplePlan, steps: [dig, rake, season] })).toEqual(
      table(
        ['Step', 'When', 'Start at the latest', 'Work'],
        [
          ['1. Dig', 'Saturday 3 April', 'Saturday 1 May', 'about 45 min'],
          ['2. Rake', 'Saturday 3 April', '', 'about 45 min'],
          ['3. Sow the seed', 'Saturday 3 April', 'Saturday 15 May', 'about 45 min'],
        ],
      ),
    );
  });

  it('drops the latest start when no step has one', () => {
    expect(tableOf({ ...samplePlan, steps: [{ ...sow, latestOn: null }] })).toEqual(
      table(['Step', 'When', 'Work'], [['1. Sow the seed', 'Saturday 3 April', 'about 45 min']]),
    );
  });

  it('leaves out the year of most steps, and says so where the plan was made in another', () => {
    const wait = { ...sow, title: 'Wait', startOn: parseIsoDate('2026-12-25'), latestOn: null, workHours: 0 };
    const plan = { ...samplePlan, madeOn: parseIsoDate('2026-12-01'), steps: [wait, ...samplePlan.steps] };
    const [, lead, drawing, dates] = glanceSection(plan, referencesOf(plan));
    expect(drawing?.type).toBe('code');
    expect(lead).toEqual(
      paragraph(
        '4 steps, about 5 h 15 min of work in all. Days without a year are in 2027.',
        publishedMonths,
      ),
    );
    expect(JSON.stringify(dates)).toContain('Friday 25 December 2026 to Saturday 3 April"');
  });
});

describe('shopping', () => {
  it('is a table to buy from, then what to look for, hire and tools', () => {
    expect(shoppingSection(samplePlan, references)).toEqual([
      heading(2, 'Shopping list'),
      heading(3, 'To buy'),
      table(
        ['What', 'How much', 'Packs', 'For', 'Cost'],
        [
          [
            'Hard-wearing seed',
            '2.52 kg',
            '1 × 2.5 kg at 17.50 and 1 × 1 kg at 8.00, 140 g left over',
            'step 3',
            '25.50',
          ],
          ['Liquid moss killer', '840 mL', '2 × 500 mL, 100 mL left over', 'step 1', 'no price'],
          ['Starter feed', 'read it off the label', '', 'step 3', 'no price'],
        ],
      ),
      paragraph('What to look for:'),
      bullets([
        [strong('Hard-wearing seed.'), 'Ryegrass with some fescue; this year’s date.'],
        [strong('Liquid moss killer.'), 'A label that names moss in lawns.'],
        [strong('Starter feed.'), 'No weedkiller in it.'],
      ]),
      heading(3, 'To hire'),
      bullets([['Electric scarifier, 3 h, for step 2. Sharp blades and a long lead.']]),
      heading(3, 'Tools'),
      bullets([['Spring-tine rake, for steps 2 and 3.']]),
      // By hand: 25.50 alone has a price; the moss killer, the feed and the scarifier have none.
      paragraph('What has a price comes to 25.50, with 3 things that have no price.'),
    ]);
  });

  it('says under the list what the packs weigh and how they come', () => {
    const says = ['Together they weigh 90 kg, one trip.', 'Ask too what a bulk bag costs.'];
    const haul = { kg: 90, carKg: 300, trips: 1, bulk: [], says };
    const text = (each: typeof samplePlan.haul): string =>
      JSON.stringify(shoppingSection({ ...samplePlan, haul: each }, references));
    for (const each of says) expect(text(haul)).toContain(each);
    expect(text(null)).not.toContain('Together');
  });

  it('sets the list against the budget, with what to leave out first', () => {
    const text = (budget: typeof samplePlan.budget): string =>
      JSON.stringify(shoppingSection({ ...samplePlan, budget }, references));
    const short = {
      limit: 20,
      total: 25.5,
      over: 5.5,
      unpriced: ['moss-product'],
      leaveOut: [{ stepId: 'sow', title: 'Sow', saves: 3, loses: 'Bare ground stays bare.' }],
      otherwise: null,
    };
    expect(text(short)).toContain(
      'The list comes to 25.50, with 1 thing that has no price; your budget is 20.00.',
    );
    expect(text(short)).toContain('It is 5.50 over.');
    expect(text(short)).toContain('Sow, which saves 3.00. Bare ground stays bare.');
    expect(text(short)).toContain('That still leaves it 2.50 over.');
    expect(text({ ...short, leaveOut: [], otherwise: 'Borrow what you can' })).toContain(
      'Borrow what you can.',
    );
    expect(text({ ...short, limit: 30, over: 0, leaveOut: [], unpriced: [] })).toContain('It fits.');
    expect(text({ ...short, total: null, over: null, leaveOut: [] })).toContain(
      'Nothing on the list has a price',
    );
  });

  it('has no column for packs or cost when there are none', () => {
    const shopping = samplePlan.shopping.filter(({ materialId }) => materialId === 'starter-feed');
    expect(shoppingSection({ ...samplePlan, shopping }, references)[2]).toEqual(
      table(['What', 'How much', 'For'], [['Starter feed', 'read it off the label', 'step 3']]),
    );
  });
});

describe('watering, assumptions and sources', () => {
  it('say how often in words and how much with units', () => {
    const section = wateringSection(samplePlan, references);
    expect(section[1]).toEqual(paragraph(...(samplePlan.water?.says ?? [])));
    expect(section.at(-1)).toEqual(
      table(
        ['Weeks', 'Days', 'How often', 'Each time', 'With what you have', 'Normal rain', 'Aim'],
        [
          [
            '1 to 2',
            'Saturday 3 April to Friday 16 April',
            'twice a day',
            '2 mm, 168 L',
            '14 min of hose',
            '',
            'The top stays dark, never puddled',
          ],
          [
            '3 to 6',
            'Saturday 17 April to Friday 14 May',
            'every 2 days',
            '6.67 mm, 560 L',
            '',
            '1.3 mm a day',
            'Wet to a finger deep',
          ],
        ],
      ),
    );
  });

  it('keep what was not known apart from what was not answered', () => {
    expect(assumptionsSection(samplePlan).slice(2)).toEqual([
      paragraph('You did not know:'),
      bullets([
        [
          strong('How it feels underfoot: springy.'),
          'If it is firm, one pass is enough. To find out: cut a plug the width of your hand.',
        ],
      ]),
      paragraph('Not answered:'),
      bullets([[strong('Slope: level.'), 'A slope is sown across.']]),
    ]);
  });

  it.each([
    ['https://example.org/a_b', { type: 'link', url: 'https://example.org/a_b' }],
    ['example.org/a_b', { type: 'inlineCode', value: 'example.org/a_b' }],
    ['javascript:alert(1)', { type: 'text' }],
    ['example.org, page 3', { type: 'text' }],
  ])('write the address %s without a link to anything but the web', (address, node) => {
    const sources = samplePlan.sources.slice(1).map((source) => ({ ...source, address }));
    const list = sourcesSection({ ...samplePlan, sources }).find(({ type }) => type === 'list');
    const [item] = list?.type === 'list' ? list.children : [];
    const [words] = item?.children ?? [];
    const last = words?.type === 'paragraph' ? words.children.at(-1) : undefined;
    expect(last).toMatchObject(node);
    expect(JSON.stringify(words)).toContain(address);
  });
});
