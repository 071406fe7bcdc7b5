/** `a`, `a and b`, `a, b and c`; an empty text for nothing. */
export function joinedWords(words: readonly string[], between = 'and'): string {
  const last = words.at(-1) ?? '';
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} ${between} ${last}`;
}

/** With a capital first. */
export const capital = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
