/** Hints in three rungs: point to where, teach why, tell which. Before the commit they lead to a look, never to the diagnosis. */
import { joinedWords } from '../base/joined-words.js';
import { wordedFor } from '../interview/worded.js';
import type { AskedAmount } from '../rules/schema-case.js';
import { type Attempt, HINT_RUNGS, type HintRung, lookIds, type TakenHint } from './attempt.js';
import { boundPairs } from './step-order.js';
import type { WorkedCase } from './worked-case.js';

export interface Hint extends TakenHint {
  readonly says: string;
}

/** The next hint towards the first good look that is missing; undefined when every one has been taken. */
export function nextHint(
  { pack, looks, good, marking, say, units }: WorkedCase,
  attempt: Attempt,
): Hint | undefined {
  const seen = lookIds(attempt);
  const question = looks.find(({ id }) => good.has(id) && !seen.includes(id));
  if (question === undefined) return undefined;
  const section = pack.sections.find(({ id }) => id === question.section)?.title ?? question.section;
  return onRung(attempt.hints, 'look', question.id, {
    point: marking.lookHints.point.replace('{section}', section),
    teach: say(question.why),
    tell: marking.lookHints.tell
      .replace('{look}', question.label)
      .replace('{question}', say(wordedFor(question, units).text)),
  });
}

/** The next hint for an amount: what it rests on, how it is worked, and the working itself. */
export function amountHint(
  { pack, marking, units }: WorkedCase,
  asked: AskedAmount,
  taken: readonly TakenHint[],
): Hint {
  const { kind } = asked.find;
  const material = kind === 'amount' ? pack.materialById.get(asked.find.material)?.title : undefined;
  const { us, ...words } = marking.amountHints[kind];
  const said = units === 'us' ? us : undefined;
  const about = (text: string): string => text.replace('{material}', material?.toLowerCase() ?? '');
  return onRung(taken, 'amount', asked.id, {
    point: about(said?.point ?? words.point),
    teach: about(said?.teach ?? words.teach),
    tell: asked.byHand.working,
  });
}

/**
 * The next hint for the order: a pair of key steps that the plan binds, why it does, and which comes first. Each pair
 * is told to the end before the next; undefined when there is none left to tell.
 */
export function orderHint(
  { lesson, plan, pack, marking, say }: WorkedCase,
  taken: readonly TakenHint[],
): Hint | undefined {
  const title = (id: string): string => pack.stepById.get(id)?.title ?? id;
  const told = new Set(taken.filter(({ rung }) => rung === 'tell').map(({ id }) => id));
  const { steps } = lesson.expected;
  const words = marking.orderHints;
  const step = steps.find((id) => !told.has(id));
  if (step === undefined) return undefined;
  const pairs = boundPairs(plan, steps).filter(([, then]) => then === step);
  const before = pairs.map(([first]) => `"${title(first)}"`);
  return onRung(taken, 'order', step, {
    point: before.length === 0 ? words.free : words.bound,
    teach: say(pack.stepById.get(step)?.purpose ?? title(step)),
    tell: (before.length === 0 ? words.tellFree : words.tellBound)
      .replace('{step}', title(step))
      .replace('{before}', joinedWords(before)),
  });
}

function onRung(
  taken: readonly TakenHint[],
  towards: TakenHint['towards'],
  id: string,
  says: Readonly<Record<HintRung, string>>,
): Hint {
  const given = taken.filter((hint) => hint.towards === towards && hint.id === id).length;
  const rung = HINT_RUNGS[Math.min(given, HINT_RUNGS.length - 1)] as HintRung;
  return { towards, id, rung, says: says[rung] };
}

/** Adds a hint to those taken. The last rung said again costs nothing more. */
export function withHint(taken: readonly TakenHint[], { towards, id, rung }: TakenHint): TakenHint[] {
  const isOld = taken.some((hint) => hint.towards === towards && hint.id === id && hint.rung === rung);
  return isOld ? [...taken] : [...taken, { towards, id, rung }];
}
