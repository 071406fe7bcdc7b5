/**
 * How a calendar file writes text and breaks lines.
 *
 * @source rfc-5545, sections 3.1 (lines) and 3.3.11 (text)
 */

const MOST_OCTETS = 75;

/** A value as TEXT: backslash, semicolon and comma behind a backslash, a line break as `\n`; a colon stands as it is. */
export const asText = (text: string): string => text.replace(/[\\;,]/g, '\\$&').replace(/\r?\n/g, '\\n');

/** Cut before the octet that is one too many, never inside a character; each further line begins with a space. */
export function folded(line: string): string {
  const encoder = new TextEncoder();
  let octets = 0;
  let text = '';
  for (const character of line) {
    const more = encoder.encode(character).length;
    if (octets + more > MOST_OCTETS) {
      text += '\r\n ';
      octets = 1;
    }
    text += character;
    octets += more;
  }
  return text;
}
