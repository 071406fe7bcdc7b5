/** Reads how many days ago something was, from a count or from any day that has passed. */
import { addDays, daysBetween, type IsoDate } from '../base/dates.js';
import { numberWords } from '../base/quantity/number-words.js';
import type { Units } from '../base/us-units.js';
import type { Question } from '../rules/schema.js';
import { whichWithin, withinBounds } from './read-answer-bounds.js';
import { readPastDay } from './read-date-past.js';
import { dayInWords, tidyDay } from './read-date-words.js';
import type { Reading } from './reading.js';

const NEVER = /\b(?:never|not ever|not yet|not for (?:months|weeks|ages|years))\b/;

/** A whole number of days before today: 0 is today. A lone number counts days. */
export function readDaysAgo(question: Question, typed: string, today: IsoDate, units?: Units): Reading {
  const text = tidyDay(typed).text;
  if (/^-/.test(text))
    return { kind: 'refused', says: 'That lies ahead. Count back from today: 0 is today, 1 yesterday.' };
  if (/^\d+[.,]\d+$/.test(text)) return { kind: 'refused', says: 'Give whole days, such as 2.' };
  if (NEVER.test(numberWords(typed.toLowerCase()))) {
    return {
      kind: 'refused',
      says: "Give the last time you can remember, roughly, such as 60 days or early May; or don't know.",
    };
  }
  const reading = readPastDay(/^\d+$/.test(text) ? `${text} days ago` : typed, today, units);
  if (reading.kind === 'refused') return reading;
  if (reading.kind === 'which') {
    const choices = reading.dates.map((date) => ({
      label: dayInWords(date, today),
      value: daysBetween(date, today),
    }));
    return whichWithin(question, reading.says, choices);
  }
  const days = daysBetween(reading.date, today);
  const note = reading.note === undefined ? '' : ` (${reading.note})`;
  return withinBounds(question, days, `${inDays(days, reading.approximate, today)}${note}`);
}

function inDays(days: number, approximate: boolean, today: IsoDate): string {
  if (days < 2) return showDay(days);
  return `${approximate ? 'about ' : ''}${days} days ago, ${dayInWords(addDays(today, -days), today).split(',')[0]}`;
}

function showDay(days: number): string {
  return days === 0 ? 'today' : 'yesterday';
}
