/** What is said of verdicts: every wrong one gets a sentence, and no reason speaks of what this lawn does not have. */
import { describe, expect, it } from 'vitest';
import type { VerdictId } from '../../src/rules/schema-judgement.js';
import { isRightVerdict } from '../../src/training/diagnosis.js';
import { alsoRightSays, verdictReason, wrongVerdictSays } from '../../src/training/verdict-words.js';
import { book, byId, worked } from './book.js';

const verdicts = Object.keys(book.marking.verdicts) as VerdictId[];
const cases = worked.map((each) => ({ id: each.lesson.id, each }));

describe('what is said of a verdict', () => {
  it.each(cases)('$id: every wrong one gets a sentence about this lawn', ({ each }) => {
    const { lesson, pack } = each;
    const titles = lesson.expected.findings.map((id) => pack.findingById.get(id)?.title ?? id);
    for (const verdict of verdicts.filter((other) => !isRightVerdict(lesson, other))) {
      const said = wrongVerdictSays(each, verdict);
      expect(said, verdict).toMatch(/^[A-Z].{20,}[.?]$/);
      expect(said, verdict).not.toMatch(/undefined|\{|\}/);
      const own = lesson.wrongTurns.find((turn) => turn.verdict === verdict)?.says;
      const isAboutIt =
        said === own ||
        titles.some((title) => said.includes(title)) ||
        /It would be that if/.test(said) ||
        (titles.length === 0 && said.includes(book.marking.verdictWords.nothingWrong));
      expect(isAboutIt, `${verdict}: ${said}`).toBe(true);
    }
  });

  it('tells what another lawn would have had, by the rules', () => {
    // The light at which grass ends, and the cover at which a lawn is renovated, as the cases themselves teach them.
    expect(wrongVerdictSays(byId('spongy-green'), 'not-a-lawn')).toMatch(/hours of sun were below 2/);
    expect(wrongVerdictSays(byId('grey-lawn'), 'renovate')).toMatch(/It would be that if moss cover were/);
  });

  it.each(cases)('$id: the reason is made of what is wrong here and what that takes', ({ each }) => {
    const { lesson, pack } = each;
    const reason = verdictReason(each, true);
    for (const id of lesson.expected.findings) expect(reason).toContain(pack.findingById.get(id)?.title);
    for (const id of lesson.expected.steps) expect(reason).toContain(pack.stepById.get(id)?.title);
    if (lesson.expected.verdict !== 'care-only') return;
    // Whoever is told to feed or to mow higher has it among the steps.
    const said = reason.toLowerCase();
    if (!each.plan.steps.some(({ id }) => id === 'feed')) expect(said).not.toMatch(/\bfeeding\b/);
    if (!each.plan.steps.some(({ id }) => id === 'raise-cut')) expect(said).not.toMatch(/mowing higher/);
  });

  it.each(cases)('$id: while steps are still to be chosen the reason gives none away', ({ each }) => {
    const reason = verdictReason(each, false);
    for (const id of each.lesson.expected.steps)
      expect(reason).not.toContain(`: ${each.pack.stepById.get(id)?.title}`);
  });

  it('lets "not now" stand where something has to pass or be found out first', () => {
    for (const id of ['wharf-cottages', 'hard-as-the-road']) {
      const { lesson } = byId(id);
      if (lesson.expected.verdict === 'not-now') continue;
      expect(isRightVerdict(lesson, 'not-now')).toBe(true);
      expect(alsoRightSays(byId(id), 'not-now')).toMatch(/\.$/);
    }
  });
});
