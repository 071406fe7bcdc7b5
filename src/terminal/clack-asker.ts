/**
 * The asker for a terminal, drawn with clack. Import it lazily, and only when input and output are both terminals:
 * everything else is for the line mode.
 */
import type { Asker, AskerSettings } from './asker.js';
import { askerOver } from './asker-over.js';
import { openClackScreen } from './clack-screen.js';

/** An asker at a terminal. */
export const createClackAsker = (settings: AskerSettings): Asker =>
  askerOver(openClackScreen(settings), settings.read);
