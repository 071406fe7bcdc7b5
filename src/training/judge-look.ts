/** Judges one look against the set of good ones, as things stood when it was taken. Says nothing of the answer. */
import { openQuestions } from '../interview/open-questions.js';
import type { Scope } from '../rules/evaluate.js';
import type { Question } from '../rules/schema.js';
import { isAsked } from '../rules/scope.js';
import { isLeftOpen, stateOf } from './finding-state.js';
import { scopeOfSeen, type WorkedCase } from './worked-case.js';

export type LookKind = 'on-track' | 'sound' | 'relevant' | 'early' | 'pointless';

export interface JudgedLook {
  readonly question: Question;
  readonly kind: LookKind;
  /** Names no finding, so that it can be said before the commit. */
  readonly says: string;
  /** Ids of the findings that it settled: shown to be there, or ruled out by their own evidence. */
  readonly settled: readonly string[];
  /** Ids of those whose test came to nothing: not shown, and not ruled out either. */
  readonly leftOpen: readonly string[];
}

/** The judgement of looking at `question` after `before` had been looked at. */
export function judgeLook(worked: WorkedCase, question: Question, before: readonly string[]): JudgedLook {
  const scope = scopeOfSeen(worked, before);
  const then = scopeOfSeen(worked, [...before, question.id]);
  const open = worked.pack.findings.filter((finding) => stateOf(finding, scope) === 'cannotTell');
  const settled = open.filter((finding) => stateOf(finding, then) !== 'cannotTell').map(({ id }) => id);
  const leftOpen = open
    .filter((finding) => !isLeftOpen(finding, scope) && isLeftOpen(finding, then))
    .map(({ id }) => id);
  return { question, settled, leftOpen, ...kindOf(worked, question, { before, scope, settled }) };
}

interface Moment {
  readonly before: readonly string[];
  readonly scope: Scope;
  readonly settled: readonly string[];
}

function kindOf(
  worked: WorkedCase,
  question: Question,
  { before, scope, settled }: Moment,
): Pick<JudgedLook, 'kind' | 'says'> {
  const { marking, good, sound, pack } = worked;
  const { beforeDigging, lookWords } = marking;
  if (isAsked(question, scope) === false) return { kind: 'pointless', says: lookWords.absent };
  if (opensGround(question) && !before.includes(beforeDigging.look))
    return { kind: 'early', says: beforeDigging.says };
  if (marking.planSections.includes(question.section) && hasUnseenNeeds(worked, before))
    return { kind: 'early', says: lookWords.forThePlan };
  const says = praise(worked, question, settled);
  if (good.has(question.id)) return { kind: 'on-track', says };
  if (sound.has(question.id)) return { kind: 'sound', says };
  if (openQuestions(pack, scope).includes(question)) return { kind: 'relevant', says: lookWords.relevant };
  return { kind: 'pointless', says: lookWords.pointless };
}

export const opensGround = (question: Question): boolean => question.cost === 'dig';

function hasUnseenNeeds({ lesson, pack, marking }: WorkedCase, before: readonly string[]): boolean {
  return lesson.needs.some((id) => {
    const section = pack.questionById.get(id)?.section ?? '';
    return !marking.planSections.includes(section) && !before.includes(id);
  });
}

/** The idea behind the look, and how much it changed; the sign itself is on the screen. */
function praise({ marking, say }: WorkedCase, { why }: Question, settled: readonly string[]): string {
  const { settledOne, settledMore } = marking.lookWords;
  const idea = say(why);
  if (settled.length === 0) return idea;
  const changed = settled.length === 1 ? settledOne : settledMore;
  return `${idea} ${changed.replace('{count}', String(settled.length))}`;
}

/** Once the commit is made: the idea, which findings it settled which way, and which it left open. */
export function praiseInFull(
  { pack, marking, found, say }: WorkedCase,
  { question, settled, leftOpen }: JudgedLook,
): string {
  const { showed, ruledOut, cannotTell } = marking.lookWords;
  const said = (words: string, ids: readonly string[]): string[] => {
    const names = ids.map((id) => pack.findingById.get(id)?.title ?? id);
    return names.length === 0 ? [] : [words.replace('{names}', names.join('; '))];
  };
  const there = settled.filter((id) => found.has(id));
  const absent = settled.filter((id) => !found.has(id));
  return [
    say(question.why),
    ...said(showed, there),
    ...said(ruledOut, absent),
    ...said(cannotTell, leftOpen),
  ].join(' ');
}
