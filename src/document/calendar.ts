/**
 * The plan as a calendar file: all-day events with an alarm on the evening before; whole months, without an alarm, where
 * no day is known.
 *
 * @source rfc-5545, sections 3.6.1 and 3.8.2.2: all-day events, whose end is not included
 */
import { addDays, daysBetween, type IsoDate, parseIsoDate, yearOf } from '../base/dates.js';
import { quantity } from '../base/quantity-words.js';
import { amountWords } from '../planner/amount-words.js';
import type { Plan, PlanAmount, PlanStep } from '../planner/plan.js';
import { asText, folded } from './calendar-lines.js';
import { severityWord } from './cautions-section.js';
import { MONTHS_ONLY, spanWords } from './date-words.js';
import { inArea, partNames } from './in-areas.js';
import { spanKnown } from './known-span.js';
import { oneLine } from './one-line.js';
import { loadRows } from './step-amounts.js';
import { timesWords } from './watering-section.js';
import { counted, said, sentence } from './words.js';

interface Day {
  /** The same at every import, so that a plan made anew replaces the one before. */
  readonly key: string;
  readonly title: string;
  readonly fromOn: IsoDate;
  /** The last day itself. */
  readonly untilOn: IsoDate;
  readonly lines: readonly string[];
}

/** Six in the evening of the day before. */
const EVENING_BEFORE = '-PT6H';

/** Lines end in CR LF and hold at most 75 octets. */
export function calendarOf(plan: Plan): string {
  const days = [
    ...plan.steps
      .filter(({ id, doneOn }) => doneOn === null && !(id === WATERED && plan.watering.length > 0))
      .flatMap((step) => daysOfStep(step, plan)),
    ...wateringDays(plan),
    ...plan.outlook.map(({ area, on, weeks, sees, ifNot }): Day => {
      const title = inArea(`Look at the lawn, ${counted(weeks, 'week')} after sowing`, area);
      return {
        key: inArea(`look-${weeks}`, area),
        title,
        fromOn: on,
        untilOn: on,
        lines: [`You should see: ${sees}`, ifNot],
      };
    }),
  ];
  const ahead = days.map((day) => asKnown(day, plan)).filter(({ untilOn }) => untilOn >= plan.madeOn);
  const lines = ['BEGIN:VCALENDAR', 'VERSION:2.0', 'PRODID:-//Seedbed//Lawn plan//EN'];
  return [...lines, ...ahead.flatMap((day) => eventLines(day, plan)), 'END:VCALENDAR']
    .map((line) => `${folded(line)}\r\n`)
    .join('');
}

/** The day as far as it is known: a whole month, and a title that says so, where no climate is. */
function asKnown(day: Day, { datesKnownTo }: Plan): Day {
  if (datesKnownTo === 'day') return day;
  const months = spanWords(
    { from: day.fromOn, until: day.untilOn },
    { year: yearOf(day.fromOn), datesKnownTo },
  );
  const { from, until } = spanKnown({ from: day.fromOn, until: day.untilOn }, datesKnownTo);
  return {
    ...day,
    title: `${day.title}, ${months}`,
    fromOn: from,
    untilOn: until,
    lines: [MONTHS_ONLY, ...day.lines],
  };
}

/** The step that the watering table tells week by week. */
const WATERED = 'water-in';

/** The weeks and not the step: they say how often and how much, and one reminder is enough. */
function wateringDays(plan: Plan): Day[] {
  const step = plan.steps.find(({ id }) => id === WATERED);
  const care = step === undefined ? [] : [...cautionsOf(step, plan), ...step.how];
  return plan.watering.map((period): Day => {
    const each = `Each time: ${quantity(period.litresPerTurn, 'L', plan.units)}`;
    const title = inArea(`Water the seed ${timesWords(period.turnsPerDay)}`, period.area);
    const lines = [each, period.means ?? '', period.aim, plan.water?.eachPart ?? '', ...care];
    const key = inArea(`water-${period.weeks}`, period.area);
    return { key, title, fromOn: period.fromOn, untilOn: period.untilOn, lines };
  });
}

const cautionsOf = (step: PlanStep, { cautions }: Plan): string[] =>
  cautions
    .filter(({ id, severity }) => step.cautions.includes(id) && severity !== 'note')
    .map(({ severity, line }) => `${severityWord(severity)}: ${line}`);

/** One entry, or one for each part of a large lawn; every one holds for as long as the step lasts. */
function daysOfStep(step: PlanStep, plan: Plan): Day[] {
  const lines = [
    step.purpose,
    ...cautionsOf(step, plan),
    ...step.after.flatMap(({ sign }) => (sign === null ? [] : [`Before: ${sign}`])),
    ...step.dayChecks.map(({ check, otherwise }) => `Go if: ${sentence(check)} Otherwise: ${otherwise}`),
    ...step.amounts.flatMap((amount) => [amountLine(amount, plan), ...loadLines(amount, plan)]),
    ...step.how,
    `Done when: ${step.doneWhen}`,
  ];
  const last = step.parts.at(-1);
  const lasts = last === undefined || step.endOn <= last.endOn ? 0 : daysBetween(last.startOn, step.endOn);
  const names = partNames(step.parts);
  return step.parts.map(({ startOn, endOn }, index) => ({
    key: step.parts.length === 1 ? step.id : `${step.id}-${index + 1}`,
    title: step.parts.length === 1 ? step.title : `${step.title}, ${names[index]}`,
    fromOn: startOn,
    untilOn: [endOn, addDays(startOn, lasts)].sort().at(-1) as IsoDate,
    lines,
  }));
}

function amountLine(amount: PlanAmount, { units }: Plan): string {
  const howMuch =
    amount.amount === null ? 'read it off the label' : amountWords(amount, amount.amount, units);
  return `${inArea(amount.title, amount.area)}: ${howMuch}`;
}

/** Whoever stands at the tap with the calendar in hand reads off what goes into each load. */
const loadLines = ({ loads }: PlanAmount, { units }: Plan): string[] =>
  loadRows(loads, units).map(
    ([number, ground, water, product]) =>
      `${/\D/.test(number ?? '') ? 'Loads' : 'Load'} ${number}, for ${ground}: ${water} of water, ${product} of product`,
  );

function eventLines({ key, title, fromOn, untilOn, lines }: Day, plan: Plan): string[] {
  const where = [plan.name, plan.place].filter((each) => each !== null).map((each) => oneLine(each));
  const summary = asText(said(title));
  return [
    'BEGIN:VEVENT',
    `UID:${uidOf(key, plan)}`,
    `DTSTAMP:${compact(plan.madeOn)}T000000Z`,
    // The later plan counts, also for calendars that look here first (RFC 5546, 2.1.5).
    `SEQUENCE:${daysBetween(FIRST_DAY, plan.madeOn)}`,
    `DTSTART;VALUE=DATE:${compact(fromOn)}`,
    `DTEND;VALUE=DATE:${compact(addDays(untilOn, 1))}`,
    `SUMMARY:${summary}`,
    ...(where.length === 0 ? [] : [`LOCATION:${asText(where.join(', '))}`]),
    `DESCRIPTION:${asText(
      lines
        .filter((line) => line !== '')
        .map((line) => sentence(line))
        .join('\n'),
    )}`,
    'TRANSP:TRANSPARENT',
    // Nobody is called out for a day that is not known.
    ...(plan.datesKnownTo === 'day' ? alarmLines(summary) : []),
    'END:VEVENT',
  ];
}

const alarmLines = (summary: string): string[] => [
  'BEGIN:VALARM',
  'ACTION:DISPLAY',
  `TRIGGER:${EVENING_BEFORE}`,
  `DESCRIPTION:${summary}`,
  'END:VALARM',
];

const FIRST_DAY = parseIsoDate('1970-01-01');

/**
 * By the lawn's name, or else its place and size, and the season: a plan made again takes the place of the one before,
 * and next year's leaves this year's in the calendar.
 */
function uidOf(key: string, { name, place, lawn, season }: Plan): string {
  const lawnKey = (name ?? `${place ?? 'lawn'} ${lawn.areaM2} m2`).replace(/[^\p{L}\p{N}]+/gu, '-');
  return `${key.replace(/[^\w.-]+/g, '-')}.${lawnKey}.${season}@seedbed.invalid`;
}

const compact = (day: IsoDate): string => day.replaceAll('-', '');
