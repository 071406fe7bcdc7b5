/** Text made fit for one line of a document; typed and pack text pass here and nowhere else. */
import { cleanText } from '../base/clean-text.js';

/** Harmless text on one line: each run of spaces, tabs and line breaks is one space, none at the ends; never cut. */
export function oneLine(text: string): string {
  return cleanText(text)
    .replace(/[\t\n ]+/g, ' ')
    .trim();
}
