/** What the lawn needs and why. */
import type { RootContent } from 'mdast';
import { capital } from '../base/joined-words.js';
import type { Plan } from '../planner/plan.js';
import { heading, paragraph, strong } from './nodes.js';
import { oneLine } from './one-line.js';
import { markOf, type References } from './references.js';
import { inWords, markedSentence, said, sentence } from './words.js';

export function verdictSection({ verdict, areas, sooner }: Plan, references: References): RootContent[] {
  const verdicts = areas.length === 0 ? [{ name: undefined, verdict }] : areas;
  return [
    heading(2, 'The verdict'),
    ...verdicts.flatMap(({ name, verdict }) => verdictNodes(verdict, name, references)),
    ...(sooner === null ? [] : [paragraph(strong('Sooner with help.'), sooner.says)]),
  ];
}

/** What was assumed under several verdicts is told under each of them. */
function verdictNodes(
  verdict: Plan['verdict'],
  area: string | undefined,
  references: References,
): RootContent[] {
  const mark = markOf('published', verdict.sources, references);
  return [
    ...(area === undefined ? [] : [heading(3, capital(oneLine(area)))]),
    paragraph(
      strong(sentence(verdict.title)),
      markedSentence(verdict.because, mark),
      sentence(verdict.reasons),
    ),
    paragraph(howSure(verdict)),
  ];
}

function howSure({ restsOn }: Plan['verdict']): string {
  return restsOn.length === 0
    ? 'Sure: every answer that decides this was given.'
    : `Not sure: this rests on what was assumed about ${inWords(restsOn.map(said))}. Another answer there can lead to another verdict.`;
}
