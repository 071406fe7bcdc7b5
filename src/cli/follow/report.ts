/** What `follow` says at the end: what moved and why, what is late, and what comes next. */

import { daysBetween, type IsoDate, yearOf } from '../../base/dates.js';
import { daysWords } from '../../base/quantity-words.js';
import { dayWords } from '../../document/date-words.js';
import type { Plan } from '../../planner/plan.js';
import { type Move, movesOf, overdue, type Reworked } from '../../planner/rework.js';

export function reportOf(before: Plan, after: Reworked): string {
  const { today } = after.progress;
  const year = yearOf(today);
  const on = (date: IsoDate): string => dayWords(date, { year, datesKnownTo: 'day' });
  const due = (date: IsoDate): string => dayWords(date, { year, datesKnownTo: after.plan.datesKnownTo });
  const moves = movesOf(before, after);
  const late = overdue(after).map(({ title, says }) => `- ${title}. ${says}`);
  const next = after.plan.steps.find(({ doneOn, startOn }) => doneOn === null && startOn >= today);
  return [
    ...(moves.length === 0
      ? ['Nothing moves: the rest of the plan stands.']
      : [
          'What moves, and why:',
          ...moves.filter(({ isCarried }) => !isCarried).map((move) => moveLine(move, due)),
        ]),
    ...carriedLines(moves, due),
    ...supposedLines(after, on),
    ...(late.length === 0 ? [] : ['Late:', ...late]),
    next === undefined ? 'All the work of the plan is done.' : `Next: ${next.title}, ${due(next.startOn)}.`,
  ].join('\n');
}

/** What nobody told of and that comes before something done; the words "at the latest" are meant. */
function supposedLines({ plan, progress }: Reworked, on: Say): string[] {
  const titles = plan.steps
    .filter(({ id }) => progress.supposed.has(id))
    .map(({ title, doneOn }) => `${title} (${doneOn === null ? '' : on(doneOn)})`);
  return titles.length === 0
    ? []
    : [
        `Taken as done at the latest on the day of what comes after it, as you did not say when: ${titles.join('; ')}.`,
      ];
}

type Say = (date: IsoDate) => string;

function moveLine({ title, from, to, why }: Move, on: Say): string {
  if (to === null) return `- ${title} falls out: ${why}.`;
  return from === null
    ? `- ${title} is new, ${on(to)}: ${why}.`
    : `- ${title}, from ${on(from)} to ${on(to)}: ${why}.`;
}

/** What only goes along with what it follows, a line for each shift. */
function carriedLines(moves: readonly Move[], on: Say): string[] {
  const byShift = new Map<string, string[]>();
  for (const { title, from, to, isCarried } of moves) {
    if (!isCarried || to === null) continue;
    const days = from === null ? 0 : daysBetween(from, to);
    const shift =
      from === null
        ? 'New with what it follows'
        : `With what comes before, ${daysWords(Math.abs(days))} ${days > 0 ? 'later' : 'earlier'}`;
    byShift.set(shift, [...(byShift.get(shift) ?? []), `${title} (${on(to)})`]);
  }
  return [...byShift].map(([shift, titles]) => `- ${shift}: ${titles.join('; ')}.`);
}
