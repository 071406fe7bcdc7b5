/** The pack as a graph: who reads whom, and which step waits for which. Written in DOT, the open text form of graphs. */
import type { PackData } from './pack.js';
import { readersByName } from './readers.js';

/** Shapes of the nodes, by kind of record. */
const SHAPES: Readonly<Record<string, string>> = {
  question: 'box',
  fact: 'ellipse',
  finding: 'diamond',
  step: 'box3d',
  caution: 'octagon',
  verdict: 'doubleoctagon',
};

/**
 * Questions, facts, findings, verdicts, cautions and steps; an arrow leads from what is read to its reader.
 * Dashed arrows are waits between steps. Figures are left out: nearly every condition reads one.
 */
export function dotOf(pack: PackData): string {
  const titles = titlesOf(pack);
  const reads = [...readersByName(pack)].flatMap(([name, readers]) => {
    const from = recordOf(name);
    return titles.has(from)
      ? readers
          .filter((reader) => titles.has(reader) && reader !== from)
          .map((reader) => [from, reader] as const)
      : [];
  });
  const waits = pack.steps.flatMap(({ id, after }) =>
    after.map(({ step }) => [`step ${step}`, `step ${id}`] as const),
  );
  const nodes = [...titles].map(
    ([node, title]) =>
      `  ${quoted(node)} [label=${quoted(title)}, shape=${SHAPES[node.split(' ')[0] ?? '']}];`,
  );
  return [
    `digraph ${quoted(pack.id)} {`,
    '  rankdir=LR;',
    ...nodes,
    ...reads.map(([from, to]) => `  ${quoted(from)} -> ${quoted(to)};`),
    ...waits.map(([from, to]) => `  ${quoted(from)} -> ${quoted(to)} [style=dashed];`),
    '}',
    '',
  ].join('\n');
}

/** Every node, such as `step sow`, with what a person calls it. */
function titlesOf(pack: PackData): Map<string, string> {
  return new Map([
    ...pack.questions.map(({ id, label }) => [`question ${id}`, label] as const),
    ...pack.facts.map(({ id, what }) => [`fact ${id}`, what] as const),
    ...pack.findings.map(({ id, title }) => [`finding ${id}`, title] as const),
    ...pack.verdicts.map(({ id, title }) => [`verdict ${id}`, title] as const),
    ...pack.cautions.map(({ id, line }) => [`caution ${id}`, line] as const),
    ...pack.steps.map(({ id, title }) => [`step ${id}`, title] as const),
  ]);
}

/** `findings.mossy` is the record `finding mossy`; a plain name is a question. */
export function recordOf(name: string): string {
  const [folder = '', id] = name.split('.');
  return id === undefined ? `question ${name}` : `${folder.replace(/s$/, '')} ${id}`;
}

/** A quoted id of DOT: only the quote and the backslash need care. */
const quoted = (text: string): string => `"${text.replace(/["\\]/g, '\\$&').replace(/\s+/g, ' ')}"`;
