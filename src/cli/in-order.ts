/**
 * Works on many items at once and hands the results back in the order of the items.
 * No more than `window` items are taken in before the first of them is handed out, so memory stays flat.
 */
export async function* inOrder<Item, Result>(
  items: AsyncIterable<Item>,
  work: (item: Item) => Promise<Result>,
  window: number,
): AsyncGenerator<Result> {
  const waiting: Promise<Result>[] = [];
  for await (const item of items) {
    waiting.push(work(item));
    if (waiting.length >= window) yield (await waiting.shift()) as Result;
  }
  for (const each of waiting) yield await each;
}
