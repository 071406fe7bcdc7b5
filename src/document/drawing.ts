/**
 * The whole job as a drawing in SVG: a row for each step, its days as a bar over the months.
 * Every fact in it also stands in words: the days beside each bar, and all of it in the description.
 */
import { addDays, daysBetween, formatDay, type IsoDate, monthName, monthOf, yearOf } from '../base/dates.js';
import { aboutHours } from '../base/quantity-words.js';
import type { Plan, PlanStep } from '../planner/plan.js';
import { type DateStyle, MONTHS_ONLY, spanWords } from './date-words.js';
import { isKnownToDay, knownSpan, spanKnown } from './known-span.js';
import { oneLine } from './one-line.js';
import { referencesOf } from './references.js';
import { titleOf } from './title-section.js';
import { counted, said } from './words.js';

/** In user units of the drawing, which are pixels when it is not scaled. */
const LAYOUT = {
  width: 960,
  margin: 24,
  headHeight: 92,
  rowHeight: 40,
  footHeight: 40,
  labelWidth: 416,
  barHeight: 12,
  leastBar: 5,
  /** Room that a month's name needs, without and with its year. */
  monthRoom: 32,
  monthYearRoom: 68,
  /** A short job is drawn on as many days, so that one day looks like one day. */
  leastDays: 28,
  titleSize: 20,
  textSize: 14,
  smallSize: 12,
  /** Letters that fit into the head, and into a step's column at the text and the small size. */
  headLetters: 66,
  titleLetters: 50,
  smallLetters: 64,
} as const;

/** Dark on white, with contrast for weak eyes; bars differ by place and length, never by colour alone. */
const INK = { text: '#1b1b1b', soft: '#4a4a4a', line: '#c4c4c4', bar: '#1f6f43', band: '#f3f5f1' } as const;

interface Frame extends DateStyle {
  readonly first: IsoDate;
  readonly days: number;
}

/** @param idPrefix makes the ids in it unique in a page that holds it */
export function drawingOf(plan: Plan, idPrefix = 'plan'): string {
  const { steps } = plan;
  const frame = frameOf(plan);
  const { width, headHeight, rowHeight, footHeight } = LAYOUT;
  const height = headHeight + steps.length * rowHeight + footHeight;
  const title = titleOf(plan);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" role="img" aria-labelledby="${idPrefix}-title ${idPrefix}-facts" font-family="system-ui, sans-serif" fill="${INK.text}">`,
    `<title id="${idPrefix}-title">${escaped(`${title}: the whole job at a glance`)}</title>`,
    `<desc id="${idPrefix}-facts">${escaped(factsOf(plan, frame))}</desc>`,
    `<rect width="${width}" height="${height}" fill="#ffffff"/>`,
    text(
      LAYOUT.margin,
      LAYOUT.margin + LAYOUT.titleSize / 2,
      cut(title, LAYOUT.headLetters),
      LAYOUT.titleSize,
      'font-weight="600"',
    ),
    ...steps.map((_, index) => band(index)),
    ...monthLines(frame, height),
    ...steps.map((step, index) => row(step, index, frame)),
    text(LAYOUT.margin, height - LAYOUT.margin / 2, footOf(plan, frame), LAYOUT.smallSize, soft),
    '</svg>',
    '',
  ].join('\n');
}

const soft = `fill="${INK.soft}"`;

function frameOf(plan: Plan): Frame {
  const { datesKnownTo } = plan;
  const spans = plan.steps.map((step) => knownSpan(step, datesKnownTo));
  const starts = spans.map(({ from }) => from).sort();
  const ends = spans.map(({ until }) => until).sort();
  const first = starts[0] ?? plan.madeOn;
  return {
    first,
    days: Math.max(LAYOUT.leastDays, daysBetween(first, ends.at(-1) ?? first) + 1),
    year: referencesOf(plan).year,
    datesKnownTo,
  };
}

/** Everything that the drawing shows, in words. */
function factsOf({ steps, datesKnownTo }: Plan, frame: Frame): string {
  const facts = steps.map((step, index) => `${index + 1}. ${said(step.title)}: ${daysIn(step, frame)}.`);
  const known = datesKnownTo === 'day' ? '' : ` ${MONTHS_ONLY}`;
  return `${counted(steps.length, 'step')}. ${facts.join(' ')}${known}`;
}

function daysIn(step: PlanStep, style: DateStyle): string {
  const days = spanWords({ from: step.startOn, until: step.endOn }, styleOf(step, style));
  const parts = step.parts.length > 1 ? `, in ${step.parts.length} parts` : '';
  return `${days}${parts}${step.workHours > 0 ? `, ${aboutHours(step.workHours)}` : ''}`;
}

const styleOf = (step: PlanStep, style: DateStyle): DateStyle =>
  isKnownToDay(step, style.datesKnownTo) ? { ...style, datesKnownTo: 'day' } : style;

/** As much of that as fits into the column; the description has it all. */
function daysShown(step: PlanStep, style: DateStyle): string {
  const whole = daysIn(step, style);
  if (whole.length <= LAYOUT.smallLetters) return whole;
  return cut(spanWords({ from: step.startOn, until: step.endOn }, styleOf(step, style)), LAYOUT.smallLetters);
}

/** The words, or their beginning with a sign that there is more. */
function cut(words: string, most: number): string {
  const letters = [...words];
  return letters.length > most ? `${letters.slice(0, most - 1).join('')}…` : words;
}

function footOf({ madeOn }: Plan, { first, year, datesKnownTo }: Frame): string {
  const made = `Made on ${formatDay(madeOn)}.`;
  return datesKnownTo === 'day'
    ? `${made} The drawing begins on ${formatDay(first)}. Days without a year are in ${year}.`
    : `${made} Only months are known, each with a question mark. Months without a year are in ${year}.`;
}

const rowTop = (index: number): number => LAYOUT.headHeight + index * LAYOUT.rowHeight;

function band(index: number): string {
  return index % 2 === 1
    ? ''
    : `<rect x="0" y="${rowTop(index)}" width="${LAYOUT.width}" height="${LAYOUT.rowHeight}" fill="${INK.band}"/>`;
}

/** Left edge of a day. */
function dayX(date: IsoDate, { first, days }: Frame): number {
  const left = LAYOUT.margin + LAYOUT.labelWidth;
  const room = LAYOUT.width - LAYOUT.margin - left;
  return round(left + (daysBetween(first, date) / days) * room);
}

/** A line at the beginning of every month, and its name where there is room; the year with the first and each January. */
function monthLines(frame: Frame, height: number): string[] {
  const lines: string[] = [];
  let nameEnds = 0;
  let namedYear = 0;
  for (let day = 0; day < frame.days; day++) {
    const date = addDays(frame.first, day);
    const isFirstOfMonth = date.endsWith('-01');
    if (day > 0 && !isFirstOfMonth) continue;
    const x = dayX(date, frame);
    lines.push(
      `<line x1="${x}" y1="${LAYOUT.headHeight - LAYOUT.smallSize}" x2="${x}" y2="${height - LAYOUT.footHeight}" stroke="${INK.line}"/>`,
    );
    const year = yearOf(date);
    const needed = year === namedYear ? LAYOUT.monthRoom : LAYOUT.monthYearRoom;
    // The month in which the drawing begins may be nearly over: then the next one is named instead.
    const room = Math.min(dayX(nextMonthOf(date), frame), LAYOUT.width) - x;
    if (x < nameEnds || room < LAYOUT.monthRoom) continue;
    const name = `${monthName(monthOf(date)).slice(0, 3)}${year === namedYear ? '' : ` ${year}`}`;
    namedYear = year;
    nameEnds = x + needed;
    lines.push(text(x + 2, LAYOUT.headHeight - LAYOUT.smallSize - 4, name, LAYOUT.smallSize, soft));
  }
  return lines;
}

/** The first day of the month after the date. */
function nextMonthOf(date: IsoDate): IsoDate {
  let day = addDays(date, 1);
  while (!day.endsWith('-01')) day = addDays(day, 1);
  return day;
}

function row(step: PlanStep, index: number, frame: Frame): string {
  const top = rowTop(index);
  const name = `${index + 1}. ${said(step.title)}`;
  // Watering and keeping off go on after the last part is begun: that is one long bar.
  const spans = step.parts.at(-1)?.endOn === step.endOn ? step.parts : [step];
  const isKnown = isKnownToDay(step, frame.datesKnownTo);
  // A bar without a filling: it may lie anywhere in there.
  const look = isKnown ? `fill="${INK.bar}"` : `fill="none" stroke="${INK.bar}" stroke-dasharray="4 3"`;
  const bars = spans.map(({ startOn, endOn }) => {
    const { from, until } = spanKnown({ from: startOn, until: endOn }, isKnown ? 'day' : 'month');
    const x = dayX(from, frame);
    const width = Math.max(LAYOUT.leastBar, round(dayX(addDays(until, 1), frame) - x));
    return `<rect x="${x}" y="${top + (LAYOUT.rowHeight - LAYOUT.barHeight) / 2}" width="${width}" height="${LAYOUT.barHeight}" rx="2" ${look}/>`;
  });
  return [
    `<g><title>${escaped(`${name}: ${daysIn(step, frame)}`)}</title>`,
    text(LAYOUT.margin, top + LAYOUT.textSize + 3, cut(name, LAYOUT.titleLetters), LAYOUT.textSize),
    text(
      LAYOUT.margin,
      top + LAYOUT.rowHeight - LAYOUT.textSize / 2,
      daysShown(step, frame),
      LAYOUT.smallSize,
      soft,
    ),
    ...bars,
    '</g>',
  ].join('');
}

function text(x: number, y: number, words: string, size: number, more = ''): string {
  return `<text x="${x}" y="${y}" font-size="${size}"${more === '' ? '' : ` ${more}`}>${escaped(words)}</text>`;
}

const round = (value: number): number => Number(value.toFixed(1));

const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

/** Typed text is cleaned and can close no element. */
const escaped = (words: string): string =>
  oneLine(words).replace(/[&<>"]/g, (sign) => ENTITIES[sign] ?? sign);
