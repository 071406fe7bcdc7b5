/** What JSON.parse says nothing about: how deep a text is nested, and keys that stand twice in one object. */

export interface JsonShape {
  /** Levels of objects and lists; 0 for a plain value. */
  readonly depth: number;
  /** Keys that stand more than once in the same object, as written, in the order of the text. */
  readonly doubled: readonly string[];
}

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
  for (const token of tokensOf(json)) {
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

/** Brackets, colons and whole strings, in order. Strings are stepped over by hand: a pattern would overflow on long ones. */
function* tokensOf(json: string): Generator<string> {
  const next = /["{}[\]:]/g;
  for (let found = next.exec(json); found !== null; found = next.exec(json)) {
    if (found[0] !== '"') yield found[0];
    else {
      const end = endOfString(json, found.index);
      next.lastIndex = end + 1;
      yield json.slice(found.index, end + 1);
    }
  }
}

/** Place of the quote that closes the string which opens at `start`: one with an even run of backslashes before it. */
function endOfString(json: string, start: number): number {
  let end = start;
  let isEscaped: boolean;
  do {
    end = json.indexOf('"', end + 1);
    let run = 0;
    while (json[end - 1 - run] === '\\') run++;
    isEscaped = run % 2 === 1;
  } while (isEscaped);
  return end;
}
