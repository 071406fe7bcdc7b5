/** The drawn screen: clack's messages and one prompt of our own, cleaned, wrapped to the width, guarded. */
import type { Readable } from 'node:stream';
import { log } from '@clack/prompts';
import { cleanLine, cleanText } from '../base/clean-text.js';
import type { AskerSettings, Leaving } from './asker.js';
import type { Face, Left } from './asking.js';
import { drawnEntry } from './clack-entry.js';
import { freeKeys, guarded } from './clack-guard.js';
import { sizedOutput } from './sized-output.js';
import { wrapText } from './wrap-text.js';

/** Columns that clack's guide takes before each line. */
const GUIDE_COLUMNS = 3;
const SHOW_CURSOR = '\x1b[?25h';
const POINTING = 'Choose with the arrow keys and Enter, or type your answer.';

export function openClackScreen(settings: AskerSettings): Face {
  freeKeys();
  const { input } = settings;
  const letGo = heldRaw(input);
  const output = sizedOutput(settings.output, settings);
  let left: Leaving | undefined;
  const wrapped = (words: string) => wrapText(cleanText(words), output.columns - GUIDE_COLUMNS - 1);
  const leave = (how: Leaving): Left => {
    left = how;
    return { left: how };
  };
  return {
    // Drawn where the line is typed.
    show: () => undefined,
    async next({ text, ways, entries, marked, enter = '', words = '' }, refusal) {
      if (left !== undefined) return { left };
      const given = await guarded(settings, (signal) =>
        drawnEntry({
          input,
          output,
          signal,
          message: wrapped(
            [text, ways]
              .filter((part) => part !== undefined)
              .join('\n')
              .replace(/^\n+/, ''),
          ),
          entries: entries.map(({ label, line }) => ({ label: cleanLine(label), line })),
          marked,
          placeholder: entries.length > 0 ? '' : cleanLine(enter),
          footer: [entries.length > 0 ? POINTING : '', words].filter((part) => part !== '').flatMap(wrapped),
          refusal: (line) => {
            const says = refusal(cleanLine(line));
            return says === undefined ? undefined : wrapped(says);
          },
        }),
      );
      if (given.kind === 'given') return cleanLine(given.value);
      return given.kind === 'back' ? { goesBack: true } : leave(given.kind);
    },
    // clack sets an empty line before each message already.
    say: (words) => log.message(wrapped(words.replace(/^\n+/, '')), { output }),
    leave,
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
