/**
 * The plan as a calendar file: all-day events with an alarm on the evening before.
 *
 * @source rfc-5545, sections 3.6.1 and 3.8.2.2: all-day events, whose end is not included
 */
import { addDays, daysBetween, type IsoDate } from '../base/dates.js';
import { quantity } from '../base/quantity-words.js';
import { measureOf } from '../base/us-units.js';
import type { Plan, PlanAmount, PlanStep } from '../planner/plan.js';
import { asText, folded } from './calendar-lines.js';
import { countedFromSowing, inArea, partNames } from './in-areas.js';
import { oneLine } from './one-line.js';
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
    ...plan.steps.filter(({ doneOn }) => doneOn === null).flatMap((step) => daysOfStep(step, plan)),
    ...plan.watering.map((period): Day => {
      const each = `Each time: ${quantity(period.litresPerTurn, 'L', plan.units)}`;
      const title = inArea(`Water the seed ${timesWords(period.turnsPerDay)}`, period.area);
      const lines = [each, period.means ?? '', period.aim, countedFromSowing(plan.steps)];
      return {
        key: inArea(`water-${period.weeks}`, period.area),
        title,
        fromOn: period.fromOn,
        untilOn: period.untilOn,
        lines,
      };
    }),
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
  const lines = ['BEGIN:VCALENDAR', 'VERSION:2.0', 'PRODID:-//Seedbed//Lawn plan//EN'];
  return [...lines, ...days.flatMap((day) => eventLines(day, plan)), 'END:VCALENDAR']
    .map((line) => `${folded(line)}\r\n`)
    .join('');
}

/** One entry, or one for each part of a large lawn; every one holds for as long as the step lasts. */
function daysOfStep(step: PlanStep, plan: Plan): Day[] {
  const cautions = plan.cautions.filter(
    ({ id, severity }) => step.cautions.includes(id) && severity !== 'note',
  );
  const lines = [
    step.purpose,
    ...cautions.map(({ severity, line }) => `${severity === 'danger' ? 'Danger' : 'Warning'}: ${line}`),
    ...step.after.flatMap(({ sign }) => (sign === null ? [] : [`Before: ${sign}`])),
    ...step.dayChecks.map(({ check, otherwise }) => `Go if: ${sentence(check)} Otherwise: ${otherwise}`),
    ...step.amounts.map((amount) => amountLine(amount, plan)),
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
    amount.amount === null ? 'read it off the label' : quantity(amount.amount, measureOf(amount), units);
  return `${inArea(amount.title, amount.area)}: ${howMuch}`;
}

function eventLines({ key, title, fromOn, untilOn, lines }: Day, plan: Plan): string[] {
  const where = [plan.name, plan.place].filter((each) => each !== null).map((each) => oneLine(each));
  const summary = asText(said(title));
  return [
    'BEGIN:VEVENT',
    `UID:${uidOf(key, plan)}`,
    `DTSTAMP:${compact(plan.madeOn)}T000000Z`,
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
    'BEGIN:VALARM',
    'ACTION:DISPLAY',
    `TRIGGER:${EVENING_BEFORE}`,
    `DESCRIPTION:${summary}`,
    'END:VALARM',
    'END:VEVENT',
  ];
}

/** By the lawn's name, or else its place and size: nothing that changes when an answer does. */
function uidOf(key: string, { name, place, lawn }: Plan): string {
  const lawnKey = (name ?? `${place ?? 'lawn'} ${lawn.areaM2} m2`).replace(/[^\p{L}\p{N}]+/gu, '-');
  return `${key.replace(/[^\w.-]+/g, '-')}.${lawnKey}@seedbed.invalid`;
}

const compact = (day: IsoDate): string => day.replaceAll('-', '');
