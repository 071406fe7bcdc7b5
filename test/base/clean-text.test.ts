import { stripVTControlCharacters } from 'node:util';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cleanLine, cleanShown, cleanText, jsonText } from '../../src/base/clean-text.js';
import { screenOf } from '../terminal/screen.js';

const MARK = '\uFFFD';
/** Pieces of ECMA-48 control functions and of Unicode's unseen characters, to be thrown together at random. */
const harmful = fc
  .array(
    fc.oneof(
      fc.constantFrom(
        '\x1b',
        '\x1b[',
        '\x1b]',
        '\x1bP',
        '\x1b_',
        '\x1b\\',
        '\x9b',
        '\x9d',
        '\x9c',
        '\x90',
        '\x07',
        '\x08',
        '\r',
        '\n',
        '\t',
        '0;',
        '31m',
        '2J',
        '8;;',
        '?25l',
        '?1049h',
        '(B',
        'c',
        '\u202e',
        '\u2066',
        '\u200b',
        '\ufeff',
        '\ud800',
        'lawn',
      ),
      fc.string({ unit: 'binary', maxLength: 4 }),
    ),
    { maxLength: 20 },
  )
  .map((pieces) => pieces.join(''));

describe('cleanText', () => {
  // Control functions as ECMA-48 and XTerm's control sequence list define them; one mark for each.
  it.each([
    ['a colour', 'a\x1b[31mb', `a${MARK}b`],
    ['a colour in C1', 'a\x9b31mb', `a${MARK}b`],
    ['clearing the screen', '\x1b[2Jb', `${MARK}b`],
    ['a window title', '\x1b]0;title\x07b', `${MARK}b`],
    ['a link', '\x1b]8;;http://x\x1b\\b\x1b]8;;\x1b\\', `${MARK}b${MARK}`],
    ['a device control string', 'a\x1bP1;2|dcs\x1b\\b', `a${MARK}b`],
    ['an application command', 'a\x1b_apc\x1b\\b', `a${MARK}b`],
    ['a character set', '\x1b(Bb', `${MARK}b`],
    ['a full reset', '\x1bcb', `${MARK}b`],
    ['a lone escape', 'a\x1b', `a${MARK}`],
    ['a bell', 'a\x07b', `a${MARK}b`],
    ['backspace', 'a\bb', `a${MARK}b`],
    ['carriage return alone', 'a\rb', `a${MARK}b`],
    ['delete', 'a\x7fb', `a${MARK}b`],
    ['an override of direction', 'a\u202eb', `a${MARK}b`],
    ['an isolate', 'a\u2066b\u2069', `a${MARK}b${MARK}`],
    ['zero width', 'a\u200bb', `a${MARK}b`],
    ['half a surrogate pair', 'a\ud800b', `a${MARK}b`],
  ])('shows %s as one mark', (_, foreign, expected) => {
    expect(cleanText(foreign)).toBe(expected);
  });

  it('keeps the body of a string that never ends, because it may be honest text', () => {
    expect(cleanText('\x1b]0;half a title')).toBe(`${MARK}0;half a title`);
  });

  it.each(['plain', 'two\nlines\tand a tab', 'Mum’s lawn, ½ acre, café, 芝生, 🍀', ''])(
    'leaves %j as it is',
    (text) => {
      expect(cleanText(text)).toBe(text);
    },
  );

  it('takes a Windows line end for a line end and drops a leading byte order mark', () => {
    expect(cleanText('\ufeffa\r\nb')).toBe('a\nb');
  });

  it('leaves nothing that Node would strip as terminal control', () => {
    fc.assert(
      fc.property(harmful, (text) => {
        const cleaned = cleanText(text);
        expect(stripVTControlCharacters(cleaned)).toBe(cleaned);
        expect(cleaned).not.toMatch(/(?![\n\t])[\p{Cc}\p{Bidi_Control}\u200b\ufeff\p{Cs}]/u);
        expect(cleanText(cleaned)).toBe(cleaned);
      }),
      { numRuns: 2000 },
    );
  });

  it('cannot retitle, restyle, hide the cursor of or switch the screen of a real terminal', async () => {
    await fc.assert(
      fc.asyncProperty(harmful, async (text) => {
        const screen = await screenOf(cleanText(text).replaceAll('\n', '\r\n'), { columns: 200, rows: 30 });
        expect(screen).toMatchObject({ titles: [], isAlternate: false, isStyled: false, bells: 0 });
      }),
      { numRuns: 200 },
    );
  });
});

describe('cleanLine', () => {
  it('is one line with single spaces', () => {
    expect(cleanLine('  a \n\t b  ')).toBe('a b');
  });

  it('cuts what nobody would type', () => {
    expect(cleanLine('x'.repeat(5000))).toHaveLength(2000);
  });
});

describe('what goes to a stream', () => {
  it('keeps colours and the line ends of calendars, and nothing else that a terminal obeys', () => {
    fc.assert(
      fc.property(harmful, (text) => {
        const shown = cleanShown(text);
        const [first, ...coloured] = shown.replaceAll('\r\n', '').split('\x1b');
        for (const each of coloured) expect(each).toMatch(/^\[[0-9;]*m/);
        const rest = [first, ...coloured].join('');
        expect(rest).not.toMatch(/(?![\n\t])[\p{Cc}\p{Bidi_Control}\u200b\u2028\ufeff\p{Cs}]/u);
        expect(cleanShown(shown)).toBe(shown);
      }),
      { numRuns: 2000 },
    );
    expect(cleanShown('\x1b[1mBEGIN\x1b[22m\r\nEND é ½ 🍀')).toBe('\x1b[1mBEGIN\x1b[22m\r\nEND é ½ 🍀');
  });

  it('is, as JSON, plain and loses nothing', () => {
    fc.assert(
      fc.property(harmful, (text) => {
        const json = jsonText({ text });
        expect(json).not.toMatch(/[\p{Cc}\p{Bidi_Control}\u200b\u2028\u2029\ufeff\p{Cs}]/u);
        expect(JSON.parse(json)).toEqual({ text });
      }),
      { numRuns: 2000 },
    );
  });
});
