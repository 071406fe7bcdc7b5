/** The walk round the lawn as a list to print: Markdown that reads as plain text too. */
import type { Answers } from '../interview/answers.js';
import { walkRound } from '../interview/walk.js';
import type { Say } from '../planner/texts.js';
import type { Scope } from '../rules/evaluate.js';
import type { Pack } from '../rules/pack.js';

const NOTHING_LEFT = 'Nothing is left to be looked at out of doors.';
const HOW = 'Write each answer down beside its question, then type them in. Leave out what you cannot tell.';
const PERHAPS = '(if it comes to that) ';

interface Walk {
  readonly scope: Scope;
  readonly say: Say;
  /** The area of the lawn, where there are several. */
  readonly area?: string | undefined;
}

export function walkText(pack: Pack, answers: Answers, { scope, say, area = 'lawn' }: Walk): string {
  const { take, stations } = walkRound(pack, answers, scope);
  if (stations.length === 0) return NOTHING_LEFT;
  const lines = stations.flatMap(({ title, items }) => [
    '',
    `## ${title}`,
    '',
    ...items.flatMap(({ question, isSure }) => [
      `- [ ] ${isSure ? '' : PERHAPS}${say(question.text)}`,
      ...(question.options ?? []).map(
        ({ label, hint }) => `  - ${label}${hint === undefined ? '' : `: ${hint}`}`,
      ),
      `  ${say(question.help)}`,
    ]),
  ]);
  const along = take.length === 0 ? [] : [`Take along: ${take.join(', ')}.`, ''];
  return [`# A walk round the ${area}`, '', ...along, HOW, ...lines].join('\n');
}
