/** What the lawn needs and why. */
import type { RootContent } from 'mdast';
import type { Plan } from '../planner/plan.js';
import { heading, paragraph, strong } from './nodes.js';
import { markOf, type References } from './references.js';
import { inWords, markedSentence, said, sentence } from './words.js';

export function verdictSection({ verdict, sooner }: Plan, references: References): RootContent[] {
  const mark = markOf('published', verdict.sources, references);
  return [
    heading(2, 'The verdict'),
    paragraph(
      strong(sentence(verdict.title)),
      markedSentence(verdict.because, mark),
      sentence(verdict.reasons),
    ),
    paragraph(howSure(verdict)),
    ...(sooner === null ? [] : [paragraph(strong('Sooner with help.'), sooner.says)]),
  ];
}

function howSure({ restsOn }: Plan['verdict']): string {
  return restsOn.length === 0
    ? 'Sure: every answer that decides this was given.'
    : `Not sure: this rests on what was assumed about ${inWords(restsOn.map(said))}. Another answer there can lead to another verdict.`;
}
