/**
 * Markdown as text for a terminal of a given width, with or without colour.
 *
 * marked-terminal lays out paragraphs, lists and quotes. What depends on the process there (colour, links,
 * rules) or goes wrong (inline marks in list items, doubled boxes, wide tables) is replaced here, and lines
 * are wrapped by what the eye sees. Import it only when a plan is shown: it loads late.
 */
import stringWidth from 'fast-string-width';
import { wrapAnsi } from 'fast-wrap-ansi';
import { Marked, type RendererObject, type Tokens } from 'marked';
import { markedTerminal } from 'marked-terminal';
import { cleanText } from '../base/clean-text.js';
import { stylesOf, type TerminalStyles } from './markdown-styles.js';
import { tableText } from './markdown-table.js';

export interface ShowOptions {
  /** Columns of the terminal; no line is longer. */
  readonly width: number;
  /** False: not one control sequence in the result. */
  readonly colour: boolean;
}

const LEAST_WIDTH = 20;
const NAMED: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"' };
/** What a line hangs from: its indent and a bullet or number. */
const HANG = /^ *(?:\* |\d+\. )?/;

/** The Markdown laid out for the terminal, ended by one newline. */
export function showMarkdown(markdown: string, { width, colour }: ShowOptions): string {
  const columns = Math.max(LEAST_WIDTH, width);
  const styles = stylesOf(colour);
  const marked = new Marked(markedTerminal({ ...styles, emoji: false, unescape: false, tab: 2 }), {
    renderer: ownRenderer(styles, columns),
  });
  const shown = marked.parse(cleanText(markdown), { async: false });
  const lines = shown.split('\n').map((line) => wrapHanging(line.trimEnd(), columns));
  return `${lines
    .join('\n')
    .replace(/\n{3,}/g, '\n\n')
    .replace(/^\n+|\n+$/g, '')}\n`;
}

/** Replaces the renderers that read the process or lose inline marks. */
function ownRenderer(styles: TerminalStyles, columns: number): RendererObject {
  return {
    text(token) {
      if ('tokens' in token && token.tokens !== undefined) return this.parser.parseInline(token.tokens);
      return token.type === 'escape' ? token.text : harmless(decoded(token.text)).replace(/\s*\n\s*/g, ' ');
    },
    heading({ tokens, depth }) {
      return headingText(this.parser.parseInline(tokens), depth, { styles, columns });
    },
    table(token: Tokens.Table) {
      const cells = (row: Tokens.TableCell[]) => row.map((cell) => this.parser.parseInline(cell.tokens));
      return `${tableText({ head: cells(token.header), rows: token.rows.map(cells) }, columns, styles)}\n\n`;
    },
    link({ href, tokens }) {
      const words = this.parser.parseInline(tokens);
      const address = harmless(href);
      return words === address ? address : `${words} (${address})`;
    },
    image: ({ text, href }) => harmless(text === '' ? href : `${text} (${href})`),
    code: ({ text }) => `${harmless(text).replace(/^/gm, '    ')}\n\n`,
    codespan: ({ text }) => styles.codespan(harmless(text)),
    html: ({ text }) => harmless(text),
    hr: () => `${'-'.repeat(columns)}\n\n`,
    // The list item draws the box itself.
    checkbox: () => '',
  };
}

/** The two upper levels are underlined, so that they stand out without colour. */
function headingText(
  words: string,
  depth: number,
  { styles, columns }: { readonly styles: TerminalStyles; readonly columns: number },
): string {
  const rule = depth === 1 ? '=' : '-';
  const underline = depth > 2 ? '' : `\n${rule.repeat(Math.min(columns, stringWidth(words)))}`;
  return `${styles.heading(words)}${underline}\n\n`;
}

/** Cleaned once more, since a character reference can spell what the source did not hold; tabs have no width. */
function harmless(text: string): string {
  return cleanText(text).replaceAll('\t', '    ');
}

/** Numeric references, which the Markdown writer uses for a few odd places, and the four of HTML. */
function decoded(text: string): string {
  return text.replace(/&(?:#x([\da-f]{1,6})|#(\d{1,7})|(amp|lt|gt|quot));/gi, (whole, hex, decimal, name) => {
    if (name !== undefined) return NAMED[String(name).toLowerCase()] ?? whole;
    const code = hex === undefined ? Number(decimal) : Number.parseInt(hex, 16);
    return code <= 0x10ffff ? String.fromCodePoint(code) : whole;
  });
}

/** The line wrapped at the width, further lines under the first word rather than under the bullet. */
function wrapHanging(line: string, columns: number): string {
  if (stringWidth(line) <= columns) return line;
  const hang = HANG.exec(line)?.[0] ?? '';
  const room = columns - hang.length;
  if (room < LEAST_WIDTH / 2) return wrapAnsi(line, columns, { hard: true });
  return wrapAnsi(line.slice(hang.length), room, { hard: true })
    .split('\n')
    .map((part, index) => (index === 0 ? hang : ' '.repeat(hang.length)) + part)
    .join('\n');
}
