/**
 * Runs one clack prompt so that it always settles.
 *
 * By itself a clack prompt waits for ever at the end of input and on Ctrl-D, and knows no way back. Here the
 * input is watched beside it: its end and Ctrl-D give "ended", Ctrl-C gives "interrupted", Shift+Tab gives "back".
 */
import type { Readable } from 'node:stream';
import { isCancel, settings } from '@clack/prompts';
import type { AskerSettings } from './asker.js';

export type Given = { readonly kind: 'given'; readonly value: string } | Escape;
export interface Escape {
  readonly kind: 'back' | 'ended' | 'interrupted';
}

interface Key {
  readonly name?: string;
  readonly ctrl?: boolean;
  readonly shift?: boolean;
}

/** Letters that clack takes for the arrow keys: typed at a list they would move the mark. */
const LETTERS = ['h', 'j', 'k', 'l'];

/** Escape would cancel a whole session at a slip; it does nothing instead, nor does a letter. The settings are clack's own, for the process. */
export function freeKeys(): void {
  for (const key of ['escape', ...LETTERS]) settings.aliases.delete(key);
}

/** What was given to the prompt, or how it was left. */
export async function guarded(
  { input, interrupt }: Pick<AskerSettings, 'input' | 'interrupt'>,
  start: (signal: AbortSignal) => Promise<string | symbol>,
): Promise<Given> {
  if (interrupt?.aborted) return { kind: 'interrupted' };
  if (input.readableEnded || input.destroyed) return { kind: 'ended' };
  const controller = new AbortController();
  let how: Escape['kind'] = 'interrupted';
  const stop = (reason: Escape['kind']) => {
    how = reason;
    controller.abort();
  };
  const prompt = start(controller.signal);
  // Listening after clack does: a key reaches the prompt first, which must still be open to hear it.
  const unwatch = watch(input, stop);
  const interrupted = () => stop('interrupted');
  interrupt?.addEventListener('abort', interrupted, { once: true });
  try {
    const value = await prompt;
    return isCancel(value) ? { kind: how } : { kind: 'given', value: String(value) };
  } finally {
    interrupt?.removeEventListener('abort', interrupted);
    unwatch();
  }
}

function watch(input: Readable, stop: (how: Escape['kind']) => void): () => void {
  const ended = () => stop('ended');
  const key = (_text: string | undefined, { name, ctrl, shift }: Key) => {
    if (ctrl === true && name === 'd') stop('ended');
    if (shift === true && name === 'tab') stop('back');
  };
  input.on('keypress', key);
  for (const event of ['end', 'close']) input.on(event, ended);
  return () => {
    input.off('keypress', key);
    for (const event of ['end', 'close']) input.off(event, ended);
  };
}
