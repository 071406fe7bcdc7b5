/** Judges one look against the set of good ones, as things stood when it was taken. Says nothing of the answer. */
import { openQuestions } from '../interview/open-questions.js';
import { evaluate, type Scope } from '../rules/evaluate.js';
import type { Question } from '../rules/schema.js';
import { isThere, scopeOfSeen, type WorkedCase } from './worked-case.js';

export type LookKind = 'on-track' | 'sound' | 'relevant' | 'early' | 'pointless';

export interface JudgedLook {
  readonly question: Question;
  readonly kind: LookKind;
  readonly says: string;
  /** How many findings it settled, either way. */
  readonly settled: number;
}

/** The judgement of looking at `question` after `before` had been looked at. */
export function judgeLook(worked: WorkedCase, question: Question, before: readonly string[]): JudgedLook {
  const scope = scopeOfSeen(worked, before);
  const settled = settledIn(worked, scopeOfSeen(worked, [...before, question.id])) - settledIn(worked, scope);
  return { question, settled, ...kindOf(worked, question, before, scope, settled) };
}

function kindOf(
  worked: WorkedCase,
  question: Question,
  before: readonly string[],
  scope: Scope,
  settled: number,
): Pick<JudgedLook, 'kind' | 'says'> {
  const { marking, good, sound, pack, say } = worked;
  const { beforeDigging } = marking;
  if (!isThere(worked, question))
    return { kind: 'pointless', says: 'There was nothing there to look at, and that could be known before.' };
  if (opensGround(question) && !before.includes(beforeDigging.look))
    return { kind: 'early', says: beforeDigging.says };
  if (marking.planSections.includes(question.section) && hasUnseenNeeds(worked, before))
    return {
      kind: 'early',
      says: 'That is for the plan. First find out what is wrong, then what to do it with.',
    };
  if (good.has(question.id)) return { kind: 'on-track', says: praise(say(question.why), settled) };
  if (sound.has(question.id)) return { kind: 'sound', says: praise(say(question.why), settled) };
  if (openQuestions(pack, scope).includes(question))
    return { kind: 'relevant', says: 'It can matter to a plan; what is wrong here does not turn on it.' };
  return { kind: 'pointless', says: 'Nothing depended on it any more, whatever the answer.' };
}

export const opensGround = (question: Question): boolean => question.cost === 'dig';

function hasUnseenNeeds({ lesson, pack, marking }: WorkedCase, before: readonly string[]): boolean {
  return lesson.needs.some((id) => {
    const section = pack.questionById.get(id)?.section ?? '';
    return !marking.planSections.includes(section) && !before.includes(id);
  });
}

/** The sign, the idea behind it, and what it changed. */
function praise(why: string, settled: number): string {
  if (settled <= 0) return why;
  return `${why} It settled ${settled === 1 ? 'one possible trouble' : `${settled} possible troubles`}, for or against.`;
}

const settledIn = ({ pack }: WorkedCase, scope: Scope): number =>
  pack.findings.filter(({ when }) => evaluate(when, scope).known).length;
