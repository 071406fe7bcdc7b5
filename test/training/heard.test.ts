/** Own words for looks and troubles: most are understood, the rest asked back, and none is silently taken for another. */
import { describe, expect, it } from 'vitest';
import { namedFindings } from '../../src/training/described.js';
import { hear, type Named, namedLooks } from '../../src/training/looks.js';
import { pack } from '../planner/any-lawn.js';
import { byId } from './book.js';
import { FINDING_PHRASES, LOOK_PHRASES, MORE_FINDING_PHRASES, MORE_LOOK_PHRASES } from './phrases.js';

const looks = namedLooks(byId('spongy-green'));
const findings = namedFindings(pack);

type Phrases = typeof LOOK_PHRASES;

/** By phrase, how it was heard against what may be meant. */
function heardOf(phrases: Phrases, items: readonly Named[]) {
  return phrases.map(([typed, ids]) => {
    const heard = hear(typed, items);
    const meant = heard.kind === 'one' ? [heard.item] : heard.kind === 'which' ? heard.items : [];
    return { typed, ids, kind: heard.kind, meant: meant.map(({ id }) => id) };
  });
}

const count = (heard: ReturnType<typeof heardOf>, kind: string): number =>
  heard.filter((each) => each.kind === kind && each.meant.some((id) => each.ids.includes(id))).length;

describe.each([
  // Three in five at once of what the rules were written for; of what nobody thought of, two in five.
  ['looks', LOOK_PHRASES, looks, 0.6],
  ['troubles', FINDING_PHRASES, findings, 0.6],
  ['more looks', MORE_LOOK_PHRASES, looks, 0.4],
  ['more troubles', MORE_FINDING_PHRASES, findings, 0.4],
] as const)('own words for %s', (_, phrases, items, least) => {
  const heard = heardOf(phrases, items);

  it.each(heard)('"$typed" is not silently taken for another', ({ typed, kind, meant, ids }) => {
    if (kind === 'one') expect(ids, `${typed} was taken for ${meant}`).toContain(meant[0]);
  });

  it('are understood at once for the most part, and else nearly always asked back with what was meant', () => {
    const known = heard.filter(({ ids }) => items.some(({ id }) => ids.includes(id)));
    expect(count(heard, 'one') / known.length).toBeGreaterThanOrEqual(least);
    expect((count(heard, 'one') + count(heard, 'which')) / known.length).toBeGreaterThanOrEqual(0.9);
  });
});

describe('words that the rules say people use', () => {
  it.each([...looks, ...findings].flatMap(({ id, says = [] }) => says.map((phrase) => ({ id, phrase }))))(
    '"$phrase" means $id, or asks back with it',
    ({ id, phrase }) => {
      const items = findings.some((finding) => finding.id === id) ? findings : looks;
      const heard = hear(phrase, items);
      const meant = heard.kind === 'one' ? [heard.item] : heard.kind === 'which' ? heard.items : [];
      expect(meant.map((item) => item.id)).toContain(id);
    },
  );

  it('do not hide the names themselves', () => {
    for (const { label } of looks) expect(hear(label, looks).kind).toBe('one');
    for (const { label } of findings) expect(hear(label, findings).kind).toBe('one');
  });
});
