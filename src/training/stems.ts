/** Words that somebody typed, brought to a form in which "mowing", "mown" and "mower" are the same. English. */

/** Words that name nothing. */
const EMPTY = new Set(
  `a an the is are was were be been being it its of in on at to for from with and or as by up off out over into
  how what when where which who why do does did doing done you your we us i me my they them he she his her there here this that these
  those any some has have had having can could would will should may might shall much many ever yet now then
  check look looking see seeing ask find tell show count take try get gets got go goes going
  if so very too not no nor isnt dont doesnt wont cant please about bit bits lot lots thing things
  ok yes well just only really quite still all whole more most than other one`.split(/\s+/),
);

/** Forms that no ending explains. */
const IRREGULAR: ReadonlyMap<string, string> = new Map([
  ['fed', 'feed'],
  ['mown', 'mow'],
  ['sown', 'sow'],
  ['worn', 'wear'],
  ['wore', 'wear'],
  ['dug', 'dig'],
  ['stood', 'stand'],
  ['sprung', 'spring'],
  ['shut', 'close'],
  ['dying', 'die'],
  ['dies', 'die'],
  ['lying', 'lie'],
  ['feet', 'foot'],
]);

/** Spellings of the same word on the other side of the sea. */
const respelt = (word: string): string =>
  word
    .replace(/^(col|val|harb|vap)or/, '$1our')
    .replace(/iz(e|er|ing|ed)/, 'is$1')
    .replace(/^gray/, 'grey')
    .replace(/^mold/, 'mould');

const ENDINGS =
  /(?:ations?|ions?|ages?|ities|ity|ically|ical|ic|iness|ness|ings?|ers?|est|ed|ly|ies|es|s|y|e)$/;
const LEAST_LEFT = 3;

/** One word without its ending; never shorter than three letters, unless it was. */
export function stemOf(word: string): string {
  let stem = IRREGULAR.get(word) ?? respelt(word);
  for (let round = 0; round < 2; round++) {
    const cut = stem.replace(ENDINGS, '');
    if (cut === stem || cut.length < LEAST_LEFT) break;
    stem = cut;
  }
  return stem.replace(/([b-df-hj-np-tv-z])\1$/, '$1');
}

/** The stems of a text, each once, without the words that name nothing. */
export function stemsOf(text: string): string[] {
  const words = text
    .toLowerCase()
    .replace(/['’]/g, '')
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '' && !EMPTY.has(word));
  return [...new Set(words.map(stemOf))];
}
