/** How sure a verdict is, put into the pack's own sentences; nothing of it is worked out before it is read. */
import { formatKnown } from '../base/dates.js';
import { lazily } from '../base/lazily.js';
import type { Pack } from '../rules/pack.js';
import { listed, worded, wordedInside } from './explain-words.js';
import type { Verdict } from './judgement.js';
import { NOT_KNOWN, type PlanSign, type PlanSureness, type PlanVerdict } from './plan-judgement.js';
import { type Asked, type WouldChange, wouldChangeOf } from './sureness.js';

/** More than these would be a list, and not the next thing to look at. */
const MOST_LOOKS = 3;

interface Behind extends Asked {
  readonly signs: readonly PlanSign[];
}

export function withSureness(verdict: Verdict, { signs, ...asked }: Behind): PlanVerdict {
  let kept: readonly WouldChange[] | undefined;
  const wouldChange = (): readonly WouldChange[] => {
    kept ??= wouldChangeOf(asked);
    return kept;
  };
  const sureness = (): PlanSureness => surenessWords(verdict, wouldChange(), signs, asked.input.pack);
  const isSure = (): boolean =>
    verdict.id !== NOT_KNOWN && !signs.some(({ isClash }) => isClash) && wouldChange().length === 0;
  return lazily<Verdict, Pick<PlanVerdict, 'sure' | 'wouldChange' | 'sureness'>>(verdict, {
    sure: isSure,
    wouldChange,
    sureness,
  });
}

function surenessWords(
  { id }: Verdict,
  changes: readonly WouldChange[],
  signs: readonly PlanSign[],
  pack: Pack,
): PlanSureness {
  const looked = byQuestion(changes);
  const looks = looked.slice(0, MOST_LOOKS).map((own) => lookWords(own, pack));
  const others = looked.slice(MOST_LOOKS).map((own) => own[0]?.label ?? '');
  const more = others.length === 0 ? '' : worded(pack, 'otherLooks', { labels: listed(pack, others) });
  return { lead: leadWords({ id, looked, signs, pack }), looks, more };
}

function leadWords({
  id,
  looked,
  signs,
  pack,
}: {
  readonly id: Verdict['id'];
  readonly looked: readonly (readonly WouldChange[])[];
  readonly signs: readonly PlanSign[];
  readonly pack: Pack;
}): string {
  if (id === NOT_KNOWN) return worded(pack, looked.length === 0 ? 'nothingDecides' : 'looksDecide');
  const clashes = signs.filter(({ isClash }) => isClash);
  const clash = clashes.length === 0 ? [] : [worded(pack, 'clashing')];
  const turning = looked.filter((own) => own.some(({ changesVerdict }) => changesVerdict));
  if (looked.length > 0)
    return [...clash, worded(pack, turning.length > 1 ? 'unsureMany' : 'unsure')].join(' ');
  if (clash.length > 0) return clash.join(' ');
  const unexplained = signs.some(({ account }) => account === 'unexplained');
  return worded(pack, unexplained ? 'sureOfThese' : 'sure');
}

/** `Moss cover (about five minutes on the lawn): with "20 %" it would be "Thicken it"; with "30 %" …` */
function lookWords(own: readonly WouldChange[], pack: Pack): string {
  const [first] = own as readonly [WouldChange];
  return worded(pack, first.isNear ? 'lookNear' : 'look', {
    label: first.label,
    effort: wordedInside(pack, EFFORT_WORDS[first.effort]),
    turns: turnsWords(own, pack),
  });
}

/** A line for each answer on which something rests. */
export function restWords(changes: readonly WouldChange[], pack: Pack): string[] {
  return byQuestion(changes).map((own) =>
    worded(pack, 'rest', { label: own[0]?.label ?? '', turns: turnsWords(own, pack) }),
  );
}

const byQuestion = (changes: readonly WouldChange[]): WouldChange[][] =>
  [...new Set(changes.map(({ questionId }) => questionId))].map((questionId) =>
    changes.filter((each) => each.questionId === questionId),
  );

const turnsWords = (own: readonly WouldChange[], pack: Pack): string =>
  own.map((each) => turnWords(each, pack)).join('; ');

const EFFORT_WORDS = { chair: 'effortChair', look: 'effortLook', dig: 'effortDig' } as const;

function turnWords(change: WouldChange, pack: Pack): string {
  const { to, sowOn, changesVerdict, knownTo } = change;
  const answer = [
    change.answer,
    ...change.with.map(({ label, answer: other }) =>
      wordedInside(pack, 'lookWith', { label, answer: other }),
    ),
  ].join('');
  if (to === null) return wordedInside(pack, 'turnsNoDates', { answer });
  if (changesVerdict) return wordedInside(pack, 'turnsTo', { answer, verdict: to });
  return sowOn === null
    ? wordedInside(pack, 'turnsNoSowing', { answer })
    : wordedInside(pack, 'turnsSowing', { answer, day: formatKnown(sowOn, knownTo) });
}
