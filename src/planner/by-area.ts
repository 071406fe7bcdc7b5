/** Things of several areas, each under its area's name. */
import { joinedWords } from '../base/joined-words.js';

export interface Named<Value> {
  readonly area: string;
  readonly value: Value;
}

/** What is the same in several areas, once, with their names. */
export function alike<Value>(
  own: readonly Named<Value>[],
): { readonly value: Value; readonly areas: string[] }[] {
  const groups = new Map<string, { value: Value; areas: string[] }>();
  for (const { area, value } of own) {
    const key = JSON.stringify(value);
    const group = groups.get(key) ?? { value, areas: [] };
    group.areas.push(area);
    groups.set(key, group);
  }
  return [...groups.values()];
}

/** `Moss in the sward (back)`; without a name where it holds for every area. */
export const titled = (title: string, areas: readonly string[], all: readonly string[]): string =>
  areas.length === all.length ? title : `${title} (${joinedWords(areas)})`;
