import { cpSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { newFolder, run } from './run.js';

const linesOf = (folder: string): string[] =>
  readFileSync(`transcripts-examples/${folder}/transcript.txt`, 'utf8')
    .split('\n')
    .filter((line) => line.startsWith('> '))
    .map((line) => line.slice(2));

describe('seedbed without a terminal', () => {
  it('plays the example, says so first, and exits 0', () => {
    const { code, out, err } = run([]);
    expect(code).toBe(0);
    expect(err.split('\n')[0]).toMatch(/^This is an invented example lawn/);
    expect(out).toBe(readFileSync('transcripts-examples/mossy-family-lawn/plan.md', 'utf8'));
  });
});

describe('ask with piped lines', () => {
  it('makes a plan when everything that matters is answered before the input ends', () => {
    const typed = ['2027-04-03', ...linesOf('hardly-anything-known')].slice(1);
    const { code, out } = run(['ask', '--plain'], `${typed.join('\n')}\n`);
    expect(code).toBe(0);
    expect(out).toContain('# Lawn plan');
  });

  it('saves and exits 3 when the input ends early, and goes on from there', () => {
    const state = newFolder();
    const first = run(['ask', '--plain'], 'yes\nno\n', state);
    expect(first.code).toBe(3);
    expect(first.err).toContain('Your answers are saved');
    const again = run(['ask', '--plain'], '1\nyes\nquit\n', state);
    expect(again.err).toContain('We go on where you stopped');
    expect(again.err).toContain('nearest pond');
  });

  it('keeps the session in the file that --save names', () => {
    const file = join(newFolder(), 'mine.json');
    expect(run(['ask', '--plain', '--save', file], 'yes\nquit\n').code).toBe(0);
    expect(JSON.parse(readFileSync(file, 'utf8')).answers[0]).toMatchObject({
      questionId: 'dog',
      value: true,
    });
    expect(run(['ask', '--plain', '--save', file], 'quit\n').err).toContain('Do children play');
  });

  it('does not ask what --answers already tells', () => {
    const file = join(newFolder(), 'answers.json');
    writeFileSync(file, JSON.stringify({ format: 1, answers: { dog: true, children: false } }));
    expect(run(['ask', '--plain', '--answers', file], 'quit\n').err).toContain('nearest pond');
  });

  it('explains, goes back, reviews and takes "don\'t know" at any question', () => {
    const { err } = run(['ask', '--plain'], 'why\nhelp\ndk\nback\nno\nreview\n\nquit\n');
    expect(err).toContain('Question 1');
    expect(err.match(/Does a dog ever come/g)?.length).toBeGreaterThanOrEqual(2);
  });

  it('writes no control codes and no line wider than asked', () => {
    const { err } = run(['ask', '--plain', '--width', '40'], 'why\nhelp\nyes\nno\ndk\nquit\n');
    expect(err).not.toContain('\u001b');
    const state = /\/\S+/g;
    for (const line of err.split('\n')) expect(line.replace(state, '').length, line).toBeLessThanOrEqual(40);
  });

  it('leaves files that only their owner can read', () => {
    const state = newFolder();
    run(['ask', '--plain'], 'yes\n', state);
    expect(readdirSync(join(state, 'seedbed')).filter((name) => name.endsWith('.session.json')).length).toBe(
      1,
    );
  });
});

describe('answers that cannot stand together', () => {
  const file = join(newFolder(), 'answers.json');
  const journey = 'transcripts-examples/mossy-family-lawn/answers.json';
  const { mossFraction: _, ...rest } = JSON.parse(readFileSync(journey, 'utf8')).answers;
  writeFileSync(file, JSON.stringify({ format: 1, answers: { ...rest, weedFraction: 0.3 } }));

  it('are told with what was found, and one of them is asked again with the old answer at hand', () => {
    const { err, code } = run(['ask', '--plain', '--answers', file], '90 %\n2\n\n2\n5 %\n');
    expect(err).toMatch(/together they cannot be\s+more than the whole/);
    expect(err).toMatch(/1 {2}moss cover: 90 %\n {2}2 {2}weed cover: 30 %\n {2}3 {2}bare ground: /);
    expect(err).toContain('Enter alone takes: 30 %');
    expect(code).toBe(0);
  });

  it('keep a plan from being made, and are all kept when the input ends', () => {
    const state = newFolder();
    const { code, out } = run(['ask', '--plain', '--answers', file], '90 %\n', state);
    expect([code, out]).toEqual([3, '']);
    const [saved = ''] = readdirSync(join(state, 'seedbed')).filter((name) => name.endsWith('.session.json'));
    const { answers } = JSON.parse(readFileSync(join(state, 'seedbed', saved), 'utf8'));
    const value = (id: string) =>
      answers.find((each: { questionId: string }) => each.questionId === id)?.value;
    expect([value('mossFraction'), value('weedFraction')]).toEqual([0.9, 0.3]);
    expect(run(['ask', '--plain'], '1\n', state).err).toContain('Which one do you want to change?');
  });
});

describe('unfinished sessions', () => {
  const begin = (state: string, ...lines: readonly string[]) =>
    run(['ask', '--plain'], `${lines.join('\n')}\n`, state);

  it('without an answer leave no file and are not offered', () => {
    const state = newFolder();
    expect(begin(state, 'quit').err).toContain('Nothing was answered, so nothing is kept.');
    expect(begin(state, 'yes').err).not.toContain('unfinished');
  });

  it('are told apart by lawn, place, days and answers', () => {
    const state = newFolder();
    const answers = join(state, 'a.json');
    writeFileSync(answers, '{"format": 1, "answers": {"lawnName": "Orchard lawn", "place": "Oxford"}}');
    run(['ask', '--plain', '--answers', answers], 'yes\n', state);
    const { err } = begin(state, '2', 'yes', 'quit');
    expect(err).toMatch(/go on with Orchard lawn, Oxford: 3 answers, begun \w+ \d+ \w+/);
    const both = begin(state, 'quit').err;
    expect(both).toContain('There are 2 unfinished sessions');
    expect(both).toContain('a lawn without a name yet: 1 answer');
  });

  it('can be thrown away, one at a time, when that is confirmed', () => {
    const state = newFolder();
    begin(state, 'yes');
    expect(begin(state, '3', 'no', '3', 'yes', 'quit').err).toContain('It is gone.');
    expect(begin(state, 'quit').err).not.toContain('unfinished');
  });

  it('are kept when they led to a plan, and open again to change an answer', () => {
    const made = run(['ask', '--plain', '--answers', 'transcripts-examples/shady-strip/answers.json'], '\n');
    expect(made.err).toContain('Your answers are kept');
    const path = /kept:\n {2}(\S+)/.exec(made.err)?.[1] ?? '';
    expect(run(['ask', '--plain', '--save', path], '\n').out).toBe(made.out);
  });
});

describe('a session begun with other rules', () => {
  const rules = join(newFolder(), 'rules');
  cpSync('rules', rules, { recursive: true });
  const edit = (file: string, change: (records: { id: string; text: string }[]) => unknown) => {
    const path = join(rules, file);
    writeFileSync(path, JSON.stringify(change(JSON.parse(readFileSync(path, 'utf8')))));
  };
  edit('questions/safety.json', (questions) =>
    questions.map((each) => (each.id === 'pavingBeside' ? { ...each, text: 'Does it touch stone?' } : each)),
  );
  const begun = () => {
    const state = newFolder();
    run(['ask', '--plain', '--pack', rules], 'yes\nno\n30\n1\n5\nno\nno\n', state);
    return state;
  };

  it('is moved over, with a list of what is kept and what is asked again, and the old answer offered', () => {
    const { err } = run(['ask', '--plain'], '1\n1\nquit\n', begun());
    expect(err).toContain('The rules have changed since this session was begun');
    expect(err.replace(/\s+/g, ' ')).toMatch(
      /Kept: dog on the lawn yes, children on the lawn no, distance to water 30 m, /,
    );
    expect(err.replace(/\s+/g, ' ')).toMatch(/Asked again, [^:]*: paving beside the lawn no\./);
    expect(err).toMatch(/Does the lawn touch paving.*\n.*\n.*\n.*\nEnter alone takes: no/);
  });

  it('is finished as it was, by the rules it was begun with', () => {
    const state = begun();
    const { err } = run(['ask', '--plain'], '1\n2\nreview\n3\n', state);
    expect(err).toContain('Does it touch stone?');
    expect(err).not.toContain('Does the lawn touch paving');
  });

  it('can only be moved over when those rules are gone, and stays untouched when it is left', () => {
    const state = begun();
    rmSync(join(state, 'seedbed', 'rules'), { recursive: true });
    const path = join(state, 'seedbed', readdirSync(join(state, 'seedbed'))[0] as string);
    const saved = readFileSync(path, 'utf8');
    const { err } = run(['ask', '--plain'], '1\n2\n', state);
    expect(err).not.toContain('finish as it was');
    expect(readFileSync(path, 'utf8')).toBe(saved);
  });
});

describe('a session file', () => {
  it('that is damaged is set aside, and what can be read goes on', () => {
    const file = join(newFolder(), 'mine.json');
    run(['ask', '--plain', '--save', file], 'yes\nno\n30\n1\n5\nno\nno\n');
    const whole = readFileSync(file, 'utf8');
    const cut = whole.slice(0, whole.indexOf('"pavingBeside"'));
    writeFileSync(file, cut);
    const { err } = run(['ask', '--plain', '--save', file], '');
    // A long name of a folder is broken anywhere.
    expect(err.replace(/\s+/g, '')).toMatch(
      /wasdamaged,orchangedsinceitwassaved\.Itissetasideas\S+mine\.json\.damaged\.6answerscouldberead;1couldnot/,
    );
    expect(readFileSync(`${file}.damaged`, 'utf8')).toBe(cut);
    expect(JSON.parse(readFileSync(file, 'utf8')).answers).toHaveLength(6);
  });

  it('that another window has open is refused by name', () => {
    const file = join(newFolder(), 'mine.json');
    writeFileSync(`${file}.lock`, `${process.pid}\n`);
    const { code, err } = run(['ask', '--plain', '--save', file], 'yes\n');
    expect(code).toBe(5);
    expect(err).toContain(`is open in another window (process ${process.pid})`);
  });

  it.each(['/nowhere/at/all.json', '/'])('that cannot be written is refused: %s', (file) => {
    const { code, err } = run(['ask', '--plain', '--save', file], 'yes\n');
    expect([code, err.includes('Choose another place with --save.')]).toEqual([5, true]);
  });
});

describe('help and version', () => {
  it.each([['--help'], ['-h'], ['help']])('%s lists the commands', (flag) => {
    const { code, out } = run([flag]);
    expect(code).toBe(0);
    for (const name of ['ask', 'plan', 'rules']) expect(out).toContain(`seedbed ${name}`);
  });

  it('is there for every command', () => {
    for (const name of ['ask', 'plan', 'rules']) {
      const { code, out } = run([name, '--help']);
      expect([code, out.includes('Usage: seedbed')]).toEqual([0, true]);
    }
  });

  it('tells the version of the package', () => {
    expect(run(['--version']).out.trim()).toBe(JSON.parse(readFileSync('package.json', 'utf8')).version);
  });
});

describe('ask about several areas', () => {
  const one = join(newFolder(), 'one.json');
  writeFileSync(
    one,
    JSON.stringify({
      format: 1,
      answers: JSON.parse(readFileSync('transcripts-examples/mossy-family-lawn/answers.json', 'utf8'))
        .answers,
    }),
  );
  const pathOf = () => join(newFolder(), 'session.json');

  it('adds one after the first, offers what the first has, and plans both together', () => {
    const save = pathOf();
    // The names; nothing near, what is seen and what is felt as at the front; the rest by its default or unknown.
    const typed = ['add', '', 'back', 'yes', 'yes', 'yes', 'yes', ...Array(40).fill('dk')];
    const added = run(['ask', '--plain', '--answers', one, '--save', save], `${typed.join('\n')}\n`);
    expect(added.err).toContain('What do you call the area you have told me of? (Enter alone takes front)');
    expect(added.err.replace(/\s+/g, ' ')).toContain('is it the same for the back as for the front?');
    expect(added.err).toContain('Back. How big it is');
    const session = JSON.parse(readFileSync(save, 'utf8'));
    expect(session.areas).toEqual(['front', 'back']);
    expect(
      session.answers.some(({ questionId }: { questionId: string }) => questionId === 'mossFraction'),
    ).toBe(false);
    const moss = session.inAreas.filter(
      ({ questionId }: { questionId: string }) => questionId === 'mossFraction',
    );
    expect(moss.map(({ area, value }: { area: string; value: number }) => [area, value])).toEqual([
      ['front', moss[0].value],
      ['back', moss[0].value],
    ]);
    // Later it goes on where it stood, with both.
    const again = run(['ask', '--plain', '--save', save], '');
    expect(again.code).toBe(0);
    expect(again.out).toContain('### Back');
    const followed = run(['follow', save, '--today', '2027-05-01']);
    expect([followed.code, followed.out]).toEqual([3, '']);
    expect(followed.err).toContain('has several areas (front, back)');
    // What reads answers reads the session too.
    const planned = run(['plan', save, '--format', 'json', '--today', '2027-03-13']);
    expect(JSON.parse(planned.out).areas.map(({ name }: { name: string }) => name)).toEqual([
      'front',
      'back',
    ]);
  });

  it('asks anew about an area what safety rests on, and offers no answer for it', () => {
    const typed = ['add', 'front', 'back', 'yes', 'yes', 'yes', 'yes', 'why', 'quit'];
    const { err } = run(['ask', '--plain', '--answers', one, '--save', pathOf()], `${typed.join('\n')}\n`);
    const asked = err.slice(err.lastIndexOf('Back. Who and what is near the lawn'));
    expect(asked).toContain('How many metres is it from the lawn');
    expect(asked).not.toContain('Enter alone takes');
  });

  it('takes the areas of an answers file and prints a walk for each', () => {
    const file = join(newFolder(), 'two.json');
    writeFileSync(
      file,
      JSON.stringify({
        format: 1,
        answers: { place: 'Oxford' },
        areas: [
          { name: 'front', answers: { areaM2: 60 } },
          { name: 'back', answers: { areaM2: 100 } },
        ],
      }),
    );
    const { out, code } = run(['ask', '--walk', '--answers', file]);
    expect(code).toBe(0);
    expect(out.match(/^# .*/gm)).toEqual(['# A walk round the front', '# A walk round the back']);
    expect(run(['compare', file, file]).err).toContain('has several areas (front, back)');
  });
});
