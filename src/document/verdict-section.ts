/** What the lawn needs and why. */
import type { RootContent } from 'mdast';
import { capital } from '../base/joined-words.js';
import type { Plan } from '../planner/plan.js';
import { bullets, heading, paragraph, strong } from './nodes.js';
import { oneLine } from './one-line.js';
import { markOf, type References } from './references.js';
import { markedSentence, said, sentence } from './words.js';

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
    ...(verdict.says.length === 0 ? [] : [paragraph(...verdict.says.map(sentence))]),
    ...howSure(verdict),
  ];
}

function howSure({ sureness: { lead, looks, more } }: Plan['verdict']): RootContent[] {
  return [
    paragraph(sentence(lead)),
    ...(looks.length === 0 ? [] : [bullets(looks.map((look) => [said(look)]))]),
    ...(more === '' ? [] : [paragraph(sentence(more))]),
  ];
}
