/** Lines from a stream, kept in order however they arrive: piped all at once or typed one by one. */
import { createInterface } from 'node:readline';
import type { Readable } from 'node:stream';

export type LineRead =
  | { readonly kind: 'line'; readonly text: string }
  | { readonly kind: 'ended' | 'interrupted' };

export interface LineInput {
  next(): Promise<LineRead>;
  close(): void;
}

/** Opens the stream for lines. Lines that came before the end are all handed out before "ended". */
export function openLines(input: Readable, interrupt?: AbortSignal): LineInput {
  const waiting: string[] = [];
  let isOver = input.readableEnded || input.destroyed;
  let wake: (() => void) | undefined;
  const stir = () => wake?.();
  const end = () => {
    isOver = true;
    stir();
  };
  // No terminal handling: the terminal itself edits the line, and nothing is ever redrawn.
  const lines = createInterface({ input, terminal: false, crlfDelay: Number.POSITIVE_INFINITY });
  lines.on('line', (text) => {
    waiting.push(text);
    stir();
  });
  lines.on('close', end);
  // A terminal that vanishes is an error of the input, which readline passes on.
  lines.on('error', end);
  interrupt?.addEventListener('abort', stir);

  return {
    async next() {
      for (;;) {
        if (interrupt?.aborted) return { kind: 'interrupted' };
        const text = waiting.shift();
        if (text !== undefined) return { kind: 'line', text };
        if (isOver) return { kind: 'ended' };
        await new Promise<void>((resolve) => {
          wake = resolve;
        });
        wake = undefined;
      }
    },
    close() {
      interrupt?.removeEventListener('abort', stir);
      lines.close();
      input.pause();
    },
  };
}
