/** Asks what was done, when, and what is seen. Each answer is a record, kept before the next thing is asked. */

import { addDays, daysBetween, formatDay, formatKnown, type IsoDate } from '../../base/dates.js';
import { daysWords } from '../../base/quantity-words.js';
import type { Units } from '../../base/us-units.js';
import { readPastDay } from '../../interview/read-date-past.js';
import type { DayReading } from '../../interview/read-date-words.js';
import { amountWords } from '../../planner/amount-words.js';
import type { PlanInput } from '../../planner/assemble-plan.js';
import type { Plan, PlanStep } from '../../planner/plan.js';
import { allBefore, type FollowRecord } from '../../planner/progress.js';
import { dueWords, type Reworked, reworked, workEnd } from '../../planner/rework.js';
import { goesOnByItself } from '../../planner/steps.js';
import type { Pack } from '../../rules/pack.js';
import type { Step } from '../../rules/schema.js';
import type { Asker } from '../../terminal/asker.js';
import { commandIn } from '../../terminal/words.js';
import { askSeen } from './ask-seen.js';

export interface Telling {
  readonly asker: Asker;
  readonly pack: Pack;
  readonly today: IsoDate;
  readonly input: PlanInput;
  /** The plan as it stood when it was last looked at: what the owner has in mind. */
  readonly before: Plan;
  records(): readonly FollowRecord[];
  /** Keeps the record on the disk. */
  tell(record: FollowRecord): Promise<void>;
}

export const standing = ({ input, records, today }: Telling): Reworked => reworked(input, records(), today);

/** When the owner thinks that the step is due. */
const dueOn = ({ before }: Telling, step: PlanStep): PlanStep =>
  before.steps.find(({ id }) => id === step.id) ?? step;

const CORRECT = 'correct';

/** What was done, one step at a time, until the list is left. */
export async function tellDone(telling: Telling): Promise<void> {
  const { asker, pack } = telling;
  for (;;) {
    const { plan, progress } = standing(telling);
    const isTold = ({ id, doneOn }: PlanStep): boolean => doneOn !== null && !progress.supposed.has(id);
    const doneBefore = plan.steps.filter(isTold);
    const open = plan.steps.filter(
      (step) => !isTold(step) && !goesOnByItself(pack.stepById.get(step.id) as Step),
    );
    if (open.length === 0 && doneBefore.length === 0) return;
    const chosen = await asker.pick(
      'What has been done? Pick one thing at a time.',
      [
        ...open
          .map((step) => dueOn(telling, step))
          .map(({ id, title, startOn }) => ({
            value: id,
            label: `${title} (${startOn < telling.today ? 'was due' : 'due'} ${formatKnown(startOn, telling.before.datesKnownTo)})`,
          })),
        ...(doneBefore.length === 0 ? [] : [{ value: CORRECT, label: 'correct what I told before' }]),
      ],
      doneBefore.length === 0 ? 'nothing yet' : 'nothing more',
    );
    if (chosen === undefined) return;
    if (chosen === CORRECT) {
      const again = await asker.pick(
        'Which one?',
        doneBefore.map(({ id, title, doneOn }) => ({
          value: id,
          label: `${title} (done ${formatDay(doneOn as IsoDate)})`,
        })),
        'none of these',
      );
      const step = doneBefore.find(({ id }) => id === again);
      if (step !== undefined) await tellOne(telling, step);
      continue;
    }
    const step = open.find(({ id }) => id === chosen) as PlanStep;
    if (!(await isMeant(telling, step, open))) continue;
    if (await tellOne(telling, step)) await tellWhatCameBefore(telling, step, open);
  }
}

/** A step far ahead of what was told is asked after once: everything before it would count as done. */
async function isMeant(telling: Telling, step: PlanStep, open: readonly PlanStep[]): Promise<boolean> {
  const { startOn } = dueOn(telling, step);
  const before = allBefore(telling.pack, step.id);
  const untold = open.filter(
    ({ id }) => before.has(id) && telling.pack.stepById.get(id)?.labour !== undefined,
  );
  if (startOn <= telling.today || untold.length < 2) return true;
  const named = untold.map(({ title }) => `"${title}"`).join(', ');
  const says = `"${step.title}" is due ${dueWords(startOn, telling.before.datesKnownTo)} and comes after ${named}, of which you have not told. Do you mean it?`;
  return (await telling.asker.confirm(says, false)) === true;
}

/** Work that belongs before something done was done too, or is out: it cannot be caught up. */
async function tellWhatCameBefore(
  telling: Telling,
  later: PlanStep,
  open: readonly PlanStep[],
): Promise<void> {
  const before = allBefore(telling.pack, later.id);
  for (const step of open) {
    const isWork = telling.pack.stepById.get(step.id)?.labour !== undefined;
    if (!before.has(step.id) || !isWork) continue;
    const wasDone = await telling.asker.confirm(
      `"${step.title}" comes before "${later.title}". Was it done too?`,
    );
    if (wasDone === undefined) return;
    if (wasDone) await tellOne(telling, step);
    else await telling.tell({ kind: 'left-out', step: step.id, toldOn: telling.today });
  }
}

/** One step that was done; false when they left before it was told. */
async function tellOne(telling: Telling, step: PlanStep): Promise<boolean> {
  const { asker, today } = telling;
  const endOn = await dayDone(telling, step);
  if (endOn === undefined) return false;
  const tookDays = daysBetween(step.startOn, workEnd(step));
  const startOn = tookDays === 0 ? endOn : await dayBegun(telling, step, endOn);
  if (startOn === undefined) return false;
  const told = { kind: 'done', step: step.id, startOn, endOn, toldOn: today } as const;
  // Kept at once: whatever happens after this line, the day is not asked again.
  await telling.tell({ ...told, asItShould: null, note: '' });
  asker.say(noted(endOn));
  warnOfShortWait(telling, step, startOn);
  const cameOut = await asIt(telling, step);
  await telling.tell({ ...told, ...cameOut, note: '' });
  if (cameOut.asItShould === false) asker.say(step.ifNot);
  if (asker.left?.() !== undefined) return true;
  const note = await asker.line(noteQuestion(step, telling.input.units), '');
  await telling.tell({ ...told, ...cameOut, note: note ?? '' });
  return true;
}

/** Not asked where a sign that comes later tells it: that is asked when its time has come. */
async function asIt(
  { asker, pack }: Telling,
  step: PlanStep,
): Promise<{ readonly asItShould: boolean | null; readonly partly?: true }> {
  const hasSign = pack.steps.some(({ after }) =>
    after.some((wait) => wait.step === step.id && wait.sign !== undefined),
  );
  const seen = hasSign ? undefined : await askSeen(asker, `${step.doneWhen} Is it so?`);
  if (seen === undefined || seen === 'unseen') return { asItShould: null };
  return seen === 'partly' ? { asItShould: false, partly: true } : { asItShould: seen === 'yes' };
}

function noteQuestion({ amounts }: PlanStep, units?: Units): string {
  const planned = amounts.flatMap((each) =>
    each.amount === null ? [] : [`${each.title} ${amountWords(each, each.amount, units ?? 'metric')}`],
  );
  const lead = planned.length === 0 ? '' : `Planned: ${planned.join('; ')}. `;
  return `${lead}What was used, what came out, what to know next year? (leave empty for nothing)`;
}

async function dayDone(telling: Telling, step: PlanStep): Promise<IsoDate | undefined> {
  const due = workEnd(dueOn(telling, step));
  const later = telling
    .records()
    .flatMap((record) =>
      record.kind === 'done' && allBefore(telling.pack, record.step).has(step.id) ? [record.startOn] : [],
    );
  const before = allBefore(telling.pack, step.id);
  const earlier = telling
    .records()
    .flatMap((record) => (record.kind === 'done' && before.has(record.step) ? [record.endOn] : []));
  const likely = [due, telling.today, ...later].sort()[0] ?? due;
  const suggested = step.doneOn ?? [likely, ...earlier].sort().at(-1) ?? likely;
  return askDay(telling, `On which day was "${step.title}" finished?`, suggested, (day) =>
    faultOf(telling, step, day),
  );
}

const dayBegun = (telling: Telling, step: PlanStep, endOn: IsoDate): Promise<IsoDate | undefined> =>
  askDay(telling, 'And on which day was it begun?', endOn, (day) =>
    day > endOn
      ? `It was finished on ${formatDay(endOn)}, so it was begun by then.`
      : faultOf(telling, step, day),
  );

/** Why the step cannot have been done on the day; undefined when it can. */
function faultOf({ pack, records, input }: Telling, step: PlanStep, day: IsoDate): string | undefined {
  if (day < input.today)
    return `The plan was made on ${formatDay(input.today)}. What was done before belongs into the answers.`;
  const titleOf = (id: string): string => pack.stepById.get(id)?.title ?? id;
  for (const record of records()) {
    if (record.kind !== 'done' || record.step === step.id) continue;
    if (allBefore(pack, step.id).has(record.step) && record.endOn > day)
      return `"${titleOf(record.step)}" comes before it and was done on ${formatDay(record.endOn)}. Give a day on or after that, or correct that one first.`;
    if (allBefore(pack, record.step).has(step.id) && record.startOn < day)
      return `"${titleOf(record.step)}" comes after it and was done on ${formatDay(record.startOn)}. Give a day on or before that, or correct that one first.`;
  }
  return undefined;
}

/** What is on the disk now. */
export const noted = (day: IsoDate): string => `Noted: ${formatDay(day)}`;

/** A day that has passed; undefined when they leave. */
export async function askDay(
  { asker, today, input: { units } }: Pick<Telling, 'asker' | 'today' | 'input'>,
  message: string,
  suggested: IsoDate | '',
  faultOn: (day: IsoDate) => string | undefined,
): Promise<IsoDate | undefined> {
  for (;;) {
    const typed = await asker.line(message, suggested === '' ? '' : formatDay(suggested));
    if (typed === undefined || typed.trim() === '') return undefined;
    if (commandIn(typed) === 'unknown') {
      if (suggested === '') return undefined;
      asker.say(`Then I count from today, the latest that it can have been: ${formatDay(today)}`);
      return today;
    }
    const reading = readPastDay(typed, today, units);
    const found = await oneDayOf(reading, faultOn, asker);
    if (reading.kind === 'refused') asker.say(reading.says);
    if (found === undefined) {
      if (asker.left?.() !== undefined) return undefined;
      continue;
    }
    const fault = faultOn(found);
    if (fault === undefined) return found;
    asker.say(fault);
  }
}

/** The day that was read; of several, the one that can be, or else the one that is meant. */
async function oneDayOf(
  reading: DayReading,
  faultOn: (day: IsoDate) => string | undefined,
  asker: Asker,
): Promise<IsoDate | undefined> {
  if (reading.kind === 'refused') return undefined;
  if (reading.kind === 'day') return reading.date;
  const possible = reading.dates.filter((date) => faultOn(date) === undefined);
  if (possible.length < 2) return possible[0] ?? reading.dates[0];
  const days = possible.map((date) => ({ value: date, label: formatDay(date) }));
  return (await asker.pick(reading.says, days, 'another day')) as IsoDate | undefined;
}

/** Done is done; but whoever was too quick should know what the wait was for. */
function warnOfShortWait(telling: Telling, step: PlanStep, startOn: IsoDate): void {
  const { plan } = standing(telling);
  for (const { step: id, minDays, why } of step.after) {
    const before = plan.steps.find((each) => each.id === id);
    if (before === undefined || before.doneOn === null || startOn >= addDays(before.doneOn, minDays))
      continue;
    const gap = daysBetween(before.doneOn, startOn);
    telling.asker.say(
      `That was ${daysWords(gap)} after "${before.title}"; ${daysWords(minDays)} were planned. ${why}`,
    );
  }
}
