/** Which names rest on which: the reading graph of a pack, its circles, and everything behind a name. */
import { once } from '../base/once.js';
import { namesIn } from './call.js';
import type { PackData } from './pack.js';

/** For every readable name that is worked out, the names it reads directly. */
export const readsByName = once((pack: PackData): ReadonlyMap<string, readonly string[]> => {
  const reads = new Map<string, readonly string[]>();
  for (const question of pack.questions) {
    const { askWhen, dontKnow } = question;
    reads.set(question.id, [
      ...(askWhen === undefined ? [] : namesIn(askWhen)),
      ...(dontKnow.assume === null ? [] : namesIn(dontKnow.assume)),
    ]);
  }
  for (const fact of pack.facts) {
    reads.set(`facts.${fact.id}`, fact.value === undefined ? (fact.reads ?? []) : namesIn(fact.value));
  }
  for (const finding of pack.findings) reads.set(`findings.${finding.id}`, namesIn(finding.when));
  return reads;
});

/** The first circle, as the names along it, or undefined. */
export function findCircle(reads: ReadonlyMap<string, readonly string[]>): string[] | undefined {
  const done = new Set<string>();
  const path: string[] = [];
  const visit = (name: string): string[] | undefined => {
    if (path.includes(name)) return [...path.slice(path.indexOf(name)), name];
    if (done.has(name)) return undefined;
    path.push(name);
    for (const next of reads.get(name) ?? []) {
      const circle = visit(next);
      if (circle !== undefined) return circle;
    }
    path.pop();
    done.add(name);
    return undefined;
  };
  for (const name of reads.keys()) {
    const circle = visit(name);
    if (circle !== undefined) return circle;
  }
  return undefined;
}

/** The names and all that they rest on. */
export function everythingBehind(
  names: readonly string[],
  reads: ReadonlyMap<string, readonly string[]>,
): Set<string> {
  const behind = new Set<string>();
  const visit = (name: string): void => {
    if (behind.has(name)) return;
    behind.add(name);
    for (const next of reads.get(name) ?? []) visit(next);
  };
  for (const name of names) visit(name);
  return behind;
}
