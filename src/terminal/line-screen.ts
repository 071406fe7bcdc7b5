/** What the line mode writes and reads: wrapped lines out, whole lines in. Every text shown is cleaned here. */
import { cleanLine, cleanText } from '../base/clean-text.js';
import type { AskerSettings, Leaving } from './asker.js';
import type { Face, Left, View } from './asking.js';
import { openLines } from './line-input.js';
import { wrapText } from './wrap-text.js';

export function openLineScreen({ input, output, width, interrupt }: AskerSettings): Face {
  const lines = openLines(input, interrupt);
  const isTyped = 'isTTY' in input && input.isTTY === true;
  let left: Leaving | undefined;
  let wordsAreTold = false;

  const put = (text: string, hang = '') => {
    output.write(`${wrapText(cleanText(text), width, hang).join('\n')}\n`);
  };
  const putList = (labels: readonly string[]) => {
    const digits = String(labels.length).length;
    labels.forEach((label, index) => {
      put(`  ${String(index + 1).padStart(digits)}  ${cleanLine(label)}`, ' '.repeat(digits + 4));
    });
  };
  const leave = (how: Leaving): Left => {
    left = how;
    return { left: how };
  };
  return {
    show(view) {
      put(view.isDoubt === true ? headOf(view) : `\n${headOf(view)}`);
      if (view.isNumbered) putList(view.entries.map(({ label }) => label));
      if (view.ways !== undefined) put(view.ways);
      if (view.enter !== undefined && (view.isNumbered || view.words !== undefined))
        put(`Enter alone takes: ${cleanLine(view.enter)}`);
      // Once is enough where every line stays on the screen.
      if (view.words !== undefined && !wordsAreTold) put(view.words);
      wordsAreTold ||= view.words !== undefined;
    },
    async next() {
      if (left !== undefined) return { left };
      if (isTyped) output.write('> ');
      const got = await lines.next();
      if (got.kind !== 'line') {
        if (isTyped) output.write('\n');
        return leave(got.kind);
      }
      const text = cleanLine(got.text);
      // What was piped is written out, so that the whole reads as a conversation.
      if (!isTyped) put(`> ${text}`);
      return text;
    },
    say: (text) => put(text),
    leave,
    left: () => left,
    close: () => lines.close(),
  };
}

/** Short questions say in brackets how they are answered. */
function headOf({ text, entries, isNumbered, enter, words, isDoubt }: View): string {
  if (isNumbered || words !== undefined || isDoubt === true) return text;
  const ways = [
    ...(entries.length === 0 ? [] : ['yes or no']),
    ...(enter === undefined ? [] : [`Enter alone takes ${cleanLine(enter)}`]),
  ];
  return ways.length === 0 ? text : `${text} (${ways.join('; ')})`;
}
