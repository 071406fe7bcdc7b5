/** What the line mode writes and reads: wrapped lines out, whole lines in. Every text shown is cleaned here. */
import { cleanLine, cleanText } from '../base/clean-text.js';
import type { AskerSettings, Leaving } from './asker.js';
import { openLines } from './line-input.js';
import { wrapText } from './wrap-text.js';

/** They have left: no line will come. */
export interface Left {
  readonly left: Leaving;
}

export interface LineScreen {
  put(text: string): void;
  /** Labels numbered from 1. */
  putList(labels: readonly string[]): void;
  next(): Promise<string | Left>;
  leave(how: Leaving): Left;
  left(): Leaving | undefined;
  close(): void;
}

export function openLineScreen({ input, output, width, interrupt }: AskerSettings): LineScreen {
  const lines = openLines(input, interrupt);
  const isTyped = 'isTTY' in input && input.isTTY === true;
  let left: Leaving | undefined;

  const put = (text: string, hang = '') => {
    output.write(`${wrapText(cleanText(text), width, hang).join('\n')}\n`);
  };
  const leave = (how: Leaving): Left => {
    left = how;
    return { left: how };
  };
  return {
    put: (text) => put(text),
    putList(labels) {
      const digits = String(labels.length).length;
      labels.forEach((label, index) => {
        put(`  ${String(index + 1).padStart(digits)}  ${cleanLine(label)}`, ' '.repeat(digits + 4));
      });
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
    leave,
    left: () => left,
    close: () => lines.close(),
  };
}
