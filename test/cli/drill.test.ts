/** `drill` as a trainee and a trainer use it: through a pipe, with files, and with what goes wrong. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { newFolder, run } from './run.js';

const JULY = [
  'colour of the lawn, tug test, last rain, dog on the lawn',
  'commit',
  '5',
  '70',
  'resting from drought',
  '60',
];
const typed = (...lines: readonly string[]): string => `${lines.join('\n')}\n`;
const good = typed(...JULY, '65 min', 'wait, look at it', '');
const MOSSY = 'transcripts-examples/mossy-family-lawn/answers.json';

describe('drill', () => {
  it('lists every case with level, topic and time', () => {
    const { code, out } = run(['drill', '--list']);
    expect(code).toBe(0);
    expect(out).toMatch(/^easy\n/);
    expect(out).toMatch(/\nmiddling\n[\s\S]*\nhard\n/);
    expect(out.match(/about \d+ min/g)?.length).toBeGreaterThanOrEqual(24);
  });

  it('runs from the gate to the debrief through a pipe', () => {
    const { code, out, err } = run(['drill', 'july-straw'], good);
    expect(code).toBe(0);
    expect(err).toMatch(/Straw in July/);
    expect(err).toMatch(/You take a tuft and pull/);
    expect(out).toMatch(/^# Debrief: Straw in July/);
    expect(out).toMatch(/\*\*Passed with 9\d of 100\.\*\*/);
  });

  it('says nothing of marks when the input ends before the commit, and goes on from there with --resume', () => {
    const state = newFolder();
    const { code, out, err } = run(['drill', 'july-straw'], typed(JULY[0] as string, 'commit', '5'), state);
    expect(code).toBe(3);
    expect(out).toBe('');
    expect(err).toMatch(/nothing is marked/);
    expect(err).toMatch(/drill july-straw --resume/);
    const other = run(['drill', 'july-straw'], typed('tug test', 'quit'), state);
    expect(other.err).toMatch(/--resume goes on with it/);
    const again = run(
      ['drill', 'july-straw', '--resume'],
      typed(...JULY.slice(3), '65 min', 'wait, look at it', ''),
      state,
    );
    expect(again.code).toBe(0);
    expect(again.out).toBe(run(['drill', 'july-straw'], good).out);
    expect(existsSync(join(state, 'seedbed', 'drills', 'july-straw-whole.json'))).toBe(false);
  });

  it('sets an unfinished drill aside that it cannot read, and begins afresh', () => {
    const state = newFolder();
    run(['drill', 'july-straw'], typed('tug test'), state);
    const file = join(state, 'seedbed', 'drills', 'july-straw-whole.json');
    writeFileSync(file, '{"format": 1, "ty');
    expect(run(['drill', 'july-straw', '--resume'], good, state).err).toMatch(/cannot be read/);
    expect(readFileSync(`${file}.old`, 'utf8')).toBe('{"format": 1, "ty');
  });

  it('tells of what it does not understand, and goes on', () => {
    const { code, err } = run(
      ['drill', 'july-straw'],
      typed(
        'rubbish',
        'suppose',
        'suppose dog perhaps',
        'back',
        ...JULY.slice(0, 3),
        'very',
        '101',
        '90',
        'all of it',
        'none',
        'a lot',
        '',
        'x',
        'wait',
        '',
      ),
    );
    expect(code).toBe(0);
    expect(err).toMatch(/"rubbish" fits none/);
    expect(err).toMatch(/Name a look and an answer/);
    expect(err).toMatch(/no way back in a drill/);
    expect(err).toMatch(/one number from 0 to 100/);
    expect(err).toMatch(/"all of it" fits none/);
    expect(err).toMatch(/"x" fits none/);
  });

  it('writes the debrief to a file, and never over one unasked: that is told before the first look', () => {
    const file = join(newFolder(), 'debrief.md');
    expect(run(['drill', 'july-straw', '--out', file], good).out).toBe('');
    const before = readFileSync(file, 'utf8');
    expect(before).toMatch(/^# Debrief/);
    const again = run(['drill', 'july-straw', '--out', file], good);
    expect(again.code).toBe(5);
    expect(again.err).not.toMatch(/What do you do next/);
    expect(readFileSync(file, 'utf8')).toBe(before);
    expect(run(['drill', 'july-straw', '--out', file, '--force'], good).code).toBe(0);
  });

  it.each([
    ['--out', 'debrief.md'],
    ['--record', 'record.json'],
  ])('tells before the first look that %s cannot be written', (option, name) => {
    const folder = newFolder();
    for (const file of [join(folder, 'missing', name), folder]) {
      const { code, err } = run(['drill', 'july-straw', option, file], good);
      expect(code).toBe(5);
      expect(err).toContain(`${file} cannot be written`);
      expect(err).toContain(option);
      expect(err).not.toMatch(/What do you do next/);
    }
  });

  it('comes back to a drill that was left, by the very line that it tells', () => {
    const state = newFolder();
    const file = join(state, 'my debrief.md');
    const args = ['drill', 'july-straw', '--mode', 'finish', '--out', file];
    const { err } = run(args, typed('', '', ''), state);
    const line = err.replace(/\s*\n\s*/g, ' ');
    expect(line).toContain(`seedbed drill july-straw --mode finish --out '${file}' --resume`);
    const again = run([...args, '--resume'], typed('', '65', 'wait, look at it', ''), state);
    expect(again.code, again.err).toBe(0);
    expect(readFileSync(file, 'utf8')).toMatch(/Passed with 100 of 100/);
  });

  it('says so when there is nothing to resume', () => {
    expect(run(['drill', 'july-straw', '--resume'], good).err).toMatch(/begins at the gate/);
  });

  it('answers "review" with what was seen, and "why" without giving a hint away', () => {
    const { err } = run(['drill', 'july-straw'], typed('tug test', 'review', 'why', 'why dog', 'quit'));
    expect(err).toMatch(/> review\nTug test: You take a tuft/);
    expect(err.match(/yours to think out first/g)).toHaveLength(2);
    expect(err).not.toMatch(/kept from animals/);
  });

  it('charges the last rung of a hint once', () => {
    const { err } = run(['drill', 'july-straw'], typed('hint', 'hint', 'hint', 'hint', 'quit'));
    const costs = [...err.matchAll(/This\s+hint\s+costs\s+(\d|nothing\s+more)/g)].map(([, cost]) => cost);
    expect(costs.map((cost) => cost?.replace(/\s+/g, ' '))).toEqual(['1', '2', '4', 'nothing more']);
  });

  it('keeps a record only where it is asked to, and proposes another case', () => {
    const file = join(newFolder(), 'record.json');
    const first = run(['drill', 'july-straw', '--record', file], good);
    expect(first.err).toMatch(/1 drills?, 1 of \d+ cases passed/);
    expect(run(['drill', '--next', '--record', file]).out).toMatch(/Next: seedbed drill (?!july-straw)/);
    expect(run(['drill', '--next']).code).toBe(2);
  });

  it('leaves a file alone that is no record', () => {
    const file = join(newFolder(), 'record.json');
    writeFileSync(file, '{"mine": true}');
    const { code, err } = run(['drill', 'july-straw', '--record', file], good);
    expect(code).toBe(3);
    expect(err).toMatch(/is no record/);
    expect(err).not.toMatch(/What do you do next/);
    expect(readFileSync(file, 'utf8')).toBe('{"mine": true}');
  });

  it('shows a worked example to the end, without an answer from anyone', () => {
    const { code, out, err } = run(['drill', 'kiln-lane', '--mode', 'watch']);
    expect(code).toBe(0);
    expect(out).toBe('');
    expect(err).toMatch(/Why look there/);
    expect(err).toMatch(/To take home/);
  });

  it('leaves only the last steps to who finishes a case', () => {
    const { out } = run(
      ['drill', 'july-straw', '--mode', 'finish'],
      typed('', '', '', '', '65', 'wait, look at it', ''),
    );
    expect(out).toMatch(/the last steps done/);
    expect(out).not.toMatch(/Looks that were needed/);
    expect(out).toMatch(/Passed with 100 of 100/);
  });

  it.each([
    [['drill', 'july-stra'], 2, /Did you mean "july-straw"/],
    [['drill', 'july-straw', 'again'], 2, /one case/],
    [['drill', '--mode', 'half'], 2, /watch, finish, whole/],
    [['drill', 'missing.json'], 5, /missing\.json cannot be read/],
    [['drill', '--new', 'x.json'], 2, /--from/],
    [['drill', 'july-straw', '--from', 'x.json'], 2, /not both/],
    [['drill', 'july-straw', '--today', '2027-01-01'], 2, /goes with --from/],
    [['drill', 'july-straw', '--handout', '--key'], 2, /one at a time/],
  ])('%j exits with %d', (args, exit, says) => {
    const { code, err } = run(args);
    expect(code).toBe(exit);
    expect(err).toMatch(says);
  });
});

describe('a case on paper', () => {
  it('is a handout without answers, and a key with them', () => {
    const handout = run(['drill', 'hard-as-the-road', '--handout']).out;
    const key = run(['drill', 'hard-as-the-road', '--key']).out;
    for (const secret of ['empty for 18 days', 'live cable', 'wet it and test again']) {
      expect(key).toContain(secret);
      expect(handout).not.toContain(secret);
    }
    expect(handout).toContain('Mr Tallis of Chapel Row');
  });

  it('gives amounts and steps out on a second sheet, since they tell what is wrong', () => {
    const [first, second] = run(['drill', 'dry-rings', '--handout']).out.split('\n***\n');
    expect(first).not.toMatch(/wetting agent|soak/i);
    expect(first).toContain('The soil sheds water instead of taking it in');
    expect(second).toMatch(/wetting agent is washed in/);
  });
});

describe('a case made of an own lawn', () => {
  it('can be drilled from an answers file', () => {
    const { code, err } = run(
      ['drill', '--from', MOSSY, '--today', '2027-03-13'],
      typed('moss cover', 'quit'),
    );
    expect(code).toBe(0);
    expect(err).toMatch(/a real lawn/);
    expect(err).toMatch(/40 %/);
  });

  it('can be drilled from a saved session as well', () => {
    const folder = newFolder();
    const file = join(folder, 'session.json');
    run(['ask', '--plain', '--save', file], typed('yes', 'no', 'save'), folder);
    const { code, err } = run(['drill', '--from', file], typed('dog on the lawn', 'quit'));
    expect(code).toBe(0);
    expect(err).toMatch(/Dog on the lawn\nYes\./);
  });

  it('is led through writing, checked, saved, and can then be run', () => {
    const file = join(newFolder(), 'hill-house.json');
    const args = ['drill', '--from', MOSSY, '--today', '2027-03-13', '--new', file];
    const looks = Array.from({ length: 30 }, () => '');
    const { code, err } = run(
      args,
      typed('Hill House', '', '2', 'moss', '12', 'An invented owner says that it is soft.', ...looks),
    );
    expect(code, err).toBe(0);
    const made = JSON.parse(readFileSync(file, 'utf8')) as Record<string, unknown>;
    expect(made).toMatchObject({ id: 'hill-house', title: 'Hill House', level: 'middling', minutes: 12 });
    const drilled = run(['drill', file], typed('moss cover', 'quit'));
    expect(drilled.code).toBe(0);
    expect(drilled.err).toMatch(/Hill House/);
    expect(run(args, '').code).toBe(5);
  });

  it('is not written when they leave half way', () => {
    const file = join(newFolder(), 'half.json');
    const { err } = run(['drill', '--from', MOSSY, '--new', file], typed('Hill House', 'quit'));
    expect(err).toMatch(/no case was written/);
    expect(existsSync(file)).toBe(false);
  });

  it('that is not sound is refused with every fault', () => {
    const file = join(newFolder(), 'broken.json');
    const made = JSON.parse(readFileSync('rules/cases/03-july-straw.json', 'utf8'));
    writeFileSync(file, JSON.stringify({ ...made, expected: { ...made.expected, verdict: 'renovate' } }));
    const { code, err } = run(['drill', file]);
    expect(code).toBe(4);
    expect(err).toMatch(/come to "not-now"/);
  });
});
