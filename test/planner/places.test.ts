/**
 * Lawns from the poles to the equator: no date is firmer than what is known, no work falls into frozen ground, no seed is
 * sold that the winter kills. What each place wants was written down before the program was asked.
 */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type IsoDate, monthOf, parseIsoDate } from '../../src/base/dates.js';
import { answersContext } from '../../src/cli/answers-context.js';
import { rendered } from '../../src/cli/render-plan.js';
import type { Answers } from '../../src/interview/answers.js';
import { checkAnswers } from '../../src/interview/check-answers.js';
import { openQuestions, readyQuestions } from '../../src/interview/open-questions.js';
import type { Plan } from '../../src/planner/plan.js';
import { climateFault } from '../../src/planner/whereabouts.js';
import { scopeFor } from '../../src/planner/working-scope.js';
import type { Pack } from '../../src/rules/pack.js';
import { times } from '../depth.js';
import { anyAnswers, anyToday, pack, planIfAny } from './any-lawn.js';
import { CLIMATES, packIn } from './climates.js';

const family = JSON.parse(readFileSync('transcripts-examples/mossy-family-lawn/answers.json', 'utf8'))
  .answers as Answers;
const { startOn: _start, ...lawn } = family;

function planOf(answers: Answers, today: string, rules: Pack = pack): Plan {
  const plan = planIfAny({ pack: rules, answers, today: parseIsoDate(today), assumeAll: true });
  if (plan === undefined) throw new Error('no dates hold');
  return plan;
}

const startOf = (plan: Plan, id: string): IsoDate | undefined =>
  plan.steps.find((step) => step.id === id)?.startOn;
const seedsIn = (plan: Plan): string[] =>
  plan.steps
    .flatMap(({ amounts }) => amounts.map(({ materialId }) => materialId))
    .filter((id) => /^seed-(ryegrass|fescue|tall|meadow|warm)/.test(id));

/** In the tables and headings of the plan; the day on which it was made, and what sources print, are no dates of work. */
const DAY_OF_A_MONTH =
  /\b\d{1,2} (January|February|March|April|May|June|July|August|September|October|November|December)\b/;

describe('a place of which no climate is known', () => {
  const PLACES = {
    saskatoon: '52.1, -106.7',
    minneapolis: '45.0, -93.3',
    oslo: '59.9, 10.7',
    umea: '63.8, 20.3',
    munich: '48.1, 11.5',
    johannesburg: '-26.2, 28.0',
    melbourne: '-37.8, 145',
    'nobody knows where': 'unknown',
  };

  it.each(Object.entries(PLACES))(
    '%s is given months with a question mark, and no day, in every form',
    async (_, place) => {
      const plan = planOf({ ...lawn, place }, '2027-04-03');
      expect(plan.datesKnownTo).toBe('month');
      const markdown = (await rendered(plan, 'md'))
        .replace(/^Made on .*$/m, '')
        // What another first free day would change names that day: an answer, and no date of the plan.
        .replaceAll(/^- First free day .*$/gm, '')
        .split('## Sources')[0] as string;
      expect(markdown).not.toMatch(DAY_OF_A_MONTH);
      expect(markdown).toMatch(/### \d+\. Sow, \w+( \d{4})?\?/);
      const page = (await rendered(plan, 'html')).replace(/Made on [^<]*/g, '').split('Sources')[0] as string;
      expect(page).not.toMatch(DAY_OF_A_MONTH);
      const drawing = (await rendered(plan, 'svg')).replace(/Made on [^<]*?\./g, '');
      expect(drawing).not.toMatch(DAY_OF_A_MONTH);
      expect(await rendered(plan, 'csv')).not.toMatch(/\d{4}-\d{2}-\d{2}/);
      const calendar = await rendered(plan, 'ics');
      for (const [, day] of calendar.matchAll(/DT(?:START|END);VALUE=DATE:\d{6}(\d{2})/g))
        expect(day).toBe('01');
      for (const [, title = ''] of calendar.matchAll(/^SUMMARY:((?:.*\r\n )*.*)\r\n/gm))
        expect(title).toMatch(/\?$/);
      expect(calendar).not.toContain('VALARM');
      expect(JSON.parse(await rendered(plan, 'json')).datesKnownTo).toBe('month');
    },
  );

  it('has its days again with a climate of its own, and with a station', () => {
    expect(planOf({ ...lawn, place: '45.0, -93.3' }, '2027-04-03', packIn('minneapolis')).datesKnownTo).toBe(
      'day',
    );
    expect(planOf(lawn, '2027-03-13').datesKnownTo).toBe('day');
  });

  // Sown in late summer or in spring, on the southern half February and March or October and November: New Zealand
  // Herald (general page) has March to May and September to November.
  it.each(['-37.8, 145', 'unknown'])('south of the equator has the months of the south: %s', (place) => {
    for (let month = 1; month <= 12; month++) {
      const today = `2027-${String(month).padStart(2, '0')}-13`;
      const sowOn = startOf(planOf({ ...lawn, place, plainClimate: 'south' }, today), 'sow');
      expect([2, 3, 10, 11], today).toContain(monthOf(sowOn as IsoDate));
    }
  });
});

describe('which half of the earth', () => {
  const today = parseIsoDate('2027-03-13');
  const asked = (answers: Answers, rules: Pack = pack): string[] =>
    openQuestions(rules, scopeFor({ pack: rules, answers, today, assume: 'said', timing: 'open' })).map(
      ({ id }) => id,
    );

  it('is asked where the place is not known, and only there', () => {
    const { place: _, ...nowhere } = lawn;
    expect(asked({ ...lawn, place: 'unknown' })).toEqual(['plainClimate']);
    expect(asked({ ...lawn, place: 'unknown', plainClimate: 'south' })).toEqual([]);
    expect(asked(lawn)).toEqual([]);
    expect(asked({ ...lawn, place: 'unknown' }, packIn('sydney'))).toEqual([]);
    expect(asked({ ...lawn, place: 'unknown' }, packIn('singapore'))).toEqual(['plainClimate']);
    // The place comes first: it may make the other needless.
    const scope = scopeFor({ pack, answers: nowhere, today, assume: 'said', timing: 'open' });
    const ready = readyQuestions(openQuestions(pack, scope), scope).map(({ id }) => id);
    expect(ready).toContain('place');
    expect(ready).not.toContain('plainClimate');
  });

  it('is named with what it changes where it is assumed', () => {
    const { assumptions } = planOf({ ...lawn, place: 'unknown' }, '2027-03-13');
    const [half] = assumptions.filter(({ questionId }) => questionId === 'plainClimate');
    expect(half?.assumed).toMatch(/north/);
    expect(half?.effect).toMatch(/half a year/);
  });

  it('of a climate file must be that of the place, so far as its months tell', () => {
    expect(climateFault({ place: '-33.9, 151.2' }, packIn('minneapolis'))).toMatch(
      /"-33.9, 151.2".*south.*minneapolis\.csv.*April to September.*--climate/,
    );
    expect(climateFault({ place: 'Oxford' }, packIn('sydney'))).toMatch(/north.*October to March/);
    expect(climateFault({ place: 'unknown', plainClimate: 'south' }, packIn('stLouis'))).toMatch(
      /"plainClimate"/,
    );
    expect(climateFault({ place: '-33.9, 151.2' }, packIn('sydney'))).toBeUndefined();
    expect(climateFault({ place: 'unknown' }, packIn('sydney'))).toBeUndefined();
    for (const place of ['1.4, 104', '-1.3, 36.8'])
      expect(climateFault({ place }, packIn('singapore'))).toBeUndefined();
  });
});

/** Steps that no frost hinders; everything else touches the ground. */
const OFF_THE_GROUND = [
  'ask-contractor',
  'care-round',
  'keep-off',
  'rest-worn',
  'sharpen-mower',
  'wait-for-green',
  'wait-for-season',
];

describe('frozen ground', () => {
  // Monthly means below 0: the ground of Minnesota thaws at the end of March, that of Saskatchewan in April (common
  // practice, no source).
  const sound: Answers = {
    ...lawn,
    mossFraction: 0,
    thatchDepthMm: 5,
    lawnColour: 'green',
    soilPh: 4.5,
    weedFraction: 0.06,
  };

  it.each([
    ['minneapolis', '2027-01-09', '45.0, -93.3', '2027-03-20'],
    ['northBattleford', '2027-02-06', '52.1, -106.7', '2027-04-01'],
    ['holmoen', '2027-02-06', '63.8, 20.3', '2027-03-20'],
  ] as const)('of %s is not washed, dug or probed in winter', (climate, today, place, thaw) => {
    const plan = planOf({ ...sound, place }, today, packIn(climate));
    for (const id of ['flush-patches', 'soil-test', 'weed-by-hand', 'patch-sow'])
      expect(startOf(plan, id) ?? '', id).toMatch(/^2027/);
    for (const { id, startOn } of plan.steps)
      if (!OFF_THE_GROUND.includes(id)) expect(startOn > thaw, `${id} on ${startOn}`).toBe(true);
  });

  it('takes no work of any lawn in a month whose mean is below freezing', () => {
    let checked = 0;
    const cold = (['minneapolis', 'northBattleford', 'holmoen'] as const).map((name) => {
      const { tMinC, tMaxC } = CLIMATES[name];
      const isFrozen = (month: number): boolean =>
        ((tMinC[month - 1] as number) + (tMaxC[month - 1] as number)) / 2 < -1;
      return { rules: packIn(name), isFrozen };
    });
    const anyPlace = fc.constantFrom('45, -93.3', '52.1, -106.7', '63.8, 20.3', 'unknown');
    fc.assert(
      fc.property(
        anyAnswers,
        anyToday,
        anyPlace,
        fc.constantFrom(...cold),
        (any, today, place, { rules, isFrozen }) => {
          const plan = planIfAny({ pack: rules, answers: { ...any, place }, today, assumeAll: true });
          for (const { id, parts } of plan?.steps ?? []) {
            if (OFF_THE_GROUND.includes(id)) continue;
            for (const { startOn, endOn } of parts)
              for (const day of [startOn, endOn]) {
                checked++;
                expect(isFrozen(monthOf(day)), `${id} on ${day}`).toBe(false);
              }
          }
        },
      ),
      { numRuns: times(60, 600), seed: 52 },
    );
    expect(checked).toBeGreaterThan(300);
  });

  it('is taken for granted far from the equator where no climate is known, and nowhere else', () => {
    const winterSteps = (place: string) =>
      planOf({ ...sound, place }, '2027-12-20').steps.filter(
        ({ id, startOn }) => !OFF_THE_GROUND.includes(id) && [12, 1, 2].includes(monthOf(startOn)),
      );
    expect(winterSteps('52.1, -106.7')).toEqual([]);
    expect(winterSteps('30.4, -84.3').length).toBeGreaterThan(0);
  });
});

describe('the seed', () => {
  // STERF, The Grass Guide, 2015: no ryegrass as lasting grass where winters are hard. The limits are assumptions.
  it('is no ryegrass where the winter kills it, and says so; another that fits the use is sown', () => {
    for (const [climate, place] of [
      ['minneapolis', '45.0, -93.3'],
      ['northBattleford', '52.1, -106.7'],
    ] as const)
      for (const grassType of ['meadow-grass', 'ryegrass-mix', 'fescue-mix'] as const)
        for (const mossFraction of [0.4, 0.06]) {
          const answers = { ...lawn, place, grassType, mossFraction, thatchDepthMm: 5, bareFraction: 0.03 };
          const plan = planOf(answers, '2027-04-03', packIn(climate));
          expect(seedsIn(plan), `${climate} ${grassType}`).toEqual(['seed-meadow-grass']);
          const sown = plan.steps.find(({ id }) => id === 'sow' || id === 'patch-sow');
          const told = plan.cautions.filter(({ id }) => sown?.cautions.includes(id)).map(({ line }) => line);
          expect(told.some((line) => /ryegrass.*winter kills/.test(line))).toBe(true);
        }
  });

  it('is ryegrass with a warning where a hard winter may kill it, and without where it is mild', () => {
    const coast = planOf({ ...lawn, place: '63.8, 20.3' }, '2027-05-01', packIn('holmoen'));
    expect(seedsIn(coast)).toEqual(['seed-ryegrass-mix']);
    expect(coast.cautions.some(({ line }) => /hard winter.*may kill/.test(line))).toBe(true);
    const mild = planOf({ ...lawn, place: '48.1, 11.5' }, '2027-04-03', packIn('munich'));
    expect(seedsIn(mild)).toEqual(['seed-ryegrass-mix']);
    expect(mild.cautions.some(({ line }) => /winter.*kill/.test(line))).toBe(false);
  });

  it('wants a question about the winter where no climate is known', () => {
    const plan = planOf({ ...lawn, place: '52.1, -106.7' }, '2027-04-03');
    expect(plan.cautions.some(({ line }) => /Ask first.*ryegrass.*winters/.test(line))).toBe(true);
  });
});

describe('brown warm-season grass in winter', () => {
  const bermuda: Answers = {
    ...lawn,
    grassType: 'warm-season',
    lawnColour: 'brown-all',
    mossFraction: 0,
    weedFraction: 0.1,
    bareFraction: 0.02,
    thatchDepthMm: 5,
    dogPatches: true,
    soilPh: 4.5,
    mowingHeightMm: 15,
    mowerCut: 'frayed',
    tugTest: 'holds',
  };
  const WAITING = ['wait-for-green', 'look-again'];

  it.each([
    ['2027-01-16', '30.4, -84.3', pack, 4],
    ['2027-01-16', '30.4, -84.3', packIn('tallahassee'), 60],
    ['2027-08-28', '-26.2, 28.0', pack, 60],
    ['2027-08-28', '-26.2, 28.0', packIn('pretoria'), 60],
  ] as const)('on %s at %s is asleep: nothing but waiting', (today, place, rules, lastRainDaysAgo) => {
    for (const tugTest of ['holds', 'lifts', 'unknown']) {
      const plan = planOf({ ...bermuda, place, lastRainDaysAgo, tugTest }, today, rules);
      expect(plan.steps.map(({ id }) => id)).toEqual(WAITING);
      const found = plan.findings.filter(({ verdict }) => verdict === 'found');
      expect(found.some(({ title }) => /asleep for the winter/.test(title))).toBe(true);
      expect(found.some(({ title }) => /drought|dead/.test(title))).toBe(false);
      // Spring: not before March in the north, not before September in the south.
      const again = monthOf(startOf(plan, 'look-again') as IsoDate);
      expect(place.startsWith('-') ? [9, 10, 11] : [3, 4, 5]).toContain(again);
    }
  });

  it.each([
    ['2027-07-16', '30.4, -84.3', packIn('tallahassee')],
    ['2027-01-16', '-26.2, 28.0', packIn('pretoria')],
    ['2027-01-16', '1.4, 104', pack],
  ] as const)('is not what brown means on %s at %s', (today, place, rules) => {
    const plan = planOf({ ...bermuda, place, lastRainDaysAgo: 60 }, today, rules);
    expect(plan.findings.some(({ title, verdict }) => verdict === 'found' && /asleep/.test(title))).toBe(
      false,
    );
  });
});

describe('the British Isles', () => {
  // June and early July are the right months where soil is late: common practice in the Northern Isles and the uplands,
  // no source.
  it.each(['Lerwick', '60.3, -1.3', 'Wick Airport', 'Stornoway', 'Braemar'])(
    '%s can be sown in June',
    (place) => {
      const plan = planOf({ ...lawn, place }, '2027-06-08');
      expect(plan.verdict.id).not.toBe('not-now');
      const sowOn = startOf(plan, 'sow') as IsoDate;
      expect(sowOn >= '2027-06-08' && sowOn <= '2027-07-05', sowOn).toBe(true);
    },
  );

  it('keeps the end of May where the soil is warm in time', () => {
    const sowOn = startOf(planOf({ ...lawn, place: 'Oxford' }, '2027-06-08'), 'sow') as IsoDate;
    expect(monthOf(sowOn)).toBe(8);
  });

  // Dundee, by the station at Leuchars, comes to 10 C of soil about 6 May; what is no warmer cannot be sown before it.
  it('gives no town without a station the most hopeful day', () => {
    const sownAt = (place: string) => startOf(planOf({ ...lawn, place }, '2027-02-01'), 'sow') as IsoDate;
    for (const place of [
      '51.9, -8.5',
      '53.35, -6.26',
      '53.27, -9.05',
      '53.4, -2.98',
      '52.63, 1.29',
      '50.37, -4.14',
    ])
      expect(sownAt(place) >= '2027-04-15', `${place}: ${sownAt(place)}`).toBe(true);
    for (const place of ['57.15, -2.1', '57.48, -4.22'])
      expect(sownAt(place) >= '2027-05-01', `${place}: ${sownAt(place)}`).toBe(true);
  });

  it('names the stations that speak for such a town, and speaks for nothing over the sea', () => {
    const { climate, datesKnownTo } = planOf({ ...lawn, place: '51.9, -8.5' }, '2027-03-13');
    expect(climate?.neighbours).toHaveLength(3);
    expect(datesKnownTo).toBe('day');
    for (const place of ['48.85, 2.35', '52.37, 4.9', '49.18, -0.36', '62, -6.8'])
      expect(planOf({ ...lawn, place }, '2027-03-13').climate, place).toBeNull();
  });
});

describe('smaller things of places', () => {
  it('feeds seedlings in the autumn in which they were sown, while the soil is warm', () => {
    const answers: Answers = {
      ...lawn,
      place: '38.7, -90.4',
      grassType: 'tall-fescue',
      areaM2: 465,
      workDays: 'weekends',
    };
    const plan = planOf(answers, '2027-08-20', packIn('stLouis'));
    const [sown, fed] = [startOf(plan, 'sow'), startOf(plan, 'first-feed')] as [IsoDate, IsoDate];
    expect(sown.slice(0, 4)).toBe('2027');
    expect(fed.slice(0, 4)).toBe('2027');
    // The mean of December in St. Louis is 2.9 C: no growth that would take up feed.
    expect(monthOf(fed)).toBeLessThan(12);
    for (const { startOn } of plan.steps.find(({ id }) => id === 'first-feed')?.parts ?? [])
      expect(startOn < '2027-12-01', startOn).toBe(true);
  });

  it('says that a climate file without a place gives no water use', async () => {
    const told = async (place: string) =>
      rendered(planOf({ ...lawn, place }, '2027-04-03', packIn('stLouis')), 'md');
    expect(await told('unknown')).toMatch(/Without a place.*what the grass drinks is an average/);
    expect(await told('38.7, -90.4')).not.toContain('Without a place');
  });

  it('takes an unknown list of parts beside the area, and an unknown area beside parts', () => {
    const context = answersContext(pack, parseIsoDate('2027-03-13'));
    const parts = [{ shape: 'rectangle', lengthM: 12, widthM: 7 }];
    expect(checkAnswers({ areaM2: 84, lawnParts: 'unknown' }, context).ok).toBe(true);
    expect(checkAnswers({ areaM2: 'unknown', lawnParts: parts }, context).ok).toBe(true);
    expect(checkAnswers({ areaM2: 84, lawnParts: parts }, context).ok).toBe(false);
  });
});
