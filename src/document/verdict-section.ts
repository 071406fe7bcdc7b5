/** What the lawn needs and why. */
import type { RootContent } from 'mdast';
import type { Plan } from '../planner/plan.js';
import { heading, paragraph, strong } from './nodes.js';
import { markOf, type References } from './references.js';
import { markedSentence, sentence } from './words.js';

export function verdictSection({ verdict }: Plan, references: References): RootContent[] {
  const mark = markOf('published', verdict.sources, references);
  return [
    heading(2, 'The verdict'),
    paragraph(
      strong(sentence(verdict.title)),
      markedSentence(verdict.because, mark),
      sentence(verdict.reasons),
    ),
  ];
}
