/** Where the figures come from, numbered as the marks in the text number them. */
import type { InlineCode, Link, RootContent } from 'mdast';
import type { Plan, PlanSource } from '../planner/plan.js';
import { heading, numbered, type Part, paragraph } from './nodes.js';
import { oneLine } from './one-line.js';
import { sourcesInOrder } from './references.js';
import { said, sentence, stopped, withoutStop } from './words.js';

const WEB_ADDRESS = /^https?:\/\/[^\s<>]+$/i;
const BARE_ADDRESS = /^[a-z\d-]+(?:\.[a-z\d-]+)+(?:\/[^\s`|]*)?$/i;
const STANDINGS: Readonly<Record<string, string>> = {
  'first-hand': '',
  'second-hand': 'Second hand.',
  general: 'A general page.',
};

export function sourcesSection(plan: Plan): RootContent[] {
  const madeWith = paragraph(`Rules used: ${oneLine(plan.pack.id)}, version ${oneLine(plan.pack.version)}.`);
  if (plan.sources.length === 0) return [heading(2, 'Sources'), madeWith];
  return [
    heading(2, 'Sources'),
    paragraph(
      'A number in the text, such as (source 1), points to this list.',
      'Marked (common practice): a habit of the trade without a published figure.',
      'Marked (assumption): chosen for this plan, open to correction.',
      'Second hand: read where somebody else quotes it.',
    ),
    numbered(sourcesInOrder(plan).map(sourceParts)),
    ...(plan.climate?.licenceLine == null ? [] : [paragraph(sentence(plan.climate.licenceLine))]),
    madeWith,
  ];
}

function sourceParts(source: PlanSource): Part[] {
  const published =
    source.year === null ? said(source.publisher) : `${said(source.publisher)}, ${source.year}`;
  const places = withoutRepeats(source.at.map(withoutStop));
  return [
    stopped(source.title),
    stopped(published),
    places.length === 0 ? '' : `Used: ${places.join('; ')}.`,
    STANDINGS[source.standing] ?? sentence(source.standing),
    source.address === null ? '' : addressPart(source.address),
  ];
}

/** The places, less those that are empty or only a part of another's words. */
function withoutRepeats(places: readonly string[]): string[] {
  return places.filter(
    (place, index) =>
      place !== '' &&
      !places.some((other, at) => at !== index && other.includes(place) && (other !== place || at < index)),
  );
}

/** Written so that no escape spoils it: an autolink where it has a scheme, code where it has none. */
function addressPart(address: string): Part {
  const words = oneLine(address);
  if (BARE_ADDRESS.test(words)) return { type: 'inlineCode', value: words } satisfies InlineCode;
  if (!WEB_ADDRESS.test(words)) return words;
  return { type: 'link', url: words, title: null, children: [{ type: 'text', value: words }] } satisfies Link;
}
