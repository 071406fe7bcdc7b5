/** Wraps text to a width in columns of a terminal, words whole where they fit. */

const UNSEEN = /^(?:\p{M}|\u200d|[\ufe0e\ufe0f])$/u;
const WIDE =
  /^(?![\uff61-\uff9f])[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Hangul}\p{Emoji_Presentation}\u3000-\u303e\uff01-\uff60\uffe0-\uffe6]$/u;
const LEAST_WIDTH = 10;

/** Columns that a line takes up: 2 for East Asian wide signs and emoji, 0 for marks over a letter. */
export function columnsOf(line: string): number {
  let columns = 0;
  for (const sign of line) columns += UNSEEN.test(sign) ? 0 : WIDE.test(sign) ? 2 : 1;
  return columns;
}

/**
 * The text in lines no wider than the width.
 *
 * @param width columns, 10 at the least
 * @param hang put before every line of a paragraph but the first, such as spaces under a list number
 */
export function wrapText(text: string, width: number, hang = ''): string[] {
  const room = Math.max(LEAST_WIDTH, width);
  return text.split('\n').flatMap((typed) => {
    const paragraph = typed.replaceAll('\t', ' ');
    return wrapParagraph(paragraph, room, hang === '' ? underNumber(paragraph) : hang);
  });
}

/** A line that begins as a list does goes on under its words: `  12  the words`. */
const underNumber = (paragraph: string): string =>
  ' '.repeat(/^ {2,}\d+ {2}(?=\S)/.exec(paragraph)?.[0].length ?? 0);

function wrapParagraph(paragraph: string, width: number, hang: string): string[] {
  const lines: string[] = [];
  let line = '';
  const start = () => (lines.length === 0 ? '' : hang);
  for (const word of paragraph.match(/\s*\S+/g) ?? []) {
    if (line !== '' && columnsOf(line + word) <= width) {
      line += word;
      continue;
    }
    if (line !== '') lines.push(line);
    // The indent of a first line is kept; a space before a wrapped word is not.
    line = start() + (lines.length === 0 ? word : word.trimStart());
    while (columnsOf(line) > width) {
      const head = fitting(line, width);
      lines.push(head);
      line = start() + line.slice(head.length);
    }
  }
  lines.push(line);
  return lines;
}

/** As many whole signs as fit, one at the least. */
function fitting(line: string, width: number): string {
  let head = '';
  for (const sign of line) {
    if (head !== '' && columnsOf(head + sign) > width) break;
    head += sign;
  }
  return head;
}
