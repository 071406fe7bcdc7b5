/**
 * Makes foreign text harmless for a terminal: text from packs, answer files, sessions and the keyboard.
 *
 * Whatever could move the cursor, colour, retitle, hide or reorder becomes U+FFFD, one for each sequence,
 * so that tampering stays visible. Only newline and tab pass. Text is cleaned where it comes in, and once more where it goes to a stream.
 */

const MARK = '\uFFFD';
/** Longest line of typed or foreign text that is looked at; more than anyone means to type. */
const LONGEST_LINE = 2000;

/** CSI: introducer, parameters, intermediates, final byte (ECMA-48, 5.4). */
const CONTROL_SEQUENCE = String.raw`(?:\x1b\[|\x9b)[\x30-\x3f]*[\x20-\x2f]*[\x40-\x7e]`;
/** OSC, DCS, SOS, PM and APC with their body and terminator; an unended one keeps its body as plain text. */
const CONTROL_STRING = String.raw`(?:\x1b[\]PX^_]|[\x9d\x90\x98\x9e\x9f])[^\x00-\x08\x0a-\x1f\x7f-\x9f]*(?:\x07|\x1b\\|\x9c)`;
/** Any other escape, such as a character set or a full reset. */
const ESCAPE = String.raw`\x1b[\x20-\x2f]*[\x30-\x7e]`;
/** C0 but tab and newline, DEL, C1. */
const CONTROL = String.raw`[\x00-\x08\x0b-\x1f\x7f-\x9f]`;
/** Soft hyphen, bidi marks, embeddings, overrides and isolates, zero width, line separators, tags, half surrogates. */
const UNSEEN = String.raw`[\xad\u061c\u180e\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff\ufff9-\ufffb\u{e0000}-\u{e007f}\p{Cs}]`;

const HARMFUL = new RegExp(
  [CONTROL_STRING, CONTROL_SEQUENCE, ESCAPE, CONTROL, UNSEEN].map((part) => `(?:${part})`).join('|'),
  'gu',
);

/** The text without anything that a terminal obeys; newlines and tabs stay, CR LF becomes a newline. */
export function cleanText(text: string): string {
  return text
    .replace(/^\uFEFF/, '')
    .replaceAll('\r\n', '\n')
    .replace(HARMFUL, MARK);
}

/** Colour and weight, which the program itself puts into what it shows (ECMA-48, 8.3.117). */
const GRAPHIC_RENDITION = String.raw`\x1b\[[0-9;]*m`;
const SHOWN = new RegExp(String.raw`(${GRAPHIC_RENDITION}|\r\n)|${HARMFUL.source}`, 'gu');
/** Cheap to look for, and found in few texts. */
const SUSPECT = new RegExp(`${CONTROL}|${UNSEEN}`, 'u');

/** What goes to a stream: as above, but colours stay, and so do the line ends of calendars and tables. */
export const cleanShown = (text: string): string =>
  SUSPECT.test(text)
    ? text.replace(SHOWN, (found, own?: string) => (own === undefined ? MARK : found))
    : text;

const IN_JSON = new RegExp(String.raw`[\x7f-\x9f]|${UNSEEN}`, 'gu');
const HEX_DIGITS = 4;

/** JSON in which everything that a terminal obeys or hides is written as an escape, so that nothing is lost. */
export const jsonText = (value: unknown, indent?: number): string =>
  JSON.stringify(value, null, indent).replace(IN_JSON, escaped);

const escaped = (found: string): string =>
  found
    .split('')
    .map((unit) => `\\u${unit.charCodeAt(0).toString(16).padStart(HEX_DIGITS, '0')}`)
    .join('');

/** The text cleaned, on one line, with single spaces, cut at 2,000 characters. */
export function cleanLine(text: string): string {
  return cleanText(text.slice(0, LONGEST_LINE)).replace(/\s+/g, ' ').trim();
}
