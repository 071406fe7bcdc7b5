import { describe, expect, it } from 'vitest';
import { evaluate } from '../../src/rules/evaluate.js';
import type { Expression } from '../../src/rules/schema.js';
import { namedFindings } from '../../src/training/described.js';
import { judgeLook, praiseInFull } from '../../src/training/judge-look.js';
import { namedLooks, nameMeant, notMeant, whatIsSeen } from '../../src/training/looks.js';
import { questionsBehind, scopeOfSeen, type WorkedCase } from '../../src/training/worked-case.js';
import { asksEverything, byId, worked } from './book.js';

const green = byId('spongy-green');
const look = (each: WorkedCase, id: string) => {
  const question = each.looks.find((other) => other.id === id);
  if (question === undefined) throw new Error(`no look ${id}`);
  return question;
};

describe('a typed look', () => {
  const looks = namedLooks(green);
  it.each([
    ['screwdriver', 'screwdriver'],
    ['Screwdriver test', 'screwdriver'],
    ['moss cover', 'mossFraction'],
    ['thatch depth', 'thatchDepthMm'],
    ['buried', 'buriedServices'],
    ['dog on', 'dog'],
    ['childern on the lawn', 'children'],
    ['puddles', 'puddles'],
  ])('"%s" means %s', (typed, id) => {
    expect(nameMeant(typed, looks)?.id).toBe(id);
  });

  it.each(['label', 'the', '', '0', '999', 'xyzzy'])(
    '"%s" means nothing, or more than one thing',
    (typed) => {
      expect(nameMeant(typed, looks)).toBeUndefined();
    },
  );

  it.each([
    [
      'label',
      /Did you mean .*"label rate of the liquid" \(\d+\), "label water" \(\d+\) or "label wait" \(\d+\)\?/,
    ],
    ['0', /from 1 to \d+/],
    ['999', /from 1 to \d+/],
    ['xyzzy', /fits none/],
  ])('"%s" is told what it fits', (typed, says) => {
    expect(notMeant(typed, looks)).toMatch(says);
  });

  it('is understood by several words as they stand in a name', () => {
    const [packed] = namedFindings(green.pack).filter(({ id }) => id === 'compacted');
    expect(nameMeant('packed hard', namedFindings(green.pack))).toBe(packed);
  });

  it('is the number of a list, from 1', () => {
    expect(nameMeant('1', looks)).toBe(looks[0]);
    expect(nameMeant(String(looks.length), looks)).toBe(looks.at(-1));
  });

  it('can be named by its label in every case', () => {
    for (const each of worked)
      for (const { id, label } of each.looks) expect(nameMeant(label, namedLooks(each))?.id).toBe(id);
  });
});

describe('a look', () => {
  it('shows the words of the case, or else the bare answer', () => {
    expect(whatIsSeen(green, look(green, 'dog'))).toMatch(/spaniel/);
    expect(whatIsSeen(green, look(green, 'mowingHeightMm'))).toBe('35 mm.');
    expect(whatIsSeen(green, look(green, 'soilPh'))).toBe('pH 6.5.');
  });

  it('at what is not there says so, and is pointless only once that could be known', () => {
    expect(whatIsSeen(green, look(green, 'grubsInSquare'))).toMatch(/nothing of the kind/);
    const grubs = (before: readonly string[]) => judgeLook(green, look(green, 'grubsInSquare'), before).kind;
    expect(grubs(['buriedServices'])).not.toBe('pointless');
    // Grubs are looked for under brown grass. This is pale, and now it has been seen.
    expect(grubs(['buriedServices', 'lawnColour'])).toBe('pointless');
  });

  it('is never called useless for what the trainee could not know', () => {
    for (const each of worked)
      for (const question of each.looks) {
        const { says } = judgeLook(each, question, [each.marking.beforeDigging.look]);
        const { askWhen } = question;
        const rests = askWhen === undefined ? [] : questionsBehind(each.pack, [askWhen]);
        if (!rests.some((id) => each.marking.givens.includes(id) || id === each.marking.beforeDigging.look))
          expect(says, `${each.lesson.id} ${question.id}`).not.toBe(each.marking.lookWords.absent);
      }
  });

  it('shows the words of the case wherever it has any', () => {
    for (const each of worked)
      for (const [id, words] of Object.entries(each.lesson.seen)) {
        const question = each.looks.find((other) => other.id === id);
        if (question !== undefined) expect(whatIsSeen(each, question)).toBe(words);
      }
  });

  it.each([
    ['a needed look is on track', 'mossFraction', [], 'on-track'],
    ['a danger is on track', 'dog', [], 'on-track'],
    ['any look for safety is sound', 'children', [], 'sound'],
    ['ruling out a look-alike is sound', 'puddles', [], 'sound'],
    ['digging before asking what lies below is early', 'thatchDepthMm', ['mossFraction'], 'early'],
    ['digging after it is on track', 'thatchDepthMm', ['buriedServices'], 'on-track'],
    ['the sprayer before the diagnosis is early', 'tankL', ['mossFraction'], 'early'],
    [
      'the sprayer after the diagnosis is on track',
      'tankL',
      ['buriedServices', 'areaM2', 'mossFraction', 'weedFraction', 'bareFraction', 'thatchDepthMm'],
      'on-track',
    ],
    ['what tells the kind of grass is sound: it tells sleep from death', 'grassType', [], 'sound'],
  ] as const)('%s', (_, id, before, kind) => {
    expect(judgeLook(green, look(green, id), before).kind).toBe(kind);
  });

  it('is praised before the commit without a finding, and afterwards with each that it settled', () => {
    const judged = judgeLook(green, look(green, 'thatchDepthMm'), ['buriedServices']);
    expect(judged.says).toMatch(/It settled \d possible troubles/);
    expect(judged.says).not.toMatch(/felt of old stems/);
    expect(praiseInFull(green, judged)).toMatch(/It showed: A thick felt of old stems/);
    expect(praiseInFull(green, judged)).toMatch(/It ruled out: .*thatch/);
  });

  it.each(worked.map((each) => ({ id: each.lesson.id, each })))(
    '$id: rules out only what its own evidence speaks against',
    ({ each }) => {
      // Worked out here from the records alone: the condition fails, and a sign against it is seen.
      const taken = asksEverything(each).looks;
      taken.forEach((judged, index) => {
        const seen = taken.slice(0, index + 1).map(({ question }) => question.id);
        const scope = scopeOfSeen(each, seen);
        const holds = (when: Expression): boolean => {
          const outcome = evaluate(when, scope);
          return outcome.known && outcome.value === true;
        };
        for (const finding of judged.settled.map((settled) => each.pack.findingById.get(settled))) {
          if (finding === undefined || holds(finding.when)) continue;
          const against = (finding.evidence ?? []).filter(({ when, weight }) => weight < 0 && holds(when));
          expect(
            finding.evidence === undefined || against.length > 0,
            `${judged.question.id} ${finding.id}`,
          ).toBe(true);
        }
      });
    },
  );

  it('with a screwdriver in dry ground rules nothing out, and says that it cannot be told', () => {
    for (const id of ['july-straw', 'hard-as-the-road', 'kiln-lane']) {
      const each = byId(id);
      const judged = judgeLook(each, look(each, 'lastRainDaysAgo'), ['buriedServices', 'screwdriver']);
      expect(judged.settled).not.toContain('compacted');
      const said = praiseInFull(each, judged);
      expect(said).toMatch(/could not tell.*packed hard/);
      expect(said.replace(/It could not tell.*/, '')).not.toMatch(/ruled out:.*packed hard/);
    }
  });

  it('at a spade slice that crumbles rules packed soil out, dry or not', () => {
    const each = byId('hard-as-the-road');
    const before = ['buriedServices', 'screwdriver', 'lastRainDaysAgo'];
    expect(judgeLook(each, look(each, 'soilCrumbs'), before).settled).toContain('compacted');
  });

  it('names what it settled, for later', () => {
    expect(judgeLook(green, look(green, 'mossFraction'), []).settled).toContain('mossy');
    expect(judgeLook(green, look(green, 'mossFraction'), ['mossFraction']).settled).toEqual([]);
  });
});
