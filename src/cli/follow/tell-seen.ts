/** Asks for what is seen: the signs that a wait is over, the first green, and whatever goes wrong. */

import { addDays, daysBetween, formatDay, type IsoDate } from '../../base/dates.js';
import { daysWords } from '../../base/quantity-words.js';
import { plannedScope } from '../../planner/assemble-plan.js';
import type { PlanStep } from '../../planner/plan.js';
import { lookAgainDays } from '../../planner/progress.js';
import { sayerOf, workEnd } from '../../planner/rework.js';
import { troublesOn } from '../../planner/troubles.js';
import type { Trouble } from '../../rules/schema-pack.js';
import { askSeen } from './ask-seen.js';
import { askDay, noted, standing, type Telling } from './tell.js';

/** Signs whose wait is over, and that nobody has seen yet. */
export async function tellSigns(telling: Telling): Promise<void> {
  const { asker, pack, records, today } = telling;
  const { steps } = standing(telling).plan;
  const asked = new Set<string>();
  for (const step of steps) {
    if (step.doneOn !== null) continue;
    for (const { step: id, sign, minDays } of pack.stepById.get(step.id)?.after.map((wait) => ({
      ...wait,
      minDays: step.after.find((each) => each.step === wait.step)?.minDays,
    })) ?? []) {
      const before = steps.find((each) => each.id === id);
      const key = `${id} ${sign}`;
      if (sign === undefined || minDays === undefined || before === undefined || asked.has(key)) continue;
      if (!isOver(before, minDays, today) || wasSeen(records(), id, sign)) continue;
      asked.add(key);
      const said = step.after.find((each) => each.step === id)?.sign ?? sign;
      const seen = await askSeen(asker, `After "${before.title}", before "${step.title}": ${said} Is it so?`);
      if (seen === undefined) return;
      if (seen === 'unseen') {
        asker.say(`Then nothing is noted. Go and look before you begin "${step.title}".`);
        continue;
      }
      const partly = seen === 'partly' ? ({ partly: true } as const) : {};
      await telling.tell({ kind: 'sign', step: id, sign, seen: seen === 'yes', ...partly, toldOn: today });
      asker.say(seen === 'yes' ? 'Noted: yes' : waitWords(seen, step, addDays(today, lookAgainDays(pack))));
      if (seen !== 'yes') asker.say(before.ifNot);
    }
  }
}

/** What is not wholly so holds back what waits for it; until which day one looks again. */
const waitWords = (seen: 'partly' | 'no', { title }: PlanStep, lookAgainOn: IsoDate): string =>
  `Noted: ${seen === 'partly' ? 'only in part, and that is not enough' : 'not yet'}. "${title}" waits, and what follows it. Look again on ${formatDay(lookAgainOn)}.`;

const isOver = (before: PlanStep, minDays: number, today: IsoDate): boolean =>
  before.doneOn !== null && addDays(workEnd(before), minDays) <= today;

const wasSeen = (records: ReturnType<Telling['records']>, step: string, sign: string): boolean =>
  records.some(
    (record) => record.kind === 'sign' && record.step === step && record.sign === sign && record.seen,
  );

/** From the day of sowing: whether it is up, and what commonly goes wrong by now. */
export async function tellAfterSowing(telling: Telling): Promise<void> {
  const { asker, pack, input, records, today } = telling;
  const done = standing(telling).plan.steps.filter(({ doneOn }) => doneOn !== null);
  const sown = done.find(({ id }) => id === 'sow') ?? done.find(({ id }) => id === 'patch-sow');
  if (sown === undefined) return;
  const sownOn = sown.doneOn as IsoDate;
  const days = daysBetween(sownOn, today);
  if (days > 0 && !records().some((record) => record.kind === 'seed-up' && record.upOn !== null)) {
    asker.say(`It was sown ${daysWords(days)} ago.`);
    const upOn = await askDay(
      telling,
      'On which day did you see the first green? (leave empty for not yet)',
      '',
      (day) => (day < sownOn ? `It was sown on ${formatDay(sownOn)}: give a day after that.` : undefined),
    );
    if (upOn === undefined && asker.left?.() !== undefined) return;
    await telling.tell({ kind: 'seed-up', upOn: upOn ?? null, toldOn: today });
    if (upOn !== undefined) asker.say(noted(upOn));
  }
  const scope = plannedScope(input);
  const say = sayerOf(input);
  const all = troublesOn(pack, scope, days);
  const told = new Set<string>();
  for (;;) {
    const left = all.filter(({ id }) => !told.has(id));
    if (left.length === 0) return;
    const chosen = await asker.pick(
      'Is anything of this to be seen? Pick one at a time.',
      left.map(({ id, sees }) => ({ value: id, label: say(sees) })),
      told.size === 0 ? 'nothing of this' : 'nothing more of this',
    );
    const trouble = left.find(({ id }) => id === chosen);
    if (trouble === undefined) return;
    told.add(trouble.id);
    await tellTrouble(telling, trouble, say);
  }
}

/** What is normal, then each cause with its test, the likeliest first; then what to do about the one that fits. */
async function tellTrouble(telling: Telling, trouble: Trouble, say: (text: string) => string): Promise<void> {
  const { asker, today } = telling;
  asker.say(`Normal: ${say(trouble.normal)}`);
  asker.say('The likeliest cause first, each with a test by hand:');
  for (const [index, { cause, test }] of trouble.causes.entries())
    asker.say(`${index + 1}. ${say(cause)}. ${say(test)}`);
  const record = { kind: 'trouble', trouble: trouble.id, note: '', toldOn: today } as const;
  await telling.tell(record);
  const chosen = await asker.pick(
    'Which one fits?',
    trouble.causes.map(({ cause }, index) => ({ value: String(index), label: say(cause) })),
    'I have not tried yet',
  );
  if (asker.left?.() !== undefined) return;
  const found = chosen === undefined ? undefined : trouble.causes[Number(chosen)];
  if (found === undefined) {
    for (const [index, { remedy }] of trouble.causes.entries())
      asker.say(`If it is ${index + 1}: ${say(remedy)}`);
    return;
  }
  asker.say(say(found.remedy));
  await telling.tell({ ...record, note: say(found.cause) });
}
