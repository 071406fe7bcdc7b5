/** `ask`, `follow` and `drill` at a real terminal: words typed at every kind of question are heard, Enter alone states nothing. */
import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import { newFolder, run } from '../cli/run.js';
import { atTerminal, type Turn } from './at-terminal.js';

const MAIN = resolve('dist/bin/main.js');
const EXAMPLE = 'transcripts-examples/mossy-family-lawn/answers.json';
const folders: string[] = [];
let cwd = '';
beforeEach(() => {
  cwd = newFolder();
  folders.push(cwd);
});
afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
});

const seedbed = (args: readonly string[], turns: readonly Turn[]) =>
  atTerminal([MAIN, ...args], turns, { cwd });

/** The drawn field with nothing in it: the prompt listens. */
const ASKED = (text: string) => new RegExp(`${text}.*what you have answered`);

function answersIn(file: string): Record<string, unknown> {
  if (!existsSync(join(cwd, file))) return {};
  const { answers } = JSON.parse(readFileSync(join(cwd, file), 'utf8'));
  return Object.fromEntries(
    (answers as { questionId: string; value: unknown }[]).map(({ questionId, value }) => [questionId, value]),
  );
}

/** The example's answers without these; they are asked. */
function answersWithout(...ids: readonly string[]): void {
  const all = JSON.parse(readFileSync(EXAMPLE, 'utf8'));
  for (const id of ids) delete all.answers[id];
  writeFileSync(join(cwd, 'a.json'), JSON.stringify(all));
}

describe('ask at a real terminal', () => {
  it('hears yes, no and their letters, and records nothing on Enter alone or at what it cannot read', async () => {
    const { words, missed } = await seedbed(
      ['ask', '--save', 's.json'],
      [
        [ASKED('Does a dog'), '\r'],
        [/Type an answer/, 'yse\r'],
        [/Type yes or no/, 'yes\r'],
        [ASKED('Do children'), 'n', '\r'],
        [/Noted: no.*what you have answered/, 'quit\r'],
      ],
    );
    expect(missed).toEqual([]);
    expect(words).toContain('Noted: yes');
    expect(answersIn('s.json')).toEqual({ dog: true, children: false });
  });

  it('hears every word of the session at a yes or no', async () => {
    const { words, missed } = await seedbed(
      ['ask', '--save', 's.json'],
      [
        [ASKED('Does a dog'), 'why\r'],
        [ASKED('Does a dog'), 'help\r'],
        [ASKED('Does a dog'), 'walk\r'],
        [ASKED('Does a dog'), 'back\r'],
        [/This is the first question.*what you have answered/, 'review\r'],
        [/There is no answer yet.*what you have answered/, 'skip\r'],
        [/Type yes or no/, 'how\r'],
        [/how/, '\x15', "don't know\r"],
        [ASKED('Do children'), 'back\r'],
        [ASKED('Does a dog'), 'save\r'],
      ],
    );
    expect(missed).toEqual([]);
    expect(words).toContain('Your answers are saved');
    expect(answersIn('s.json')).toEqual({ dog: 'unknown' });
  });

  it('hears words at a choice, a date that reads two ways, and the list at the end', async () => {
    answersWithout('startOn', 'workDays', 'lawnColour');
    const { missed } = await seedbed(
      ['ask', '--answers', 'a.json', '--save', 's.json', '--units', 'us'],
      [
        [ASKED('first day'), '9/4\r'],
        [/two ways.*September.*April.*type your answer\./, 'april\r'],
        [ASKED('which days'), 'weekends\r'],
        [ASKED('colour'), 'frobnicate\r'],
        [/That is not in the list/, 'pale\r'],
        [/That is all I need.*type your answer\./, 'zzz\r'],
        [/Type a number from 1/, 'days for work\r'],
        [/.*/, 'quit\r'],
      ],
    );
    expect(missed).toEqual([]);
    const { startOn, workDays, lawnColour } = answersIn('s.json');
    expect(String(startOn)).toMatch(/-04-09$/);
    expect([workDays, lawnColour]).toEqual(['weekends', 'pale']);
  });

  it('hears words in the list of unfinished sessions, and at what it asks to be sure of', async () => {
    const first: Turn[] = [
      [ASKED('Does a dog'), 'yes\r'],
      [ASKED('Do children'), 'quit\r'],
    ];
    expect((await seedbed([], first)).missed).toEqual([]);
    const { missed, words } = await seedbed(
      [],
      [
        [/unfinished session.*type your answer\./, '\r'],
        [/Type a number from 1 to 4/, 'throw\r'],
        [/Throw away.*type your answer\./, 'n\r'],
        [/unfinished session.*type your answer\./, 'throw one away\r'],
        [/Throw away.*type your answer\./, 'maybe\r'],
        [/Type yes or no/, 'yes\r'],
        [ASKED('Does a dog'), 'quit\r'],
      ],
    );
    expect(missed).toEqual([]);
    expect(words).toContain('It is gone.');
  });
});

describe('follow at a real terminal', () => {
  const TOLD: readonly Turn[] = [
    [/What has been done.*type your answer\./, 'treat\r'],
    [/On which day was .Treat the moss. finished/, '3/27\r'],
    [/leave empty for nothing/, '\r'],
    [/What has been done.*type your answer\./, 'nothing more\r'],
  ];
  const SEEN = /Is it so\?.*have not looked.*type your answer\./;

  const follow = async (turns: readonly Turn[]) => {
    run(['plan', EXAMPLE, '--today', '2027-03-13', '--format', 'json', '--out', join(cwd, 'plan.json')]);
    const sat = await seedbed(['follow', 'plan.json', '--today', '2027-04-16'], [...TOLD, ...turns]);
    const { records } = JSON.parse(readFileSync(join(cwd, 'plan.session.json'), 'utf8')).followed;
    return { ...sat, signs: records.filter(({ kind }: { kind: string }) => kind === 'sign') };
  };

  it.each([
    ['no', { seen: false }],
    ['n', { seen: false }],
    ['partly', { seen: false, partly: true }],
    ['y', { seen: true }],
  ])('records at a sign what is typed and nothing else: %j', async (typed, record) => {
    const { signs, missed } = await follow([
      [SEEN, '\r'],
      [/Type a number from 1 to 4/, `${typed}\r`],
    ]);
    expect(missed).toEqual([]);
    expect(signs).toMatchObject([{ kind: 'sign', ...record }]);
  });

  it('records nothing where nobody has looked, and nothing when it is left', async () => {
    const unseen = await follow([[SEEN, 'have not looked\r']]);
    expect([unseen.missed, unseen.signs]).toEqual([[], []]);
    rmSync(join(cwd, 'plan.json'));
    rmSync(join(cwd, 'plan.session.json'));
    const left = await follow([[SEEN, 'quit\r']]);
    expect([left.missed, left.signs]).toEqual([[], []]);
    expect(left.words).toContain('What you told is saved');
  });
});

describe('drill at a real terminal', () => {
  it('hears words for the judgement, for how sure, for several names, and in the list of an unfinished drill', async () => {
    const { missed } = await seedbed(
      ['drill', 'spongy-green'],
      [
        [/What do you do next/, 'commit\r'],
        [/What does this lawn need.*type your answer\./, 'zzz\r'],
        [/Type a number from 1/, 'renovate\r'],
        [/How sure are you/, '80\r'],
        [/What is wrong\?/, 'frobnicate\r'],
        [/Type numbers of the list/, 'quit\r'],
      ],
    );
    expect(missed).toEqual([]);
    const again = await seedbed(
      ['drill', 'spongy-green'],
      [
        [/unfinished drill.*type your answer\./, '\r'],
        [/Type a number from 1 to 3/, 'begin again\r'],
        [/What do you do next/, 'commit\r'],
        [/What does this lawn need.*type your answer\./, '\r'],
        [/Then go on looking/, 'quit\r'],
      ],
    );
    expect(again.missed).toEqual([]);
    expect(again.words).toContain('nothing is marked');
  });
});
