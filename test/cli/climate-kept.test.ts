/** An own climate stays with a session and with a plan as JSON: nobody has to give the file again. */
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, describe, expect, it } from 'vitest';
import { readSession, writeSession } from '../../src/session/saved-session.js';
import { newFolder, run } from './run.js';

/** Made up: a garden a good deal colder than any station nearby. */
const COLD = Array.from({ length: 12 }, (_, month) => {
  const mean = 7 - 8 * Math.cos(((month - 0.5) / 6) * Math.PI);
  return `${month + 1},${(mean - 5).toFixed(1)},${(mean + 5).toFixed(1)},60`;
});

describe('an own climate', () => {
  let folder = '';
  let climate = '';
  let answers = '';
  let session = '';
  const at = (name: string): string => join(folder, name);
  const text = (path: string): string => readFileSync(path, 'utf8');
  const json = (path: string) => JSON.parse(text(path));

  beforeEach(() => {
    folder = newFolder();
    climate = at('cold hill.csv');
    writeFileSync(climate, ['month,tmin_c,tmax_c,rain_mm', ...COLD].join('\n'));
    answers = at('lawn.json');
    const known = json('transcripts-examples/mossy-family-lawn/answers.json').answers;
    writeFileSync(
      answers,
      JSON.stringify({ format: 1, answers: { ...known, startOn: 'today', place: '51.8, -1.3' } }),
    );
    session = at('lawn.session.json');
  });

  const asked = () =>
    run(['ask', '--plain', '--answers', answers, '--climate', climate, '--save', session], '\n\n\n\n');

  it('is kept in the session, and the plan made again without the file is the same to the byte', () => {
    const first = asked();
    expect(json(session).climate.from).toBe('cold hill.csv, twelve monthly means');
    expect(json(session).climate.tMinC).toHaveLength(12);
    rmSync(climate);
    const again = run(['ask', '--plain', '--save', session], '\n\n');
    expect(again.code).toBe(first.code);
    expect(again.out).toBe(first.out);
    expect(first.out).toContain('your own climate file: cold hill.csv');
    expect(again.err.replace(/\s+/g, ' ')).toContain('The seasons follow your own climate: cold hill.csv');
    expect(json(session).climate.tMaxC).toHaveLength(12);
  });

  it('of a session is what plan and follow go by', () => {
    asked();
    rmSync(climate);
    const made = JSON.parse(run(['plan', session, '--format', 'json']).out);
    expect(made.climate.period).toContain('cold hill.csv');
    const followed = run(['follow', session, '--plain'], '');
    expect(followed.out).toContain('your own climate file: cold hill.csv');
    expect(json(session).climate.tMinC).toHaveLength(12);
  });

  it('moves the sowing in compare as it does in the plan', () => {
    asked();
    const sowOn = (args: readonly string[]) =>
      JSON.parse(run(['plan', ...args, '--today', '2027-03-01', '--format', 'json']).out).steps.find(
        ({ id }: { id: string }) => id === 'sow',
      ).startOn;
    const cold = sowOn([session]);
    expect(cold).toBe(sowOn([answers, '--climate', climate]));
    expect(cold).not.toBe(sowOn([answers]));
    const set = ['--set', 'startOn=2027-08-01', '--today', '2027-03-01', '--format', 'json'];
    const { changes } = JSON.parse(run(['compare', session, ...set]).out);
    const sow = changes.find(({ id }: { id: string }) => id === 'sow');
    expect(sow.before).toContain(cold);
  });

  it('of a plan as JSON is what follow goes by, and an older plan without its means asks for the file', () => {
    const plan = at('plan.json');
    run(['plan', answers, '--climate', climate, '--format', 'json', '--out', plan]);
    const older = json(plan);
    delete older.climate.own;
    writeFileSync(at('older.json'), JSON.stringify(older));
    const { out } = run(['follow', plan, '--plain'], '');
    expect(out).toContain('your own climate file: cold hill.csv');
    expect(json(at('plan.session.json')).climate.from).toContain('cold hill.csv');
    const refused = run(['follow', at('older.json'), '--plain'], '');
    expect(refused.code).toBe(3);
    expect(refused.err).toContain('Give them again with --climate FILE.');
    const given = run(['follow', at('older.json'), '--plain', '--climate', climate], '');
    expect(given.out).toContain('your own climate file: cold hill.csv');
  });

  it('given anew takes the place of the one that was kept', () => {
    asked();
    const other = at('other.csv');
    writeFileSync(other, text(climate));
    const again = run(['ask', '--plain', '--save', session, '--climate', other], '\n\n');
    expect(again.out).toContain('your own climate file: other.csv');
    expect(json(session).climate.from).toContain('other.csv');
  });

  it('differing between two sessions is refused by compare, as the climate would be compared too', async () => {
    asked();
    const second = at('second.session.json');
    const reading = await readSession(text(session));
    if (reading.kind !== 'whole' || reading.session.climate === undefined) throw new Error(reading.kind);
    const other = { ...reading.session.climate, from: 'warm side.csv' };
    writeFileSync(second, writeSession({ ...reading.session, climate: other }));
    const { code, err } = run(['compare', session, second]);
    expect(code).toBe(3);
    expect(err).toMatch(/cold hill\.csv.*warm side\.csv.*--climate FILE/s);
    expect(run(['compare', session, second, '--climate', climate]).code).toBe(0);
  });
});
