/** The trainee commits: verdict and findings, each with how sure; then the amounts; then the steps in order. */
import type { AskedAmount } from '../../rules/schema-case.js';
import type { VerdictId } from '../../rules/schema-judgement.js';
import type { Attempt, Commitment } from '../../training/attempt.js';
import { namedFindings } from '../../training/described.js';
import { amountHint, orderHint, withHint } from '../../training/hints.js';
import { readAmount } from '../../training/read-amount.js';
import { bareUnit, type RightAmount, rightAmount } from '../../training/right-amount.js';
import { offeredSteps } from '../../training/step-order.js';
import {
  DrillLeft,
  type DrillParts,
  type Hearing,
  saidHint,
  typedLine,
  typedNames,
  wordsOf,
} from './parts.js';

const PERCENT = 100;
const VERDICT = 'What does this lawn need?';
const GO_ON_LOOKING = 'go on looking';
const SURE = 'How sure are you of that, in per cent? 100 is certain, 50 is a toss of a coin.';
const FINDINGS = 'What is wrong? Numbers or words, with commas between, or none.';
const STEPS =
  'Which of these steps does it take, in which order? Leave out what does not belong. Numbers or words, with commas between, or "hint".';

/** The commitment; undefined when they go back to looking. */
export async function commitStage(parts: DrillParts): Promise<Commitment | undefined> {
  const { asker, worked } = parts;
  const { pack, marking } = worked;
  const choices = Object.entries(marking.verdicts).map(([value, label]) => ({ value, label }));
  const verdict = (await asker.pick(VERDICT, choices, GO_ON_LOOKING)) as VerdictId | undefined;
  if (verdict === undefined) {
    if (asker.left?.() !== undefined) throw new DrillLeft();
    asker.say('Then go on looking.');
    return undefined;
  }
  const [sure = 0] = await typedShares(parts, SURE, 1);
  const findings = await typedNames(parts, FINDINGS, namedFindings(pack));
  const shares = findings.length === 0 ? [] : await typedShares(parts, sureOfEach(findings), findings.length);
  return { verdict, sure, findings: findings.map(({ id }, index) => ({ id, sure: shares[index] ?? 0 })) };
}

function sureOfEach(findings: readonly { readonly label: string }[]): string {
  const names = findings.map(({ label }) => label).join('; ');
  return findings.length === 1
    ? `How sure are you of this, in per cent? ${names}`
    : `How sure are you of each, in per cent? One number for all, or ${findings.length} with commas between. ${names}`;
}

async function typedShares(parts: DrillParts, message: string, count: number): Promise<number[]> {
  for (;;) {
    const words = wordsOf(await typedLine(parts, message)).map((word) =>
      word.replace(/\s*(?:%|per cent)$/, ''),
    );
    const values = words.map(Number);
    const isSound = values.every((value) => Number.isFinite(value) && value >= 0 && value <= PERCENT);
    if (isSound && values.length === 1)
      return Array.from({ length: count }, () => (values[0] as number) / PERCENT);
    if (isSound && values.length === count) return values.map((value) => value / PERCENT);
    parts.asker.say(
      count === 1
        ? 'Type one number from 0 to 100.'
        : `Type one number from 0 to 100 for all, or ${count} with commas between.`,
    );
  }
}

/** Every amount of the case; an empty line leaves one out, "hint" helps and costs. */
export async function amountStage(parts: DrillParts, start: Attempt): Promise<Attempt> {
  let attempt = start;
  for (const asked of parts.worked.lesson.amounts) {
    const hint = (): string => {
      const next = amountHint(parts.worked, asked, attempt.hints);
      const said = saidHint(parts.worked, attempt.hints, next);
      attempt = { ...attempt, hints: withHint(attempt.hints, next) };
      return said;
    };
    const value = await typedAmount({ ...parts, hint }, asked);
    attempt = { ...attempt, amounts: { ...attempt.amounts, [asked.id]: value } };
  }
  return attempt;
}

async function typedAmount(parts: DrillParts & Hearing, asked: AskedAmount): Promise<number | null> {
  const { units } = parts.worked;
  const right = rightAmount(parts.worked, asked) as RightAmount;
  const unit = bareUnit(right, units);
  const way = UNCOUNTED.includes(unit)
    ? 'Type a number'
    : `Give the unit (without one I take ${UNIT_WORDS[unit] ?? unit})`;
  const message = `${asked.ask} ${way}, "hint", or an empty line.`;
  for (;;) {
    const line = await typedLine(parts, message);
    if (line === '' || /^(?:dk|don't know|dont know)$/i.test(line)) return null;
    const read = readAmount(line, right, units);
    parts.asker.say(read.ok ? `Noted: ${read.understood}` : read.says);
    if (read.ok) return read.value;
  }
}

const UNIT_WORDS: Readonly<Record<string, string>> = {
  d: 'days',
  m2: 'square metres',
  g: 'grams',
  ft2: 'square feet',
  oz: 'ounces',
  lb: 'pounds',
  'fl oz': 'fluid ounces',
  gal: 'gallons',
  'ft³': 'cubic feet',
  min: 'minutes',
};
/** Things that are counted have no unit. */
const UNCOUNTED = ['each', 'loads'];

/** The steps in the trainee's order; "hint" helps and costs. */
export async function orderStage(parts: DrillParts, start: Attempt): Promise<Attempt> {
  let { hints } = start;
  const hint = (): string => {
    const next = orderHint(parts.worked, hints);
    if (next === undefined) return parts.worked.marking.orderHints.allTold;
    const said = saidHint(parts.worked, hints, next);
    hints = withHint(hints, next);
    return said;
  };
  const order = (await typedNames({ ...parts, hint }, STEPS, offeredSteps(parts.worked))).map(({ id }) => id);
  return { ...start, hints, order };
}
