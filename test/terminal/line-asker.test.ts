import { PassThrough } from 'node:stream';
import { describe, expect, it } from 'vitest';
import type { Prompt } from '../../src/terminal/asker.js';
import { createLineAsker } from '../../src/terminal/line-asker.js';
import { SAMPLES } from '../interview/read-samples.js';
import { FEEL, NAME, pipedLines, promptFor, read, SUN, tape } from './samples.js';
import { screenOf } from './screen.js';

function asker(lines: readonly string[], width = 80) {
  const { output, text } = tape();
  return { ...createLineAsker({ input: pipedLines(...lines), output, width, colour: false, read }), text };
}

describe('a question in the line mode', () => {
  it('is numbered, says how many may follow, and leaves it to whoever keeps the answer to call it noted', async () => {
    const { ask, text } = asker(['2']);
    expect(await ask(FEEL)).toEqual({ kind: 'value', value: 'springy', understood: 'springy', typed: '2' });
    expect(text()).toBe(
      [
        '',
        'Question 4, at most 12 more',
        'How does the lawn feel when you walk across it?',
        '  1  firm',
        '  2  springy (like a thin mattress)',
        '  3  very springy (the foot sinks)',
        "  4  don't know",
        "At any question you can type: don't know, why, help, walk, back, review; save or",
        'quit leaves, and keeps what you have answered.',
        '> 2',
        '',
      ].join('\n'),
    );
  });

  it.each([
    ["don't know", 'unknown'],
    ['dk', 'unknown'],
    ['dont know', 'unknown'],
    ['DON’T KNOW', 'unknown'],
    ['4', 'unknown'],
    ['back', 'back'],
    ['Review', 'review'],
    ['save', 'save'],
    ['quit', 'quit'],
  ])('takes %j as %s', async (line, kind) => {
    expect(await asker([line]).ask(FEEL)).toEqual({ kind });
  });

  it.each([FEEL, SUN, NAME, promptFor(SAMPLES.yesNo), promptFor(SAMPLES.past), promptFor(SAMPLES.area)])(
    'hears every word of the session at a question of any kind (%#)',
    async (prompt) => {
      for (const [line, kind] of [
        ['dk', 'unknown'],
        ['back', 'back'],
        ['review', 'review'],
        ['save', 'save'],
        ['quit', 'quit'],
      ] as const)
        expect(await asker(['why', 'help', line]).ask(prompt)).toEqual({ kind });
    },
  );

  it('explains on why and help, and still waits for the answer', async () => {
    const { ask, text } = asker(['why', 'help', 'firm']);
    expect(await ask(FEEL)).toMatchObject({ value: 'firm' });
    expect(text()).toContain(FEEL.why);
    expect(text()).toContain(FEEL.help);
  });

  it('says what is wrong and takes the next line', async () => {
    const { ask, text } = asker(['40', '6']);
    expect(await ask(SUN)).toMatchObject({ value: 6 });
    expect(text().replaceAll('\n', ' ')).toContain(
      "40 hours a day cannot be. Give a number from 0 to 18, or don't know.",
    );
  });

  it.each([
    [['15', 'yes'], 15],
    [['15', '15'], 15],
    [['15', 'no', '6'], 6],
    [['15', '6'], 6],
    [['15', '', 'y'], 15],
    [['15', 'why', 'y'], 15],
  ])('keeps an odd value only when it is confirmed: %j', async (lines, value) => {
    expect(await asker(lines).ask(SUN)).toMatchObject({ kind: 'value', value });
  });

  it('never keeps a lazy "no" at a safety question', async () => {
    const services = promptFor(SAMPLES.services);
    expect(await asker(['no', 'no', '2']).ask(services)).toMatchObject({ value: 'marked' });
    expect(await asker(['no', 'yes']).ask(services)).toMatchObject({ value: 'none' });
  });

  it('lets a doubt be settled by number, or by another answer', async () => {
    const soil = promptFor(SAMPLES.soil);
    expect(await asker(['s', '2']).ask(soil)).toMatchObject({
      value: 'sandy-loam',
      understood: 'sandy loam',
      typed: 's',
    });
    expect(await asker(['s', 'clay']).ask(soil)).toMatchObject({ value: 'clay' });
    expect(await asker(['s', 'back']).ask(soil)).toEqual({ kind: 'back' });
  });

  it('takes the shown default on an empty line, and asks again where there is none', async () => {
    const suggested = promptFor(FEEL.question, { suggested: 'firm', suggestedText: 'firm' });
    expect(await asker(['']).ask(suggested)).toEqual({
      kind: 'value',
      value: 'firm',
      understood: 'firm',
      typed: '',
    });
    const unknown = promptFor(FEEL.question, { suggested: 'unknown', suggestedText: "don't know" });
    expect(await asker(['']).ask(unknown)).toEqual({ kind: 'unknown' });
    const { ask, text } = asker(['', '1']);
    expect(await ask(FEEL)).toMatchObject({ value: 'firm' });
    expect(text()).toContain("Type an answer, or don't know.");
  });

  it('takes nothing on an empty line where someone can be hurt, not even what was said before', async () => {
    const dog = promptFor({ ...SAMPLES.yesNo, safety: true }, { suggested: false, suggestedText: 'no' });
    const { ask, text } = asker(['', 'y']);
    expect(await ask(dog)).toMatchObject({ value: true });
    expect(text()).toContain('You said before: no.');
    expect(text()).toContain("Type an answer, or don't know.");
  });

  it('shows nothing that a terminal would obey, from the pack or from the line', async () => {
    const nasty = promptFor({ ...SAMPLES.feel, text: 'a\x1b[2Jb\u202e' }, { why: '\x1b]0;t\x07' });
    const { ask, text } = asker(['why', '\x1b[31mfirm', 'firm']);
    await ask(nasty);
    expect(text()).not.toMatch(/(?!\n)[\p{Cc}\p{Bidi_Control}]/u);
  });
});

describe('lines', () => {
  it('are not lost when all arrive at once, nor when they come in crumbs', async () => {
    const all = asker(['1', 'dk', '6', 'why', 'back', 'a name']);
    expect((await all.ask(FEEL)).kind).toBe('value');
    expect((await all.ask(FEEL)).kind).toBe('unknown');
    expect(await all.ask(SUN)).toMatchObject({ value: 6 });
    expect((await all.ask(SUN)).kind).toBe('back');
    expect(await all.ask(NAME)).toMatchObject({ value: 'a name' });
    expect((await all.ask(NAME)).kind).toBe('ended');

    const input = new PassThrough();
    const { output } = tape();
    const slow = createLineAsker({ input, output, width: 80, colour: false, read });
    const reply = slow.ask(NAME);
    for (const byte of Buffer.from('café\r\n')) {
      input.write(Buffer.from([byte]));
      await new Promise((resolve) => setImmediate(resolve));
    }
    expect(await reply).toMatchObject({ value: 'café' });
  });

  it('need no line end at the end of input', async () => {
    const input = new PassThrough();
    input.end('firm');
    const { output } = tape();
    expect(await createLineAsker({ input, output, width: 80, colour: false, read }).ask(FEEL)).toMatchObject({
      value: 'firm',
    });
  });

  it('give "ended" at the end, again and again, and to every kind of prompt', async () => {
    const { ask, pick, confirm, line, left } = asker([]);
    expect(await ask(FEEL)).toEqual({ kind: 'ended' });
    expect(await ask(SUN)).toEqual({ kind: 'ended' });
    expect(await pick('Which?', [{ value: 'a', label: 'A' }])).toBeUndefined();
    expect(await confirm('Sure?', true)).toBeUndefined();
    expect(await line('Where?', 'here')).toBeUndefined();
    expect(left?.()).toBe('ended');
  });

  it('give "ended" on an input that is over, closed or broken', async () => {
    const { output } = tape();
    const over = new PassThrough();
    over.end();
    over.resume();
    await new Promise((resolve) => over.once('close', resolve));
    expect(await createLineAsker({ input: over, output, width: 80, colour: false, read }).ask(FEEL)).toEqual({
      kind: 'ended',
    });
    const broken = new PassThrough();
    const reply = createLineAsker({ input: broken, output, width: 80, colour: false, read }).ask(FEEL);
    broken.destroy(new Error('EIO'));
    expect(await reply).toEqual({ kind: 'ended' });
  });

  it('stop at once when the caller interrupts', async () => {
    const controller = new AbortController();
    const { output } = tape();
    const asking = createLineAsker({
      input: new PassThrough(),
      output,
      width: 80,
      colour: false,
      read,
      interrupt: controller.signal,
    });
    const reply = asking.ask(FEEL);
    controller.abort();
    expect(await reply).toEqual({ kind: 'interrupted' });
    expect(await asking.confirm('Sure?', true)).toBeUndefined();
  });
});

describe('lists, yes or no, and free lines', () => {
  const choices = [
    { value: 'moss', label: 'moss cover: 40 %' },
    { value: 'sun', label: 'hours of sun: 6' },
  ];

  it.each([
    ['2', 'sun'],
    ['moss', 'moss'],
    ['3', undefined],
    ['', undefined],
    ['back', undefined],
    ['quit', undefined],
  ])('picks by number or words: %j', async (line, value) => {
    expect(await asker([line]).pick('Change which?', choices, 'leave it')).toBe(value);
    expect(await asker(['9', 'x', line]).pick('Change which?', choices, 'leave it')).toBe(value);
  });

  it('asks again where one of the choices must be picked', async () => {
    expect(await asker(['', 'back', '3', '2']).pick('Change which?', choices)).toBe('sun');
    expect(await asker(['', 'quit']).pick('Change which?', choices)).toBeUndefined();
  });

  it('remembers that they quit in a list', async () => {
    const { pick, ask } = asker(['quit', '1']);
    await pick('Change which?', choices, 'leave it');
    expect(await ask(FEEL)).toEqual({ kind: 'quit' });
  });

  it.each([
    [['y'], true],
    [['No'], false],
    [[''], true],
    [['maybe', 'n'], false],
    [['back'], undefined],
    [[], undefined],
  ])('confirms: %j', async (lines, value) => {
    expect(await asker(lines).confirm('Write over it?', true)).toBe(value);
  });

  it('confirms nothing on an empty line where nothing is suggested', async () => {
    const { confirm, text } = asker(['', '', 'no']);
    expect(await confirm('Was it done?')).toBe(false);
    expect(text()).toContain('Was it done? (yes or no)');
    expect(text()).toContain('Type yes or no.');
  });

  it.each([
    ['leave', undefined],
    ['leave it', undefined],
    ['cover', 'moss'],
    ['hours', 'sun'],
  ])('picks by words of the list: %j', async (line, value) => {
    expect(await asker([line]).pick('Change which?', choices, 'leave it')).toBe(value);
  });

  it('asks which, where words fit more than one line of a list', async () => {
    const steps = ['Sow the lawn', 'Sow the patches', 'Water'].map((label) => ({ value: label, label }));
    expect(await asker(['sow', '2']).pick('What was done?', steps, 'nothing')).toBe('Sow the patches');
    expect(await asker(['sow', '', 'water']).pick('What was done?', steps, 'nothing')).toBe('Water');
    expect(await asker(['sow', 'x', '']).pick('What was done?', steps, 'nothing')).toBeUndefined();
  });

  it('hears any yes and no where yes and no are among the lines, and "don’t know" where one stands for it', async () => {
    const seen = [
      { value: 'yes', label: 'yes' },
      { value: 'partly', label: 'partly' },
      { value: 'no', label: 'no' },
      { value: 'unseen', label: 'have not looked', isUnknown: true },
    ] as const;
    for (const [line, value] of [
      ['y', 'yes'],
      ['yep', 'yes'],
      ['n', 'no'],
      ['nope', 'no'],
      ['p', 'partly'],
      ['2', 'partly'],
      ['partly', 'partly'],
      ['not looked', 'unseen'],
      ["don't know", 'unseen'],
      ['4', 'unseen'],
    ] as const)
      expect(await asker([line]).pick('Is it black?', seen), line).toBe(value);
    expect(await asker(['', 'yes, partly', 'no']).pick('Is it black?', seen)).toBe('no');
  });

  it('takes a free line or the shown default', async () => {
    expect(await asker(['plan.md']).line('Where to?', 'lawn.md')).toBe('plan.md');
    expect(await asker(['']).line('Where to?', 'lawn.md')).toBe('lawn.md');
  });
});

describe.each([40, 80])('at %i columns', (width) => {
  const long: Prompt = promptFor(
    {
      ...SAMPLES.feel,
      text: 'How does the lawn feel when you walk across it, 芝生 and all, from the gate to the far corner?',
    },
    { why: 'word '.repeat(60), help: 'x'.repeat(200), suggested: 'firm', suggestedText: 'firm' },
  );

  it('no line is wider than the screen, and no word is lost', async () => {
    const { ask, text } = asker(['why', 'help', 'nonsense', '2'], width);
    await ask(long);
    // A real terminal of that width breaks no line: every line written is one row.
    const written = text().split('\n');
    const { rows } = await screenOf(written.join('\r\n'), { columns: width, rows: 60 });
    expect(rows).toEqual(written.slice(0, rows.length).map((line) => line.trimEnd()));
    expect(text().replace(/\s+/g, ' ')).toContain('from the gate to the far corner?');
    expect(text()).not.toContain('\x1b');
  });
});
