/** Cuts tidy text into numbers, words and signs. */

export interface NumberToken {
  readonly kind: 'number';
  readonly value: number;
  /** The number as it can be typed again: a fraction stays a fraction, grouping is gone. */
  readonly text: string;
}

export type Token =
  | NumberToken
  | { readonly kind: 'word'; readonly text: string }
  | { readonly kind: 'sign'; readonly text: string };

const PATTERNS = {
  mixed: /(\d+)[ -](\d+)\/(\d+)(?![\d.,])/y,
  fraction: /(\d+) ?\/ ?(\d+)(?![\d.,])/y,
  spaced: /\d{1,3}(?: \d{3})+(?![\d ]*\d)(?:[.,]\d+)?/y,
  plain: /\d*(?:[.,]\d+)+|\d+/y,
  word: /[a-z]+[23]?(?![a-z\d])|[a-z]+|'|"/y,
  sign: /[^\s]/y,
};

/** The tokens of a text, or null when a number in it cannot be read. */
export function tokens(text: string): Token[] | null {
  const found: Token[] = [];
  let at = 0;
  while (at < text.length) {
    if (text[at] === ' ') {
      at += 1;
      continue;
    }
    const number = numberAt(text, at);
    if (number === null) return null;
    if (number !== undefined) {
      found.push(number.token);
      at += number.length;
      continue;
    }
    const word = match(PATTERNS.word, text, at);
    const part = word ?? (match(PATTERNS.sign, text, at) as RegExpExecArray);
    found.push({ kind: word ? 'word' : 'sign', text: part[0] });
    at += part[0].length;
  }
  return found.map((token) =>
    token.kind === 'word' && token.text === 'x' ? { kind: 'sign', text: 'x' } : token,
  );
}

function match(pattern: RegExp, text: string, at: number): RegExpExecArray | null {
  pattern.lastIndex = at;
  return pattern.exec(text);
}

/** The number that starts here; undefined when none does, null when it cannot be read. */
function numberAt(text: string, at: number): { token: NumberToken; length: number } | null | undefined {
  const mixed = match(PATTERNS.mixed, text, at);
  if (mixed)
    return fractionToken(mixed[0].length, mixed[1] as string, mixed[2] as string, mixed[3] as string);
  const fraction = match(PATTERNS.fraction, text, at);
  if (fraction) return fractionToken(fraction[0].length, '0', fraction[1] as string, fraction[2] as string);
  const plain = match(PATTERNS.spaced, text, at) ?? match(PATTERNS.plain, text, at);
  if (!plain) return undefined;
  const value = plainValue(plain[0]);
  if (value === null) return null;
  return { token: { kind: 'number', value, text: String(value) }, length: plain[0].length };
}

function fractionToken(length: number, whole: string, top: string, bottom: string) {
  const value = Number(whole) + Number(top) / Number(bottom);
  if (!Number.isFinite(value)) return null;
  const text = `${Number(whole) === 0 ? '' : `${Number(whole)} `}${Number(top)}/${Number(bottom)}`;
  return { token: { kind: 'number', value, text } as const, length };
}

/** Value of digits with points, commas or spaces in them, or null. */
function plainValue(digits: string): number | null {
  const text = digits.replaceAll(' ', '');
  const decimalAt = decimalPlace(text);
  const whole = decimalAt === -1 ? text : text.slice(0, decimalAt);
  const rest = decimalAt === -1 ? '' : text.slice(decimalAt + 1);
  const groups = whole.split(/[.,]/);
  if (
    groups.length > 1 &&
    !groups.every((group, index) => (index === 0 ? /^\d{1,3}$/ : /^\d{3}$/).test(group))
  ) {
    return null;
  }
  if (whole.includes('.') && whole.includes(',')) return null;
  const value = Number(`${groups.join('') || '0'}.${rest || '0'}`);
  return Number.isFinite(value) ? value : null;
}

/** Where the decimal sign is, or −1: one lone sign is it, and so is the last of two different ones. */
function decimalPlace(text: string): number {
  const points = text.split('.').length - 1;
  const commas = text.split(',').length - 1;
  if (points + commas === 1 || (points > 0 && commas > 0)) {
    return Math.max(text.lastIndexOf('.'), text.lastIndexOf(','));
  }
  return -1;
}
