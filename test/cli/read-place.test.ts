import { describe, expect, it } from 'vitest';
import { readPlace } from '../../src/cli/read-place.js';
import { pack } from '../planner/any-lawn.js';

const read = (typed: string) => readPlace(typed, pack);

describe('a place', () => {
  it.each([['Oxford'], ['oxford'], [' OXFORD ']])('is a station by its name: %s', (typed) => {
    expect(read(typed)).toEqual({ kind: 'value', value: 'Oxford', understood: 'Oxford' });
  });

  it.each([
    ['Heathow', 'Heathrow'],
    ['Cambridge', 'Cambridge NIAB'],
    ['cardiff', 'Cardiff Bute Park'],
  ])('asks whether %s is meant to be %s', (typed, name) => {
    expect(read(typed)).toMatchObject({ kind: 'odd', value: name });
  });

  it('refuses a name that is like none, and lists the stations', () => {
    const reading = read('Atlantis');
    expect(reading).toMatchObject({ kind: 'refused' });
    expect('says' in reading && reading.says).toMatch(/no weather station called "Atlantis".*Aberporth/s);
  });

  it.each([['51.9, -1.4'], ['51.9N 1.4W'], ['51.9° N, 1.4° W']])(
    'says where %s is, and how far the nearest station lies',
    (typed) => {
      const reading = read(typed);
      expect(reading).toMatchObject({ kind: 'value', value: '51.9, -1.4' });
      // Great circle from 51.9, -1.4 to Oxford at 51.761, -1.262: 0.139 degrees of latitude are 15.5 km,
      // 0.138 of longitude at 51.83 degrees 9.5 km, together 18.1 km.
      expect('understood' in reading && reading.understood).toBe(
        '51.9 degrees north, 1.4 west; the nearest weather station is Oxford, 18 km away',
      );
    },
  );

  it('is asked again where no station is near, and says that only months can be named', () => {
    const reading = read('-34.9, 138.6');
    expect(reading).toMatchObject({ kind: 'odd', value: '-34.9, 138.6' });
    expect('says' in reading && reading.says).toMatch(
      /34\.9 degrees south, 138\.6 east; no weather station that I know is within 60 km.*months only, with a question mark/,
    );
  });

  it('asks which is meant when the two numbers fit the other way round', () => {
    const reading = read('-1.4, 51.9');
    expect(reading).toMatchObject({
      kind: 'which',
      choices: [{ value: '51.9, -1.4' }, { value: '-1.4, 51.9' }],
    });
  });

  it.each([['91, 0'], ['10, 181'], ['51.9'], ['']])('refuses %j', (typed) => {
    expect(read(typed).kind).toBe('refused');
  });
});
