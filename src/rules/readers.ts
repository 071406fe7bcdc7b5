/** Who reads what: every name that a condition, a fact or a sentence of the pack draws on. */
import { namesIn } from './call.js';
import { expressionsOf } from './expressions.js';
import type { PackData } from './pack.js';
import { sentencesOf, slotsIn } from './slots.js';

/** Name, such as `figures.fork-depth-mm`, to the records that read it, such as `step fork`. */
export function readersByName(pack: PackData): Map<string, string[]> {
  const readers = new Map<string, string[]>();
  const note = (name: string, owner: string): void => {
    const owners = readers.get(name) ?? [];
    if (!owners.includes(owner)) owners.push(owner);
    readers.set(name, owners);
  };
  for (const { owner, expression } of expressionsOf(pack))
    for (const name of namesIn(expression)) note(name, owner);
  for (const { id, reads = [] } of pack.facts) for (const name of reads) note(name, `fact ${id}`);
  for (const { kind, name: owner, text } of sentencesOf(pack))
    for (const name of slotsIn(text)) note(name, `${kind} ${owner}`);
  return readers;
}

export const namesRead = (pack: PackData): ReadonlySet<string> => new Set(readersByName(pack).keys());

/** Figures that neither the pack nor the program reads. */
export function figuresUnread(pack: PackData, byProgram: readonly string[]): string[] {
  const read = namesRead(pack);
  return pack.figures
    .map(({ id }) => id)
    .filter((id) => !read.has(`figures.${id}`) && !byProgram.includes(id));
}
