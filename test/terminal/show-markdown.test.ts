import xterm from '@xterm/headless';
import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { documentOf } from '../../src/document/from-plan.js';
import { markdownOf } from '../../src/document/markdown.js';
import { naughtyStrings } from '../document/naughty.js';
import { samplePlan } from '../document/sample-plan.js';

// The process asks for all the colour and links there are; what is shown must follow the options alone.
vi.hoisted(() => {
  process.env.FORCE_COLOR = '3';
  process.env.FORCE_HYPERLINK = '1';
});
const { showMarkdown } = await import('../../src/terminal/show-markdown.js');

const sample = markdownOf(documentOf({ ...samplePlan, name: '芝生 café' }));
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is looked for
const CONTROLS = /[\x00-\x09\x0b-\x1f\x7f-\x9f]/;
// biome-ignore lint/suspicious/noControlCharactersInRegex: the escapes that colour is made of
const SGR = /\x1b\[\d+m/g;

function plain(markdown: string, width = 80): string {
  return showMarkdown(markdown, { width, colour: false });
}

/** The lines that a terminal of that width shows, and whether any had to be broken by it. */
async function onScreen(text: string, cols: number): Promise<{ lines: string[]; isBroken: boolean }> {
  const terminal = new xterm.Terminal({ cols, rows: 50, scrollback: 5000, allowProposedApi: true });
  await new Promise<void>((done) => terminal.write(text.replaceAll('\n', '\r\n'), done));
  const rows = Array.from({ length: terminal.buffer.active.length }, (_, y) =>
    terminal.buffer.active.getLine(y),
  );
  const lines = rows.map((row) => row?.translateToString(true) ?? '');
  const isBroken = rows.some((row) => row?.isWrapped === true);
  terminal.dispose();
  return { lines, isBroken };
}

describe('a plan on a terminal', () => {
  it.each([40, 80, 120])('fits %i columns of a real terminal', async (width) => {
    for (const colour of [false, true]) {
      const shown = showMarkdown(sample, { width, colour });
      const { lines, isBroken } = await onScreen(shown, width);
      expect(isBroken).toBe(false);
      expect(lines.join('\n').trimEnd()).toBe(shown.replace(SGR, '').trimEnd());
    }
  });

  it.each([40, 80, 120])('says the same words at %i columns as in the Markdown', (width) => {
    const words = (text: string) => text.replace(/[^\p{L}\p{N}]+/gu, ' ').trim();
    const prose = sample.split('\n').filter((line) => /^[A-Z]/.test(line));
    expect(prose.length).toBeGreaterThan(5);
    for (const line of prose) expect(words(plain(sample, width))).toContain(words(line));
  });

  it.each([40, 80, 120])('has no control character without colour at %i columns', (width) => {
    expect(plain(sample, width)).not.toMatch(CONTROLS);
  });

  it('has colour when asked, around the same words', () => {
    const coloured = showMarkdown(sample, { width: 80, colour: true });
    expect(coloured).toMatch(SGR);
    expect(coloured.replace(SGR, '')).toBe(plain(sample));
  });

  it('leaves no sign of Markdown behind', () => {
    expect(plain(sample)).not.toMatch(/\*\*|^#|\\|^\|/m);
  });

  it('shows tables as lines with labels where they do not fit', () => {
    expect(plain(sample, 40)).toContain(
      'Step: 1. Treat the moss\n  When: Saturday 13 March\n  Start at the latest: Saturday 3 April\n',
    );
  });
});

describe('inline marks', () => {
  it.each([
    [
      'bold, italics, code and links in a tight list',
      '- **a** _b_ `c:d` [e](http://f.org)',
      '  * a b c:d e (http://f.org)',
    ],
    ['one box for each task', '- [ ] todo\n- [x] done', '  * [ ]  todo\n  * [X]  done'],
    ['an autolink once', '<https://a.org/b_c?d=e&f=g>', 'https://a.org/b_c?d=e&f=g'],
    ['escapes and references', '1\\. \\*a\\* \\&amp; &#x2A;&#42; &lt;', '1. *a* &amp; ** <'],
    ['emoji names as they are', ':smile: a:b:c', ':smile: a:b:c'],
    ['a picture by its words', '![the plan](a.svg)', 'the plan (a.svg)'],
    ['a soft break as a space, a hard one as a line', 'a\nb\\\nc', 'a b\nc'],
    ['HTML as written', 'a <b>c</b>', 'a <b>c</b>'],
  ])('show %s', (_, markdown, shown) => {
    expect(plain(markdown)).toBe(`${shown}\n`);
  });

  it('make bold and italics where there is colour', () => {
    const shown = showMarkdown('- **a** _b_', { width: 80, colour: true });
    expect(shown).toBe('  * \u001b[1ma\u001b[22m \u001b[3mb\u001b[23m\n');
  });
});

describe('blocks', () => {
  it('underline the two upper headings, so that they show without colour', () => {
    expect(plain('# One\n\n## Two\n\n### Three')).toBe('One\n===\n\nTwo\n---\n\nThree\n');
  });

  it('hang wrapped list items from their first word', () => {
    expect(plain('1. aaaa bbbb cccc dddd eeee\n2. f', 20)).toBe(
      '  1. aaaa bbbb cccc\n     dddd eeee\n  2. f\n',
    );
  });

  it('keep nested lists apart', () => {
    expect(plain('- a\n  - b\n- c')).toBe('  * a\n    * b\n  * c\n');
  });

  it('set tables in columns by what the eye sees', () => {
    const markdown = '| a | b |\n| --- | --- |\n| 芝生 | 1 |\n| x \\| y | 2 |';
    expect(plain(markdown)).toBe('a      b\n-----  -\n芝生   1\nx | y  2\n');
  });

  it('skip empty cells among labels', () => {
    const markdown = `| Name | Note | Size |\n| --- | --- | --- |\n| ${'n'.repeat(15)} | | 3 |`;
    expect(plain(markdown, 20)).toBe(`Name:\n${'n'.repeat(15)}\n  Size: 3\n`);
  });

  it('set code in, rules across and quotes in', () => {
    expect(plain('```js\nlet a = 1;\n```\n\n---\n\n> q', 20)).toBe(
      `    let a = 1;\n\n${'-'.repeat(20)}\n\n    q\n`.replace('    q', '  q'),
    );
  });

  it('show nothing as an empty line', () => {
    expect(plain('')).toBe('\n');
  });
});

describe('text that means harm', () => {
  it.each(naughtyStrings.map((text) => [text.slice(0, 40), text]))(
    '%j carries no control to the screen',
    (_, text) => {
      const markdown = markdownOf(documentOf({ ...samplePlan, name: text, steps: [], findings: [] }));
      expect(plain(markdown, 40)).not.toMatch(CONTROLS);
      // Not even as raw Markdown that was never ours.
      expect(plain(text, 40)).not.toMatch(CONTROLS);
      expect(plain(`| a |\n| --- |\n| ${text.slice(0, 80)} |\n\n- ${text}`, 40)).not.toMatch(CONTROLS);
    },
  );

  it('cannot smuggle an escape in as a character reference', () => {
    const shown = plain('a&#27;[31m &#x9b;31m &#x202e;b &#9; [l](<http://a/&#27;[31m>) ![&#27;c](&#27;.png)');
    expect(shown).not.toMatch(CONTROLS);
    expect(shown).not.toContain('\u202e');
  });

  it('never makes a line longer than the width', async () => {
    const words = fc.string({
      unit: fc.constantFrom(...'ab #*_`~|<>[]()!&;:.-+=\\\n芝é'.split('')),
      maxLength: 200,
    });
    await fc.assert(
      fc.asyncProperty(words, fc.integer({ min: 20, max: 100 }), async (text, width) => {
        expect((await onScreen(plain(text, width), width)).isBroken).toBe(false);
      }),
      { numRuns: 150 },
    );
  });
});
