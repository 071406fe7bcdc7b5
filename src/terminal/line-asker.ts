/**
 * The plain line mode: one numbered question at a time, nothing redrawn, no colour, for screen readers,
 * dumb terminals and piped lines. Every answer is a line: a number of the list, words, or a value with unit.
 */
import type { Asker, AskerSettings } from './asker.js';
import { askerOver } from './asker-over.js';
import { openLineScreen } from './line-screen.js';

/** An asker over lines of text. */
export const createLineAsker = (settings: AskerSettings): Asker =>
  askerOver(openLineScreen(settings), settings.read);
