/** Small numbers in words, as people say shares: `two thirds`, `forty per cent`, `one in four`. */

const UNITS = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];
const TEENS = [
  'ten',
  'eleven',
  'twelve',
  'thirteen',
  'fourteen',
  'fifteen',
  'sixteen',
  'seventeen',
  'eighteen',
  'nineteen',
];
const TENS = ['twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety'];

const VALUES = new Map<string, number>([
  ...UNITS.map((word, index) => [word, index] as const),
  ...TEENS.map((word, index) => [word, 10 + index] as const),
  ...TENS.map((word, index) => [word, 20 + 10 * index] as const),
]);

const ONE_WORD = new RegExp(`\\b(${[...VALUES.keys()].join('|')})\\b`, 'gi');
const TENS_AND_UNIT = new RegExp(`\\b(${TENS.join('|')})[ -](${UNITS.slice(1).join('|')})\\b`, 'gi');

/** The text with numbers from zero to ninety-nine in figures, and `a hundred` as 100. */
export function numberWords(text: string): string {
  const value = (word: string) => VALUES.get(word.toLowerCase()) as number;
  return text
    .replace(/\b(?:a|one) hundred\b/gi, '100')
    .replace(TENS_AND_UNIT, (_, tens: string, unit: string) => String(value(tens) + value(unit)))
    .replace(ONE_WORD, (word) => String(value(word)));
}
