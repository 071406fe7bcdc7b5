/** An answer as a person would say it: `40 %`, `14 mm`, `springy`, `12 m by 7 m: 84 m2`, `about 3 days ago`. */
import { lawnPartsArea } from '../agronomy/area-parts.js';
import { cleanLine } from '../base/clean-text.js';
import { formatDay, isIsoDate } from '../base/dates.js';
import { clean, shown } from '../base/quantity/show.js';
import { bothUnits, quantity } from '../base/quantity-words.js';
import { inSentence } from '../base/sentence-units.js';
import { type Units, usScale } from '../base/us-units.js';
import type { Question } from '../rules/schema.js';
import { type AnswerValue, type LawnPart, UNKNOWN } from './answers.js';
import { wordedFor } from './worded.js';

const DEGREES = /^(-?\d+(?:\.\d+)?), (-?\d+(?:\.\d+)?)$/;

/** The value in words, with its unit. A value of the wrong kind, from a file, is shown as it stands. */
export function showAnswer(question: Question, value: AnswerValue, units: Units = 'metric'): string {
  if (value === UNKNOWN) return "don't know";
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'number') return showNumber(question, value, units);
  if (typeof value === 'string') return showText(wordedFor(question, units), value);
  return showParts(value, units);
}

function showNumber(question: Question, value: number, units: Units): string {
  if (question.kind === 'fraction') return `${shown(clean(value * 100))} %`;
  if (question.kind === 'days-ago') return showDaysAgo(value);
  const metric = withUnit(value, question.unit);
  if (units === 'metric' || question.unit === undefined) return metric;
  if (usScale(value, question.unit) === undefined) return metric;
  // A rate is read off a label, and must be found again there.
  const isOnLabel = question.unit.endsWith('/m2');
  if (isOnLabel) return bothUnits(metric, value, question.unit, units);
  return LENGTHS.has(question.unit) ? onTape(value, question.unit) : quantity(value, question.unit, units);
}

/** Lengths are read off a tape, in the fractions that stand on it. */
const LENGTHS: ReadonlySet<string> = new Set(['mm', 'cm']);

function onTape(value: number, unit: string): string {
  const us = inSentence([value], unit);
  return us === undefined ? withUnit(value, unit) : `${us.numbers[0]} ${us.unit}`;
}

function showDaysAgo(days: number): string {
  if (days === 0) return 'today';
  return days === 1 ? 'yesterday' : `about ${shown(days)} days ago`;
}

/** A number with a unit as the pack spells it; one of anything is singular. */
export function withUnit(value: number, unit: string | undefined): string {
  const figure = shown(value);
  if (unit === undefined || unit.startsWith('in your')) return figure;
  if (unit === 'pH') return `pH ${figure}`;
  return `${figure} ${value === 1 ? unit.replace(/^([a-z]{3,})s\b/, '$1') : unit}`;
}

function showText(question: Question, value: string): string {
  const option = question.options?.find((each) => each.value === value);
  if (option !== undefined) return option.label;
  if (question.noDate?.value === value) return question.noDate.label;
  if (question.kind === 'date' && isIsoDate(value)) return formatDay(value);
  const [, latitude, longitude] = (question.kind === 'place' && DEGREES.exec(value)) || [];
  if (latitude !== undefined && longitude !== undefined)
    return showPosition(Number(latitude), Number(longitude));
  return cleanLine(value);
}

/** `52.1 degrees north, 1.4 west`. */
export function showPosition(latitudeDeg: number, longitudeDeg: number): string {
  const northSouth = latitudeDeg < 0 ? 'south' : 'north';
  const eastWest = longitudeDeg < 0 ? 'west' : 'east';
  return `${Math.abs(latitudeDeg)} degrees ${northSouth}, ${Math.abs(longitudeDeg)} ${eastWest}`;
}

/** The parts one after the other and their area together. */
export function showParts(parts: readonly LawnPart[], units: Units = 'metric'): string {
  const words = parts.map((part, index) => {
    const sign = part.minus === true ? (index === 0 ? 'minus ' : ' minus ') : index === 0 ? '' : ' and ';
    return `${sign}${showPart(part, (value) => length(value, units))}`;
  });
  return `${words.join('')}: ${showArea(parts, units)}`;
}

const length = (value: number, units: Units): string =>
  units === 'metric' ? `${shown(value)} m` : quantity(value, 'm', units);

function showArea(parts: readonly LawnPart[], units: Units): string {
  try {
    const { areaM2 } = lawnPartsArea({ lawnParts: parts });
    return units === 'metric' ? `${shown(areaM2)} m2` : quantity(areaM2, 'm2', units);
  } catch {
    // A list out of a file may describe no lawn at all; its parts are still worth showing.
    return 'no area';
  }
}

function showPart(part: LawnPart, said: (lengthM: number) => string): string {
  switch (part.shape) {
    case 'rectangle':
      return `${said(part.lengthM)} by ${said(part.widthM)}`;
    case 'ellipse':
      return `an oval ${said(part.lengthM)} by ${said(part.widthM)}`;
    case 'circle':
      return `a circle ${said(part.diameterM)} across`;
    case 'triangle':
      return `a triangle of ${part.sidesM.map(said).join(', ')}`;
    case 'offsets':
      return `an edge measured every ${said(part.spacingM)} (${part.offsetsM.map(said).join(', ')})`;
    case 'outline':
      return `an outline of ${part.pointsM.length} points`;
    default:
      return part satisfies never;
  }
}
