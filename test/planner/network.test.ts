import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { latestStarts } from '../../src/planner/latest-starts.js';
import { type Link, networkOf, type Point } from '../../src/planner/network.js';

const point = (id: string, more: Partial<Point> = {}) => ({
  id,
  notBefore: 0,
  nextFit: (day: number) => day,
  endOf: (start: number) => start,
  lastFit: () => undefined,
  ...more,
});
const link = (from: string, to: string, minDays: number, maxDays?: number): Link => ({
  from,
  to,
  minDays,
  maxDays,
});

/**
 * The commuting story of Dechter, Meiri and Pearl 1991, Temporal constraint networks, Artificial Intelligence 49.
 * The story is from memory; the times were worked out by hand over the distance matrix, not read off a printed table.
 */
describe('the commuting story of Dechter, Meiri and Pearl 1991', () => {
  const people = ['seven', 'johnLeaves', 'johnArrives', 'fredLeaves', 'fredArrives'].map((id) =>
    id === 'seven' ? { ...point(id), lastFit: () => 0 } : point(id),
  );
  const story = (john: [number, number?], fred: [number, number?]): Link[] => [
    link('seven', 'johnLeaves', 10, 20),
    link('johnLeaves', 'johnArrives', ...john),
    link('fredLeaves', 'johnArrives', 10, 20),
    link('fredLeaves', 'fredArrives', ...fred),
    link('seven', 'fredArrives', 60, 70),
  ];

  it('has John by car and Fred in the car-pool at 10, 40, 20 and 60 minutes past seven at the earliest', () => {
    const starts = networkOf(people, story([30, 40], [40, 50])).leastStarts();
    expect([...(starts?.values() ?? [])]).toEqual([0, 10, 40, 20, 60]);
  });

  it('has them at 20, 50, 30 and 70 minutes past seven at the latest', () => {
    const links = story([30, 40], [40, 50]);
    const starts = networkOf(people, links).leastStarts() as Map<string, number>;
    expect([...latestStarts(people, links, starts).values()]).toEqual([0, 20, 50, 30, 70]);
  });

  it('holds with two own cars, or with the bus and an own car, but not with the bus and the car-pool', () => {
    expect(networkOf(people, story([30, 40], [20, 30])).leastStarts()).toBeDefined();
    expect(networkOf(people, story([60], [20, 30])).leastStarts()).toBeDefined();
    expect(networkOf(people, story([60], [40, 50])).leastStarts()).toBeUndefined();
  });
});

describe('a net of waits', () => {
  const DAYS = 6;
  const ids = ['a', 'b', 'c', 'd'];
  const anyLinks = fc.array(
    fc
      .record({
        from: fc.constantFrom(...ids),
        to: fc.constantFrom(...ids),
        minDays: fc.integer({ min: -2, max: 3 }),
        slack: fc.option(fc.nat(2), { nil: undefined }),
      })
      .filter(({ from, to }) => from !== to),
    { maxLength: 6 },
  );

  /** Every way to put four steps on a few days, tried one by one. */
  function* allStarts(): Generator<number[]> {
    for (let code = 0; code < DAYS ** ids.length; code++)
      yield ids.map((_, index) => Math.floor(code / DAYS ** index) % DAYS);
  }

  it('has the least starts that trying every day finds, with steps that last and are choosy about the day', () => {
    fc.assert(
      fc.property(
        anyLinks,
        fc.array(fc.nat(2), { minLength: 4, maxLength: 4 }),
        fc.nat(3),
        (drafts, lasting, odd) => {
          const links = drafts.map(({ from, to, minDays, slack }) =>
            link(from, to, minDays, slack === undefined ? undefined : minDays + slack),
          );
          const points = ids.map((id, index) =>
            point(id, {
              endOf: (start) => start + (lasting[index] as number),
              nextFit: (day) => (index === odd && day % 2 === 0 ? day + 1 : day),
            }),
          );
          const holds = (starts: number[]): boolean =>
            (odd >= ids.length || (starts[odd] as number) % 2 === 1) &&
            links.every(({ from, to, minDays, maxDays }) => {
              const first = ids.indexOf(from);
              const gap =
                (starts[ids.indexOf(to)] as number) - (starts[first] as number) - (lasting[first] as number);
              return gap >= minDays && (maxDays === undefined || gap <= maxDays);
            });
          const found = networkOf(points, links).leastStarts();
          const all = [...allStarts()].filter(holds);
          const least = ids.map((_, index) => Math.min(...all.map((starts) => starts[index] as number)));
          if (all.length > 0) expect([...(found?.values() ?? [])]).toEqual(least);
          else if (found !== undefined) {
            expect(holds([...found.values()])).toBe(true);
            expect(Math.max(...found.values())).toBeGreaterThanOrEqual(DAYS);
          }
        },
      ),
      { numRuns: 300 },
    );
  });

  it('is given up as soon as its waits run in a circle', () => {
    const links = [link('a', 'b', 1), link('b', 'c', 1), link('c', 'a', 1)];
    expect(
      networkOf(
        ids.map((id) => point(id)),
        links,
      ).leastStarts(),
    ).toBeUndefined();
  });
});
