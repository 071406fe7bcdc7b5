import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, daysBetween, isInWindow, nextDateInWindow, parseIsoDate } from '../../src/base/dates.js';
import { type ScheduleStep, type ScheduleWait, schedule } from '../../src/planner/schedule.js';

const start = parseIsoDate('2027-03-01');
const anyDay = {
  nextFit: (day: number) => day,
  lastFit: () => undefined,
  notBefore: 0,
  joinsNext: false,
  workHours: 0,
};
const step = (id: string, more: Partial<ScheduleStep> = {}): ScheduleStep => ({ id, ...anyDay, ...more });
const wait = (from: string, to: string, minDays: number, maxDays?: number): ScheduleWait => ({
  from,
  to,
  minDays,
  maxDays,
  binds: true,
});

/** Days in the window, counted from the start. */
const fitDaysOf =
  (window: { from: string; until: string }) =>
  (day: number): number =>
    daysBetween(start, nextDateInWindow(addDays(start, day), window));

function dayOf(result: ReturnType<typeof schedule>, id: string): number {
  if (result === undefined) throw new Error('no dates');
  return (result.get(id) as { start: number }).start;
}

describe('schedule', () => {
  it('starts what waits for nothing on the first day and the rest after its waits', () => {
    const result = schedule({
      dayHours: 6,
      steps: ['a', 'b', 'c'].map((id) => step(id)),
      waits: [wait('a', 'b', 14), wait('b', 'c', 1)],
    });
    expect(['a', 'b', 'c'].map((id) => dayOf(result, id))).toEqual([0, 14, 15]);
  });

  // Dechter, Meiri, Pearl 1991: a net is inconsistent exactly when its distance graph has a negative cycle; 10 - 7 - 7 < 0.
  it('finds no dates for A to B at least 7, B to C at least 7, A to C at most 10', () => {
    const waits = [wait('a', 'b', 7), wait('b', 'c', 7), wait('a', 'c', 0, 10)];
    expect(schedule({ dayHours: 6, steps: ['a', 'b', 'c'].map((id) => step(id)), waits })).toBeUndefined();
  });

  it('finds the one solution when A to C may take 14', () => {
    const waits = [wait('a', 'b', 7), wait('b', 'c', 7), wait('a', 'c', 0, 14)];
    const result = schedule({
      dayHours: 6,
      steps: ['a', 'b', 'c'].map((id) => step(id)),
      waits,
    });
    expect(['a', 'b', 'c'].map((id) => dayOf(result, id))).toEqual([0, 7, 14]);
  });

  it('pulls an early step along when what follows must wait for its window', () => {
    const window = { from: '04-01', until: '05-31' };
    const sow = step('sow', { nextFit: fitDaysOf(window) });
    const result = schedule({
      dayHours: 6,
      steps: [step('rake'), sow],
      waits: [wait('rake', 'sow', 0, 2)],
    });
    expect([dayOf(result, 'rake'), dayOf(result, 'sow')]).toEqual([29, 31]);
  });

  it('joins a step to the day of what follows it', () => {
    const window = { from: '04-01', until: '05-31' };
    const sow = step('sow', { nextFit: fitDaysOf(window) });
    const result = schedule({
      dayHours: 6,
      steps: [step('rake', { joinsNext: true }), sow],
      waits: [wait('rake', 'sow', 0)],
    });
    expect(dayOf(result, 'rake')).toBe(31);
  });

  it('gives a long day to the day before when the hours do not fit', () => {
    const window = { from: '04-01', until: '05-31' };
    const sow = step('sow', { nextFit: fitDaysOf(window), workHours: 3 });
    const steps = [
      step('fork', { joinsNext: true, workHours: 2 }),
      step('bed', { joinsNext: true, workHours: 3 }),
      sow,
    ];
    const result = schedule({
      dayHours: 6,
      steps,
      waits: [wait('fork', 'bed', 0), wait('bed', 'sow', 0)],
    });
    expect(['fork', 'bed', 'sow'].map((id) => dayOf(result, id))).toEqual([30, 31, 31]);
  });

  it('holds a step back until a date from outside', () => {
    const result = schedule({
      dayHours: 6,
      steps: [step('sow', { notBefore: 30 })],
      waits: [],
    });
    expect(dayOf(result, 'sow')).toBe(30);
  });

  it('keeps every wait and window over random nets, and never starts a day sooner than needed', () => {
    const ids = ['a', 'b', 'c', 'd', 'e'];
    const waits = fc.array(
      fc.record({
        from: fc.nat(4),
        to: fc.nat(4),
        minDays: fc.nat(40),
        slack: fc.option(fc.nat(20), { nil: undefined }),
      }),
      { maxLength: 8 },
    );
    fc.assert(
      fc.property(waits, fc.nat(4), (drafts, windowed) => {
        const net = drafts
          .filter(({ from, to }) => from < to)
          .map(({ from, to, minDays, slack }) =>
            wait(
              ids[from] as string,
              ids[to] as string,
              minDays,
              slack === undefined ? undefined : minDays + slack,
            ),
          );
        const window = { from: '04-10', until: '06-20' };
        const steps = ids.map((id, index) =>
          step(id, index === windowed ? { nextFit: fitDaysOf(window) } : {}),
        );
        const result = schedule({ dayHours: 6, steps, waits: net });
        if (result === undefined) return;
        for (const { from, to, minDays, maxDays } of net) {
          const gap = dayOf(result, to) - dayOf(result, from);
          expect(gap).toBeGreaterThanOrEqual(minDays);
          if (maxDays !== undefined) expect(gap).toBeLessThanOrEqual(maxDays);
        }
        const fixed = ids[windowed] as string;
        expect(isInWindow(addDays(start, dayOf(result, fixed)), window)).toBe(true);
        for (const { from, to } of net) expect(dayOf(result, to)).toBeGreaterThanOrEqual(dayOf(result, from));
      }),
      { numRuns: 1000 },
    );
  });
});
