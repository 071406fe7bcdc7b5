import { PassThrough } from 'node:stream';
import { describe, expect, it } from 'vitest';
import type { AskerSettings, Prompt } from '../../src/terminal/asker.js';
import { createClackAsker } from '../../src/terminal/clack-asker.js';
import { createLineAsker } from '../../src/terminal/line-asker.js';
import { SAMPLES } from '../interview/read-samples.js';
import { FEEL, NAME, pipedLines, promptFor, read, SUN, tape } from './samples.js';
import { screenOf } from './screen.js';

const ENTER = '\r';
const DOWN = '\x1b[B';
const UP = '\x1b[A';
const SHIFT_TAB = '\x1b[Z';
const CTRL_C = '\x03';
const CTRL_D = '\x04';
const ESCAPE = '\x1b';

const pause = (ms = 0) => new Promise((resolve) => setTimeout(resolve, ms));

function terminal(parts: Partial<AskerSettings> = {}) {
  const input = new PassThrough();
  const { output, text } = tape();
  Object.assign(output, { columns: parts.width ?? 80, rows: 40 });
  const asker = createClackAsker({ input, output, width: 80, colour: false, read, ...parts });
  /** Presses keys one after the other, as fingers do. */
  const press = async (...keys: readonly string[]) => {
    for (const key of keys) {
      await pause(5);
      input.write(key);
      // A lone Escape is told from a longer key by waiting.
      if (key === ESCAPE) await pause(80);
    }
    await pause(5);
  };
  return { asker, input, text, press };
}

async function replyTo(prompt: Prompt, ...keys: readonly string[]) {
  const { asker, press, text } = terminal();
  const [reply] = await Promise.all([asker.ask(prompt), press(...keys)]);
  return { reply, text: text() };
}

const BACKSPACE = '\x7f';

describe('a list at a terminal', () => {
  it('gives the value that is pointed at', async () => {
    expect((await replyTo(FEEL, DOWN, DOWN, ENTER)).reply).toEqual({
      kind: 'value',
      value: 'springy',
      understood: 'springy',
      typed: '2',
    });
    expect((await replyTo(FEEL, UP, ENTER)).reply).toEqual({ kind: 'unknown' });
  });

  it('takes nothing on Enter where nothing is marked, and asks again', async () => {
    for (const prompt of [FEEL, promptFor(SAMPLES.yesNo)]) {
      const { reply, text } = await replyTo(prompt, ENTER, ENTER, UP, ENTER);
      expect(reply).toEqual({ kind: 'unknown' });
      expect(text).toContain("Type an answer, or don't know.");
    }
  });

  it('starts on the shown default', async () => {
    const suggested = promptFor(FEEL.question, { suggested: 'very-springy', suggestedText: 'very springy' });
    expect((await replyTo(suggested, ENTER)).reply).toMatchObject({ value: 'very-springy' });
    const unknown = promptFor(FEEL.question, { suggested: 'unknown', suggestedText: "don't know" });
    expect((await replyTo(unknown, ENTER)).reply).toEqual({ kind: 'unknown' });
  });

  it('marks nothing where someone can be hurt, not even what was said before', async () => {
    const earlier = { suggested: false, suggestedText: 'no' };
    for (const parts of [{}, earlier]) {
      const safety = promptFor({ ...SAMPLES.yesNo, safety: true }, parts);
      const { reply, text } = await replyTo(safety, ENTER, 'y', ENTER);
      expect(reply).toMatchObject({ value: true });
      expect(text.includes('You said before: no.')).toBe(parts === earlier);
    }
  });

  it('gives what stands typed, whatever is marked', async () => {
    const marked = promptFor(FEEL.question, { suggested: 'very-springy', suggestedText: 'very springy' });
    expect((await replyTo(marked, ...'firm', ENTER)).reply).toMatchObject({ value: 'firm', typed: 'firm' });
    expect((await replyTo(marked, UP, ...'firm', ENTER)).reply).toMatchObject({ value: 'firm' });
    // Pointing puts away what was typed, and an emptied field gives the mark again.
    expect((await replyTo(marked, ...'firm', UP, ENTER)).reply).toMatchObject({ value: 'springy' });
    expect((await replyTo(marked, 'f', BACKSPACE, ENTER)).reply).toMatchObject({ value: 'very-springy' });
  });

  it('shows what is typed, refuses what it cannot read, and empties the field', async () => {
    const { reply, text } = await replyTo(FEEL, ...'frobnicate', ENTER, ...'firm', ENTER);
    expect(reply).toMatchObject({ value: 'firm', typed: 'firm' });
    expect(text).toContain('frobnicate');
    expect(text).toContain('That is not in the list.');
  });

  it.each([
    ['y', { value: true }],
    ['yes', { value: true }],
    ['Yep', { value: true }],
    ['n', { value: false }],
    ['no', { value: false }],
    ['1', { value: true }],
    ['2', { value: false }],
    ['3', { kind: 'unknown' }],
    ["don't know", { kind: 'unknown' }],
    ['idk', { kind: 'unknown' }],
    ['back', { kind: 'back' }],
    ['review', { kind: 'review' }],
    ['save', { kind: 'save' }],
    ['quit', { kind: 'quit' }],
  ])('hears %j at a yes or no', async (line, expected) => {
    expect((await replyTo(promptFor(SAMPLES.yesNo), ...line, ENTER)).reply).toMatchObject(expected);
  });

  it.each([
    ['firm', 'firm'],
    ['f', 'firm'],
    ['2', 'springy'],
    ['mattress', 'springy'],
    ['very', 'very-springy'],
    ['sprigny', 'springy'],
  ])('hears %j at a choice', async (line, value) => {
    expect((await replyTo(FEEL, ...line, ENTER)).reply).toMatchObject({ value });
  });

  it('settles words that fit more than one', async () => {
    const soil = promptFor(SAMPLES.soil);
    expect((await replyTo(soil, 's', ENTER, '2', ENTER)).reply).toMatchObject({
      value: 'sandy-loam',
      typed: 's',
    });
    expect((await replyTo(soil, 's', ENTER, DOWN, DOWN, ENTER)).reply).toMatchObject({ value: 'sandy-loam' });
    expect((await replyTo(soil, 's', ENTER, ...'clay', ENTER)).reply).toMatchObject({ value: 'clay' });
  });

  it('explains, lists the walk, then asks again', async () => {
    const words = ['why', 'help', 'walk'].flatMap((word) => [...word, ENTER]);
    const { reply, text } = await replyTo(FEEL, ...words, ...'firm', ENTER);
    expect(text).toContain('# A walk round the lawn');
    expect(reply).toMatchObject({ value: 'firm' });
    expect(text).toContain(FEEL.why);
    expect(text).toContain(FEEL.help);
  });
});

/** What the same typing comes to in the line mode. */
async function inLines(prompt: Prompt, lines: readonly string[]) {
  const { output } = tape();
  const asker = createLineAsker({ input: pipedLines(...lines), output, width: 80, colour: false, read });
  return asker.ask(prompt);
}

describe('typed words', () => {
  it.each([
    ['a choice', FEEL],
    ['a choice that someone can be hurt by', promptFor(SAMPLES.services)],
    ['yes or no', promptFor(SAMPLES.yesNo)],
    ['a number', SUN],
    ['a share', promptFor(SAMPLES.share)],
    ['an area', promptFor(SAMPLES.area)],
    ['a date', promptFor(SAMPLES.past)],
    ['a text', NAME],
  ])('come to the same at a drawn question as in the line mode: %s', async (_, prompt) => {
    for (const word of [
      ...['yes', 'no', 'y', 'n', 'nope', '1', '2', 'f', 'none', 'firm', '6', '40 %', 'yesterday', '12 x 7'],
      ...[
        'why',
        'help',
        '?',
        'walk',
        'how',
        'what',
        'zzz',
        'skip',
        'dk',
        "don't know",
        'back',
        'review',
        'quit',
      ],
      ...['exit', 'save', '9/4'],
    ]) {
      // Whatever the first word leaves open, a doubt or nothing at all, the second one ends it.
      const { reply } = await replyTo(prompt, ...word, ENTER, ...'back', ENTER);
      expect(reply, word).toEqual(await inLines(prompt, [word, 'back']));
    }
  });
});

describe('a typed answer at a terminal', () => {
  it('is read, and nothing is called noted before it is kept', async () => {
    const { reply, text } = await replyTo(SUN, ...'6 hours', ENTER);
    expect(reply).toEqual({ kind: 'value', value: 6, understood: '6 hours a day', typed: '6 hours' });
    expect(text).not.toContain('Noted');
  });

  it('keeps the prompt open on a refusal, with nothing to delete', async () => {
    const { reply, text } = await replyTo(SUN, ...'40', ENTER, '7', ENTER);
    expect(reply).toMatchObject({ value: 7 });
    expect(text).toContain('40 hours a day cannot be.');
  });

  it('asks before it keeps an odd value', async () => {
    for (const keeping of [
      [DOWN, ENTER],
      [...'yes', ENTER],
      [ENTER, 'y', ENTER],
    ])
      expect((await replyTo(SUN, ...'15', ENTER, ...keeping)).reply).toEqual({
        kind: 'value',
        value: 15,
        understood: '15 hours a day',
        typed: '15',
      });
    expect((await replyTo(SUN, ...'15', ENTER, ...'no', ENTER, '6', ENTER)).reply).toMatchObject({
      value: 6,
    });
    expect((await replyTo(SUN, ...'15', ENTER, '6', ENTER)).reply).toMatchObject({ value: 6 });
  });

  it('asks which, where it could be either', async () => {
    const share = promptFor(SAMPLES.share);
    expect((await replyTo(share, '1', ENTER, DOWN, DOWN, ENTER)).reply).toMatchObject({
      value: 1,
      understood: '100 %',
      typed: '1',
    });
  });

  it.each([
    ['dk', 'unknown'],
    ['back', 'back'],
    ['review', 'review'],
    ['save', 'save'],
    ['quit', 'quit'],
  ])('hears the word %j', async (word, kind) => {
    expect((await replyTo(SUN, ...word, ENTER)).reply).toEqual({ kind });
    expect((await replyTo(NAME, ...'why', ENTER, ...'help', ENTER, ...word, ENTER)).reply).toEqual({ kind });
  });

  it('takes the shown default on Enter alone, and asks again where there is none', async () => {
    const suggested = promptFor(SUN.question, { suggested: 8, suggestedText: '8 hours a day' });
    expect((await replyTo(suggested, ENTER)).reply).toEqual({
      kind: 'value',
      value: 8,
      understood: '8 hours a day',
      typed: '',
    });
    expect((await replyTo(SUN, ENTER, '6', ENTER)).reply).toMatchObject({ value: 6 });
  });
});

describe.each([
  ['a list', FEEL],
  ['a typed answer', SUN],
])('%s', (_, prompt) => {
  it('goes back on Shift+Tab, at once, and leaves the next question untouched', async () => {
    const { asker, press } = terminal();
    const [reply] = await Promise.all([asker.ask(prompt), press(SHIFT_TAB)]);
    expect(reply).toEqual({ kind: 'back' });
    const [next] = await Promise.all([asker.ask(FEEL), press(DOWN, ENTER)]);
    expect(next).toMatchObject({ value: 'firm' });
  });

  it('does nothing on Escape', async () => {
    const keys = prompt === FEEL ? [ESCAPE, DOWN, ENTER] : [ESCAPE, '6', ENTER];
    expect((await replyTo(prompt, ...keys)).reply).toMatchObject({ kind: 'value' });
  });

  it('is interrupted by Ctrl-C, with the cursor shown again', async () => {
    const { reply, text } = await replyTo(prompt, CTRL_C);
    expect(reply).toEqual({ kind: 'interrupted' });
    expect(text.lastIndexOf('\x1b[?25h')).toBeGreaterThan(text.lastIndexOf('\x1b[?25l'));
  });

  it('ends on Ctrl-D, with the cursor shown again', async () => {
    const { reply, text } = await replyTo(prompt, CTRL_D);
    expect(reply).toEqual({ kind: 'ended' });
    expect(text.lastIndexOf('\x1b[?25h')).toBeGreaterThan(text.lastIndexOf('\x1b[?25l'));
  });

  it('ends when the input ends or is closed, before or after it is asked', async () => {
    const during = terminal();
    const reply = during.asker.ask(prompt);
    await pause(5);
    during.input.end();
    expect(await reply).toEqual({ kind: 'ended' });
    expect(await during.asker.ask(prompt)).toEqual({ kind: 'ended' });

    const closed = terminal();
    const second = closed.asker.ask(prompt);
    await pause(5);
    closed.input.destroy();
    expect(await second).toEqual({ kind: 'ended' });

    const before = terminal();
    before.input.destroy();
    expect(await before.asker.ask(prompt)).toEqual({ kind: 'ended' });
  });

  it('stops when the caller interrupts, and every later prompt with it', async () => {
    const controller = new AbortController();
    const { asker } = terminal({ interrupt: controller.signal });
    const reply = asker.ask(prompt);
    await pause(5);
    controller.abort();
    expect(await reply).toEqual({ kind: 'interrupted' });
    expect(asker.left?.()).toBe('interrupted');
    expect(await asker.pick('Which?', [{ value: 'a', label: 'A' }])).toBeUndefined();
    expect(await asker.confirm('Sure?', true)).toBeUndefined();
    expect(await asker.line('Where?', 'here')).toBeUndefined();
  });
});

describe('picking, confirming and free lines at a terminal', () => {
  const choices = [
    { value: 'moss', label: 'moss cover: 40 %' },
    { value: 'sun', label: 'hours of sun: 6' },
  ];

  it.each([
    // The cursor starts on the line that changes nothing.
    [[ENTER], undefined],
    [[UP, ENTER], 'sun'],
    [[UP, UP, ENTER], 'moss'],
    [[SHIFT_TAB], undefined],
    [[CTRL_C], undefined],
    [[...'sun', ENTER], 'sun'],
    [[...'hours of', ENTER], 'sun'],
    [['1', ENTER], 'moss'],
    [['3', ENTER], undefined],
    [[...'leave', ENTER], undefined],
    [[...'zzz', ENTER, 'm', ENTER], 'moss'],
    [[...'back', ENTER], undefined],
  ])('picks %#', async (keys, value) => {
    const { asker, press } = terminal();
    const [picked] = await Promise.all([asker.pick('Change which?', choices, 'leave it'), press(...keys)]);
    expect(picked).toBe(value);
  });

  it('keeps the terminal raw between prompts, so that no key is written onto the screen, and lets go at the end', async () => {
    const input = new PassThrough();
    const modes: boolean[] = [];
    Object.assign(input, { isTTY: true, setRawMode: (isRaw: boolean) => void modes.push(isRaw) });
    const { output } = tape();
    Object.assign(output, { columns: 80, rows: 40 });
    const asker = createClackAsker({ input, output, width: 80, colour: false, read });
    for (const count of [1, 2]) {
      const reply = asker.ask(FEEL);
      await pause(5);
      input.write('1');
      input.write(ENTER);
      await reply;
      expect(modes.filter((isRaw) => isRaw).length).toBeGreaterThanOrEqual(count);
      expect(modes).not.toContain(false);
    }
    asker.close();
    expect(modes.at(-1)).toBe(false);
  });

  it('confirms with the shown default first', async () => {
    const { asker, press } = terminal();
    const [first] = await Promise.all([asker.confirm('Write over it?', false), press(ENTER)]);
    const [second] = await Promise.all([asker.confirm('Write over it?', false), press(UP, ENTER)]);
    expect([first, second]).toEqual([false, true]);
  });

  it.each([
    ['y', true],
    ['no', false],
    ['n', false],
  ])('confirms what is typed and not what is marked: %j', async (line, value) => {
    for (const suggested of [true, false, undefined]) {
      const { asker, press } = terminal();
      const [said] = await Promise.all([asker.confirm('Write over it?', suggested), press(...line, ENTER)]);
      expect(said).toBe(value);
    }
  });

  it('confirms nothing on Enter where nothing is suggested', async () => {
    const { asker, press, text } = terminal();
    const [said] = await Promise.all([asker.confirm('Was it done?'), press(ENTER, ENTER, 'n', ENTER)]);
    expect(said).toBe(false);
    expect(text()).toContain('Type yes or no.');
  });

  it('leaves for good on quit, at whatever is asked', async () => {
    const { asker, press } = terminal();
    const [line] = await Promise.all([asker.line('Where to?', 'lawn.md'), press(...'quit', ENTER)]);
    expect(line).toBeUndefined();
    expect(asker.left?.()).toBe('quit');
    expect(await asker.ask(FEEL)).toEqual({ kind: 'quit' });
  });

  it('takes a line or the shown default', async () => {
    const { asker, press } = terminal();
    const [first] = await Promise.all([asker.line('Where to?', 'lawn.md'), press(ENTER)]);
    const [second] = await Promise.all([asker.line('Where to?', 'lawn.md'), press(...'a.md', ENTER)]);
    expect([first, second]).toEqual(['lawn.md', 'a.md']);
  });
});

describe('what is shown', () => {
  it('obeys nothing that came with the pack', async () => {
    const nasty = promptFor(
      {
        ...SAMPLES.feel,
        text: 'a\x1b]0;title\x07b',
        options: [
          { value: 'x', label: 'x\x1b[2J', hint: '\x1b[5m' },
          { value: 'y', label: 'y' },
        ],
      },
      { why: '\x1b[?1049h' },
    );
    const { text } = await replyTo(nasty, ...'why', ENTER, DOWN, ENTER);
    const screen = await screenOf(text, { columns: 80, rows: 60 });
    expect(screen).toMatchObject({ titles: [], isAlternate: false, isStyled: false });
  });

  it.each([40, 80])('keeps inside %i columns and loses no word', async (width) => {
    const { asker, press, text } = terminal({ width });
    const long = promptFor(
      {
        ...SAMPLES.sun,
        text: 'On a clear day in the growing season, how many hours of sun reach the middle of the lawn?',
      },
      { help: 'Look at it once an hour on one clear day and count the times it is in the sun.' },
    );
    await Promise.all([asker.ask(long), press(...'40', ENTER, ...'help', ENTER, '6', ENTER)]);
    const { rows } = await screenOf(text(), { columns: width, rows: 80 });
    const words = rows
      .join(' ')
      .replace(/[│┃|◆◇◈▲■└]/g, ' ')
      .replace(/\s+/g, ' ');
    expect(words).toContain('how many hours of sun reach the middle of the lawn?');
    expect(words).toContain('count the times it is in the sun.');
    expect(words).toContain('save or quit leaves, and keeps what you have answered.');
  });
});
