import { describe, expect, it } from 'vitest';
import { parseIsoDate } from '../../src/base/dates.js';
import { type Dated, datesFor, datesWithHelp, datesWithParting } from '../../src/planner/parting.js';
import type { ScheduleStep } from '../../src/planner/schedule.js';
import type { StepNet } from '../../src/planner/step-net.js';

const step = (id: string, workHours: number, more: Partial<ScheduleStep> = {}): ScheduleStep => ({
  id,
  workHours,
  notBefore: 0,
  nextFit: (day) => day,
  lastFit: () => undefined,
  joinsNext: false,
  ...more,
});
const wait = (from: string, to: string, minDays: number, maxDays?: number) => ({
  from,
  to,
  minDays,
  maxDays,
  binds: true,
});

/** Open the ground, sow within two days, cover on the same day; then mow three weeks after the last sowing. */
function lawn(openHours: number, sowHours: number, more: Partial<ScheduleStep> = {}): StepNet {
  return {
    startOn: parseIsoDate('2027-04-01'),
    inPlan: new Set(['open', 'sow', 'cover', 'mow']),
    dayHours: 6,
    inParts: new Set(['open', 'sow', 'cover']),
    eachPart: new Set(),
    steps: [
      step('open', openHours, more),
      step('sow', sowHours, more),
      step('cover', sowHours, more),
      step('mow', 1),
    ],
    waits: [wait('open', 'sow', 0, 2), wait('sow', 'cover', 0, 0), wait('sow', 'mow', 21)],
  };
}

describe('a lawn in parts', () => {
  it('is done in one go where the hours allow it', () => {
    expect(datesWithParting(lawn(4, 2), 3)?.parting).toMatchObject({ parts: 1, people: 1 });
  });

  // Sowing and covering 8 h of work on the same day of 6 h: two halves of 4 h are the fewest that fit. By hand.
  it('has as few parts as let sowing and covering share a day', () => {
    const dated = datesWithParting(lawn(4, 4), 3);
    expect(dated?.parting).toMatchObject({ parts: 2, people: 1 });
    // Each half is opened in 2 h and sown and covered in 4 h: a day a half.
    expect(dated?.dates.get('open')?.map(({ start }) => start)).toEqual([0, 1]);
    expect(dated?.dates.get('cover')?.map(({ start }) => start)).toEqual([0, 1]);
  });

  it('counts what is done over the whole lawn from its last part', () => {
    expect(datesWithParting(lawn(4, 4), 3)?.dates.get('mow')).toMatchObject([{ start: 1 + 21 }]);
  });

  it('gives each part in its own time what need not wait for the others', () => {
    const net = { ...lawn(4, 4), eachPart: new Set(['mow']) };
    // The halves are sown on days 0 and 1, and each is mown three weeks after its own sowing. By hand.
    expect(
      datesWithParting(net, 3)
        ?.dates.get('mow')
        ?.map(({ start }) => start),
    ).toEqual([21, 22]);
  });

  it('takes another pair of hands when a season is too short for one', () => {
    // A season of three days in ten, for 24 h of work: at 6 h a day for one person, four days. By hand.
    const inSeason = {
      nextFit: (day: number) => (day % 10 < 3 ? day : day - (day % 10) + 10),
      lastFit: (day: number) => day - (day % 10) + 2,
    };
    expect(datesWithParting(lawn(8, 8, inSeason), 3)?.parting.people).toBe(2);
  });

  it('waits for the next season where the rest of this one is too short', () => {
    const inSeason = {
      nextFit: (day: number) => (day % 100 < 10 ? day : day - (day % 100) + 100),
      lastFit: (day: number) => day - (day % 100) + 9,
    };
    const late = { ...lawn(8, 8, inSeason) };
    const dated = datesWithParting(
      { ...late, steps: late.steps.map((each) => ({ ...each, notBefore: 8 })) },
      3,
    );
    expect(dated?.parting.people).toBe(1);
    expect(dated?.dates.get('open')?.[0]?.start).toBe(100);
  });

  it('that waits for the next season says how many people would do it in this one', () => {
    // 24 h of work, and two days left: 12 h a day, so two people at 6 h. By hand.
    const inSeason = {
      nextFit: (day: number) => (day % 100 < 10 ? day : day - (day % 100) + 100),
      lastFit: (day: number) => day - (day % 100) + 9,
    };
    const whole = lawn(8, 8, inSeason);
    const net = { ...whole, steps: whole.steps.map((each) => ({ ...each, notBefore: 8 })) };
    const alone = datesWithParting(net, 3) as Dated;
    const helped = datesWithHelp(net, alone, 3);
    expect(helped?.parting.people).toBe(2);
    expect(helped?.dates.get('open')?.[0]?.start).toBe(8);
    // Nobody is asked for where one more would not do, and nothing is said where nothing waits.
    expect(datesWithHelp(net, alone, 1)).toBeUndefined();
    const early = lawn(8, 8, inSeason);
    expect(datesWithHelp(early, datesWithParting(early, 3) as Dated, 3)).toBeUndefined();
  });

  it('is work for a contractor when more people than can be gathered would be needed', () => {
    const inSeason = {
      nextFit: (day: number) => (day % 100 < 2 ? day : day - (day % 100) + 100),
      lastFit: (day: number) => day - (day % 100) + 1,
    };
    const dated = datesWithParting(lawn(100, 100, inSeason), 3);
    expect(dated?.parting).toMatchObject({ parts: 1, people: 4 });
    expect(dated?.dates.get('cover')).toMatchObject([{ start: 0 }]);
  });

  it('has no dates where waits run in a circle, whatever the hours', () => {
    const net = lawn(4, 2);
    expect(datesWithParting({ ...net, waits: [...net.waits, wait('cover', 'open', 1)] }, 3)).toBeUndefined();
  });

  it('spreads work that is more than a day over the next days, and counts waits from the last', () => {
    const dates = datesFor(
      { ...lawn(15, 1), inParts: new Set() },
      { parts: 1, people: 1, dayHours: 6, notBefore: 0 },
    );
    // 15 h at 6 h a day: three days; 3 h are left on the third for sowing and covering. By hand.
    expect(dates?.get('open')).toMatchObject([{ start: 0, end: 2 }]);
    expect(dates?.get('sow')).toMatchObject([{ start: 2, end: 2 }]);
  });
});
