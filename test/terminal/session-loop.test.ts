import { describe, expect, it } from 'vitest';
import { UNKNOWN } from '../../src/interview/answers.js';
import type { Asker, Prompt, Reply } from '../../src/terminal/asker.js';
import { createLineAsker } from '../../src/terminal/line-asker.js';
import {
  type GivenAnswer,
  type Interview,
  type ReviewLine,
  runSession,
} from '../../src/terminal/session-loop.js';
import { SAMPLES } from '../interview/read-samples.js';
import { pipedLines, promptFor, read, tape } from './samples.js';

const QUESTIONS = [
  { section: 'A look at it', question: { ...SAMPLES.feel, id: 'feel', label: 'feel' } },
  { section: 'A look at it', question: { ...SAMPLES.sun, id: 'sun', label: 'hours of sun' } },
  { section: 'Size', question: { ...SAMPLES.area, id: 'area', label: 'area' } },
];

/** Asks its questions in order, and goes back to one that is chosen. */
function plainInterview() {
  const answers = new Map<string, GivenAnswer>();
  let chosen: string | undefined;
  const asked: string[] = [];
  const interview: Interview = {
    next() {
      const index = QUESTIONS.findIndex(({ question }) =>
        chosen === undefined ? !answers.has(question.id) : question.id === chosen,
      );
      const next = QUESTIONS[index];
      if (next === undefined) return undefined;
      asked.push(next.question.id);
      return promptFor(next.question, {
        number: index + 1,
        sectionTitle: next.section,
        opensSection: QUESTIONS[index - 1]?.section !== next.section,
        dontKnowText: `Never mind ${next.question.label}.`,
      });
    },
    answer(questionId, given) {
      answers.set(questionId, given);
      chosen = undefined;
    },
    back() {
      const last = [...answers.keys()].at(-1);
      chosen = last;
      return last !== undefined;
    },
    review: () =>
      [...answers].map(
        ([questionId, given]): ReviewLine => ({
          questionId,
          label: questionId,
          shown: given.kind === 'value' ? given.understood : UNKNOWN,
          status: given.kind === 'value' ? 'answered' : 'unknown',
        }),
      ),
    clash: () => undefined,
    goTo(questionId) {
      chosen = questionId;
    },
  };
  return { interview, answers, asked };
}

const value = (given: string | number, understood = String(given)): Reply => ({
  kind: 'value',
  value: given,
  understood,
  typed: String(given),
});

/** Gives these replies and picks in order, and keeps what was said. */
function scriptedAsker(
  replies: readonly (Reply | Reply['kind'])[],
  picks: readonly (string | undefined)[] = [],
) {
  const said: string[] = [];
  const lists: string[][] = [];
  const [toGive, toPick] = [[...replies], [...picks]];
  const asker: Asker = {
    async ask(_prompt: Prompt) {
      const reply = toGive.shift() ?? 'ended';
      return typeof reply === 'string' ? ({ kind: reply } as Reply) : reply;
    },
    async pick(_message, choices) {
      lists.push(choices.map(({ label }) => label));
      return toPick.shift();
    },
    confirm: async () => undefined,
    line: async () => undefined,
    say: (text) => void said.push(text.trim()),
    close: () => undefined,
  };
  return { asker, said, lists };
}

async function run(
  replies: readonly (Reply | Reply['kind'])[],
  {
    picks = [],
    save,
  }: { readonly picks?: readonly (string | undefined)[]; readonly save?: () => Promise<void> } = {},
) {
  const { interview, answers, asked } = plainInterview();
  const { asker, said, lists } = scriptedAsker(replies, picks);
  const saves: string[][] = [];
  const end = await runSession({
    asker,
    interview,
    save: save ?? (async () => void saves.push([...answers.keys()])),
  });
  return { end, answers, asked, said, lists, saves };
}

describe('the session', () => {
  it('asks until nothing is left, and saves after every answer', async () => {
    const { end, answers, saves } = await run([value('firm'), value(6), value(84)]);
    expect(end).toEqual({ outcome: 'finished', isSaved: true });
    expect([...answers.values()]).toMatchObject([{ value: 'firm' }, { value: 6 }, { value: 84 }]);
    expect(saves.slice(0, 3)).toEqual([['feel'], ['feel', 'sun'], ['feel', 'sun', 'area']]);
  });

  it('names a section when it opens, and not again', async () => {
    const { said } = await run([value('firm'), value(6), value(84)]);
    expect(said.filter((text) => !text.startsWith('Noted'))).toEqual(['A look at it', 'Size']);
  });

  it('says at once what "don’t know" leads to', async () => {
    const { said, answers } = await run(['unknown', value(6), value(84)]);
    expect(said.slice(0, 2)).toEqual(['A look at it', 'Never mind feel.']);
    expect(answers.get('feel')).toEqual({ kind: 'unknown' });
  });

  it('goes back, and says so when there is nothing before', async () => {
    const { asked, said } = await run(['back', value('firm'), 'back', value('springy'), value(6), value(84)]);
    expect(said).toContain('This is the first question.');
    expect(asked).toEqual(['feel', 'feel', 'sun', 'feel', 'sun', 'area']);
  });

  it('lists the answers on review, and asks again for the one that is picked', async () => {
    const { asked, lists, answers } = await run(
      [value('firm'), 'unknown', 'review', value('springy'), value(84)],
      { picks: ['feel'] },
    );
    expect(lists[0]).toEqual(['feel: firm', 'sun: unknown']);
    expect(asked).toEqual(['feel', 'sun', 'area', 'feel', 'area']);
    expect(answers.get('feel')).toMatchObject({ value: 'springy' });
  });

  it('has nothing to review before the first answer', async () => {
    expect((await run(['review', 'quit'])).said).toContain('There is no answer yet.');
  });

  it('offers one look at everything before the plan, as often as something is changed', async () => {
    const { end, lists, answers } = await run([value('firm'), value(6), value(84), value(8)], {
      picks: ['sun', undefined],
    });
    expect(end.outcome).toBe('finished');
    expect(lists).toHaveLength(2);
    expect(answers.get('sun')).toMatchObject({ value: 8 });
  });

  it.each([
    ['save', 'saved'],
    ['quit', 'quit'],
    ['ended', 'ended'],
    ['interrupted', 'interrupted'],
  ] as const)('leaves on %s, saved', async (kind, outcome) => {
    const { end, saves } = await run([value('firm'), kind]);
    expect(end).toEqual({ outcome, isSaved: true });
    expect(saves.at(-1)).toEqual(['feel']);
  });

  it('calls an answer noted only once it is saved', async () => {
    const order: string[] = [];
    const { interview } = plainInterview();
    const { asker } = scriptedAsker([value('firm'), 'unknown', value(84)]);
    await runSession({
      asker: { ...asker, say: (text) => void order.push(text.trim()) },
      interview,
      save: async () => {
        order.push('saving');
        await new Promise((resolve) => setTimeout(resolve, 5));
        order.push('saved');
      },
    });
    expect(order.slice(0, 9)).toEqual([
      'A look at it',
      ...['saving', 'saved', 'Noted: firm'],
      ...['saving', 'saved', 'Never mind hours of sun.'],
      'Size',
      'saving',
    ]);
  });

  it('never says noted when the save failed, but what failed, and that it is not saved', async () => {
    const { said } = await run([value('firm'), value(6), value(84)], {
      save: () => Promise.reject(new Error('the disk is full')),
    });
    expect(said.join('\n')).not.toContain('Noted');
    expect(said.slice(0, 4)).toEqual([
      'A look at it',
      'I could not save your answers: the disk is full. They are kept while this runs.',
      'Understood, but not saved: firm',
      'Understood, but not saved: 6',
    ]);
  });

  it('goes on when saving fails, tells it once, and says so at the end', async () => {
    const { end, said, answers } = await run([value('firm'), value(6), value(84)], {
      save: () => Promise.reject(new Error('the disk is full')),
    });
    expect(end).toEqual({ outcome: 'finished', isSaved: false });
    expect(answers.size).toBe(3);
    expect(said.filter((text) => text.includes('the disk is full'))).toHaveLength(1);
  });
});

describe('the session over piped lines', () => {
  async function piped(...lines: readonly string[]) {
    const { interview, answers } = plainInterview();
    const { output, text } = tape();
    const asker = createLineAsker({ input: pipedLines(...lines), output, width: 80, colour: false, read });
    const end = await runSession({ asker, interview, save: async () => undefined });
    asker.close();
    return { end, answers, text: text() };
  }

  it('is played through in one go', async () => {
    const { end, answers, text } = await piped('springy', 'why', '6', 'back', '7', '12 x 7');
    expect(end.outcome).toBe('finished');
    expect([...answers.values()]).toMatchObject([{ value: 'springy' }, { value: 7 }, { value: 84 }]);
    expect(text).toContain('Noted: 12 m by 7 m: 84 m2');
  });

  it('stops where the lines stop', async () => {
    const { end, answers } = await piped('springy');
    expect(end.outcome).toBe('ended');
    expect(answers.size).toBe(1);
  });

  it('can be left from the last list', async () => {
    expect((await piped('1', '6', '84', 'quit')).end.outcome).toBe('quit');
    expect((await piped('1', '6', '84', '')).end.outcome).toBe('finished');
  });

  it('leaves from the review on quit', async () => {
    expect((await piped('1', 'review', 'quit')).end.outcome).toBe('quit');
  });
});
