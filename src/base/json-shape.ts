/** What JSON.parse says nothing about: how deep a text is nested, and keys that stand twice in one object. */

export interface JsonShape {
  /** Levels of objects and lists; 0 for a plain value. */
  readonly depth: number;
  /** Keys that stand more than once in the same object, as written, in the order of the text. */
  readonly doubled: readonly string[];
}

const TOKEN = /"[^"\\]*(?:\\.[^"\\]*)*"|[{}[\],:]/gs;

/** One level that is open: the keys seen in it, or none for a list. */
interface Level {
  readonly keys: Set<string> | undefined;
  last: string | undefined;
}

/** @param json text that JSON.parse accepts; walked without recursion, so that no depth is too deep */
export function jsonShapeOf(json: string): JsonShape {
  const open: Level[] = [];
  const doubled: string[] = [];
  let depth = 0;
  for (const [token] of json.matchAll(TOKEN)) {
    const level = open.at(-1);
    if (token === '{' || token === '[') {
      open.push({ keys: token === '{' ? new Set() : undefined, last: undefined });
      depth = Math.max(depth, open.length);
    } else if (token === '}' || token === ']') open.pop();
    else if (level?.keys === undefined) continue;
    else if (token === ':') {
      const key = JSON.parse(level.last ?? '""') as string;
      if (level.keys.has(key)) doubled.push(key);
      level.keys.add(key);
    } else if (token.startsWith('"')) level.last = token;
  }
  return { depth, doubled: [...new Set(doubled)] };
}
