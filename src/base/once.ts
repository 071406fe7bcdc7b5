/** The same work on the same object is done once; for what can only depend on the object, such as a pack that is read. */
export function once<Key extends object, Result>(work: (key: Key) => Result): (key: Key) => Result {
  const kept = new WeakMap<Key, { readonly result: Result }>();
  return (key) => {
    const before = kept.get(key);
    if (before !== undefined) return before.result;
    const result = work(key);
    kept.set(key, { result });
    return result;
  };
}
