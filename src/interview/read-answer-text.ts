/** Reads free text, and a place: a station by name, or latitude and longitude. */
import { cleanLine } from '../base/clean-text.js';
import type { Reading } from './reading.js';
import { showPosition } from './show-answer.js';

/** A title longer than this does not fit a calendar line. */
const LONGEST_TEXT = 80;
const QUOTED = /^(["'“”‘’])(.*)(["'“”‘’])$/;
const DEGREE = String.raw`(-?\d{1,3}(?:\.\d+)?)\s*°?\s*`;
const POSITION = new RegExp(`^${DEGREE}([ns])?[a-z]*\\s*[,;\\s]\\s*${DEGREE}([ew])?[a-z]*$`);
const FIGURES_ONLY = /^[-\d.,;\s°nsew]+$/;

/** The text on one line, without what a terminal would obey; quotation marks round it are taken off. */
export function readText(typed: string): Reading {
  const line = cleanLine(typed);
  const [, , inner] = QUOTED.exec(line) ?? [];
  const value = (inner ?? line).trim();
  if (value === '')
    return { kind: 'refused', says: "Nothing was typed. A few words will do, or don't know." };
  if (value.length > LONGEST_TEXT)
    return { kind: 'refused', says: `That is too long. Give up to ${LONGEST_TEXT} letters.` };
  return { kind: 'value', value, understood: value };
}

/** `lat, lon` in degrees, or a name for the caller to look up. */
export function readPlace(typed: string): Reading {
  const text = cleanLine(typed).toLowerCase().replace(/−/g, '-');
  const match = POSITION.exec(text);
  if (match) return position(match);
  if (FIGURES_ONLY.test(text) && /\d/.test(text)) {
    return {
      kind: 'refused',
      says: 'Give two numbers, such as 52.1, -1.4: latitude first, south and west with a minus sign.',
    };
  }
  return readText(typed);
}

function position([, north, ns, east, ew]: RegExpExecArray): Reading {
  const latitudeDeg = ns === 's' ? -Math.abs(Number(north)) : Number(north);
  const longitudeDeg = ew === 'w' ? -Math.abs(Number(east)) : Number(east);
  if (Math.abs(latitudeDeg) > 90) {
    const swapped = Math.abs(longitudeDeg) <= 90 ? ' Latitude comes first.' : '';
    return { kind: 'refused', says: `A latitude lies between -90 and 90.${swapped}` };
  }
  if (Math.abs(longitudeDeg) > 180)
    return { kind: 'refused', says: 'A longitude lies between -180 and 180.' };
  return {
    kind: 'value',
    value: `${latitudeDeg}, ${longitudeDeg}`,
    understood: showPosition(latitudeDeg, longitudeDeg),
  };
}
