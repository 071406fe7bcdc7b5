/**
 * The object with further properties that are worked out when they are first read, and once.
 * They are not enumerable: whoever copies or writes the object as JSON does not pay for them.
 */
export function lazily<Base extends object, More extends object>(
  base: Base,
  more: { readonly [Name in keyof More]: () => More[Name] },
): Base & More {
  const properties = Object.entries(more).map(([name, work]) => {
    let kept: { readonly value: unknown } | undefined;
    const get = (): unknown => {
      kept ??= { value: (work as () => unknown)() };
      return kept.value;
    };
    return [name, { get, enumerable: false }];
  });
  return Object.defineProperties({ ...base }, Object.fromEntries(properties)) as Base & More;
}
