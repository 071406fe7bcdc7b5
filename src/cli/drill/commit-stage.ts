/** The trainee commits: verdict and findings, each with how sure; then the amounts; then the steps in order. */
import type { VerdictId } from '../../rules/schema-pack.js';
import { LEAVE_LIST } from '../../terminal/words.js';
import type { Attempt, Commitment } from '../../training/attempt.js';
import { readAmount } from '../../training/read-amount.js';
import { rightAmount } from '../../training/right-amount.js';
import { offeredSteps } from '../../training/step-order.js';
import { DrillLeft, type DrillParts, typedLine, typedNames, wordsOf } from './parts.js';

const PERCENT = 100;
const VERDICT = 'What does this lawn need?';
const SURE = 'How sure are you of that, in per cent? 100 is certain, 50 is a toss of a coin.';
const FINDINGS = 'What is wrong? Numbers or words, with commas between, or none.';
const STEPS =
  'Which of these steps does it take, in which order? Leave out what does not belong. Numbers or words, with commas between.';

/** The commitment; undefined when they go back to looking. */
export async function commitStage(parts: DrillParts): Promise<Commitment | undefined> {
  const { asker, worked } = parts;
  const { pack, marking } = worked;
  const choices = Object.entries(marking.verdicts).map(([value, label]) => ({ value, label }));
  const verdict = (await asker.pick(VERDICT, choices, LEAVE_LIST)) as VerdictId | undefined;
  if (verdict === undefined) {
    if (asker.left?.() !== undefined) throw new DrillLeft();
    asker.say('Then go on looking.');
    return undefined;
  }
  const [sure = 0] = await typedShares(parts, SURE, 1);
  const findings = await typedNames(
    parts,
    FINDINGS,
    pack.findings.map(({ id, title }) => ({ id, label: title })),
  );
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

/** Every amount of the case; an empty line leaves one out. */
export async function amountStage(parts: DrillParts): Promise<Attempt['amounts']> {
  const { asker, worked } = parts;
  const given: Record<string, number | null> = {};
  for (const asked of worked.lesson.amounts) {
    const unit = rightAmount(worked.plan, asked)?.unit ?? '';
    given[asked.id] = null;
    for (;;) {
      const line = await typedLine(
        parts,
        `${asked.ask} Give the unit (without one I take ${UNIT_WORDS[unit] ?? unit}), or an empty line.`,
      );
      if (line === '' || /^(?:dk|don't know|dont know)$/i.test(line)) break;
      const read = readAmount(line, unit);
      if (read.ok) {
        given[asked.id] = read.value;
        asker.say(`Noted: ${read.understood}`);
        break;
      }
      asker.say(read.says);
    }
  }
  return given;
}

const UNIT_WORDS: Readonly<Record<string, string>> = { d: 'days', m2: 'square metres', g: 'grams' };

/** The steps in the trainee's order. */
export async function orderStage(parts: DrillParts): Promise<string[]> {
  return (await typedNames(parts, STEPS, offeredSteps(parts.worked))).map(({ id }) => id);
}
