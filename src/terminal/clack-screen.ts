/** The clack prompts as this project uses them: cleaned, wrapped to the width, guarded. */
import type { Readable } from 'node:stream';
import { log, S_BAR, select, text } from '@clack/prompts';
import { cleanLine, cleanText } from '../base/clean-text.js';
import type { AskerSettings, Leaving } from './asker.js';
import { freeKeys, type Given, guarded } from './clack-guard.js';
import { sizedOutput } from './sized-output.js';
import { wrapText } from './wrap-text.js';

export interface ListEntry {
  readonly value: string;
  readonly label: string;
  /** An empty line follows, to set a group apart. */
  readonly endsGroup?: boolean;
}

export interface ClackScreen {
  list(message: string, entries: readonly ListEntry[], initial: string | undefined): Promise<Given>;
  typed(
    message: string,
    options: { readonly placeholder: string; readonly check: (line: string) => string | undefined },
  ): Promise<Given>;
  say(text: string): void;
  leave(how: Leaving): void;
  left(): Leaving | undefined;
  close(): void;
}

/** Columns that clack's guide takes before each line. */
const GUIDE_COLUMNS = 3;
const SHOW_CURSOR = '\x1b[?25h';

export function openClackScreen(settings: AskerSettings): ClackScreen {
  freeKeys();
  const { input } = settings;
  const letGo = heldRaw(input);
  const output = sizedOutput(settings.output, settings);
  let left: Leaving | undefined;
  const wrapped = (words: string) => wrapText(cleanText(words), output.columns - GUIDE_COLUMNS - 1);
  const noting = (given: Given): Given => {
    if (given.kind === 'ended' || given.kind === 'interrupted') left = given.kind;
    return given;
  };
  return {
    async list(message, entries, initial) {
      const options = entries.map(({ value, label, endsGroup }) => ({
        value,
        label: `${cleanLine(label)}${endsGroup === true ? '\n' : ''}`,
      }));
      const initialValue = initial === undefined ? {} : { initialValue: initial };
      return noting(
        await guarded(settings, (signal) =>
          select<string>({
            message: wrapped(message).join('\n'),
            options,
            ...initialValue,
            input,
            output,
            signal,
          }),
        ),
      );
    },
    async typed(message, { placeholder, check }) {
      const validate = (value: string | undefined) => {
        const problem = check(cleanLine(value ?? ''));
        return problem === undefined ? undefined : wrapped(problem).join(`\n${' '.repeat(GUIDE_COLUMNS)}`);
      };
      // clack wraps a text prompt's message without its guide, so the lines are joined with the guide here.
      const lines = wrapped(message).join(`\n${S_BAR}  `);
      const given = await guarded(settings, (signal) =>
        text({ message: lines, placeholder: cleanLine(placeholder), validate, input, output, signal }),
      );
      return noting(given.kind === 'given' ? { kind: 'given', value: cleanLine(given.value) } : given);
    },
    // clack sets an empty line before each message already.
    say: (words) => log.message(wrapped(words.replace(/^\n+/, '')), { output }),
    leave(how) {
      left = how;
    },
    left: () => left,
    close() {
      settings.output.write(SHOW_CURSOR);
      letGo();
      input.pause();
    },
  };
}

/** A terminal whose raw mode can be switched. */
type RawInput = Readable & { isTTY?: boolean; setRawMode?: (isRaw: boolean) => unknown };

/**
 * Keeps the terminal in raw mode between prompts: clack leaves it after each one, and a key pressed while the
 * answer is being saved would then be written onto the screen. Gives back what ends it.
 */
function heldRaw(input: RawInput): () => void {
  const { setRawMode } = input;
  if (input.isTTY !== true || setRawMode === undefined) return () => undefined;
  const isOwn = Object.hasOwn(input, 'setRawMode');
  input.setRawMode = (isRaw) => (isRaw ? setRawMode.call(input, true) : input);
  return () => {
    if (isOwn) input.setRawMode = setRawMode;
    else delete input.setRawMode;
    setRawMode.call(input, false);
  };
}
