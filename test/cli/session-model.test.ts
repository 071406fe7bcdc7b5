/** Whatever the order of answering, going back, changing and resuming: nothing is lost, and only what counts counts. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseIsoDate } from '../../src/base/dates.js';
import { type InterviewForRules, interviewFor } from '../../src/cli/interview-for.js';
import { type Answers, type AnswerValue, UNKNOWN } from '../../src/interview/answers.js';
import { readSession, type SavedAnswer, writeSession } from '../../src/session/saved-session.js';
import { anyAnswers, pack, planIfAny } from '../planner/any-lawn.js';

const today = parseIsoDate('2027-03-13');
const open = (given: readonly SavedAnswer[], heldOver: readonly SavedAnswer[] = []): InterviewForRules =>
  interviewFor({ pack, today, given, heldOver, startedOn: today });

interface Model {
  readonly answers: Map<string, AnswerValue>;
  /** Questions asked, in order: the way back. */
  trail: string[];
  revisiting: string | undefined;
}
interface Real {
  rules: InterviewForRules;
}
type Command = fc.AsyncCommand<Model, Real>;

/** The lawns that answers are drawn from; one question can so be answered in several ways. */
interface Lawns {
  readonly values: readonly Answers[];
}

const PARTS: AnswerValue = [{ shape: 'rectangle', lengthM: 12, widthM: 7 }];

class Answer implements Command {
  constructor(
    private readonly which: number,
    private readonly lawns: Lawns,
  ) {}
  check = () => true;
  async run(model: Model, { rules }: Real): Promise<void> {
    const prompt = rules.interview.next();
    if (prompt === undefined) return;
    const { id } = prompt.question;
    const before = model.answers.get(id) ?? (id === 'areaM2' ? model.answers.get('lawnParts') : undefined);
    if (model.revisiting === undefined) expect(before).toBeUndefined();
    else {
      expect(id).toBe(model.revisiting);
      if (before !== UNKNOWN) expect(prompt.suggested).toEqual(before);
    }
    const drawn = this.lawns.values[this.which]?.[id] ?? UNKNOWN;
    const value = id === 'areaM2' && this.which === 0 ? PARTS : drawn;
    rules.interview.answer(
      id,
      value === UNKNOWN ? { kind: 'unknown' } : { kind: 'value', value, understood: 'so', typed: 'so' },
    );
    if (id === 'areaM2') for (const other of ['areaM2', 'lawnParts']) model.answers.delete(other);
    const key = id === 'areaM2' && Array.isArray(value) ? 'lawnParts' : id;
    // Answered again, it is the latest answer.
    model.answers.delete(key);
    model.answers.set(key, value);
    if (model.trail.at(-1) !== id) model.trail.push(id);
    model.revisiting = undefined;
  }
  toString = () => `answer(${this.which})`;
}

class Back implements Command {
  check = () => true;
  async run(model: Model, { rules }: Real): Promise<void> {
    const before = model.trail.pop();
    expect(rules.interview.back()).toBe(before !== undefined);
    model.revisiting = before ?? model.revisiting;
  }
  toString = () => 'back';
}

class Change implements Command {
  constructor(private readonly nth: number) {}
  check = (model: Readonly<Model>) => model.answers.size > 0;
  async run(model: Model, { rules }: Real): Promise<void> {
    const lines = rules.interview.review();
    expect(lines).toHaveLength(model.answers.size);
    const line = lines[this.nth % lines.length];
    if (line === undefined) throw new Error('the review is empty');
    rules.interview.goTo(line.questionId);
    model.revisiting = line.questionId;
  }
  toString = () => `change(${this.nth})`;
}

class Resume implements Command {
  check = () => true;
  async run(model: Model, real: Real): Promise<void> {
    const reading = await readSession(writeSession(real.rules.toSave()));
    if (reading.kind !== 'whole') throw new Error(`the saved session is ${reading.kind}`);
    const { answers, dormant, heldOver } = reading.session;
    real.rules = open([...answers, ...dormant], heldOver);
    model.revisiting = undefined;
    model.trail = [...answers, ...dormant].map(({ questionId }) =>
      questionId === 'lawnParts' ? 'areaM2' : questionId,
    );
  }
  toString = () => 'resume';
}

const runs = fc.tuple(fc.tuple(anyAnswers, anyAnswers, anyAnswers)).chain(([values]) => {
  const lawns = { values };
  const answer = fc.integer({ min: 0, max: 3 }).map((which) => new Answer(which, lawns));
  const commands = fc.commands<Model, Real, false>(
    [
      // Mostly answers, so that sessions get somewhere.
      ...Array.from({ length: 6 }, () => answer),
      fc.constant(new Back()),
      fc.nat(60).map((nth) => new Change(nth)),
      fc.constant(new Resume()),
    ],
    { size: 'max', maxCommands: 70 },
  );
  // Some begin with nothing, some half-way through, where a change makes other answers fall out of use.
  return fc.record({ commands, begunWith: fc.constantFrom({}, values[0], values[1]) });
});

const savedFrom = (answers: Answers): SavedAnswer[] =>
  Object.entries(answers).map(([questionId, value]) => ({ questionId, value, typed: 'so', givenOn: today }));

const plansFrom = (answers: Answers) =>
  [true, false].map((assumeAll) => planIfAny({ pack, answers, today, assumeAll }));

describe('after any sequence of answering, going back, changing and resuming', () => {
  it('every answer is kept, and the plan is that of a fresh session with the answers in use', async () => {
    let dormantSeen = 0;
    await fc.assert(
      fc.asyncProperty(runs, async ({ commands, begunWith }) => {
        const model: Model = {
          answers: new Map(Object.entries(begunWith)),
          trail: Object.keys(begunWith),
          revisiting: undefined,
        };
        const real: Real = { rules: open(savedFrom(begunWith)) };
        await fc.asyncModelRun(() => ({ model, real }), commands);
        const { rules } = real;
        expect(rules.answers()).toEqual(Object.fromEntries(model.answers));
        const { answers: active, dormant } = rules.toSave();
        dormantSeen += dormant.length;
        const fresh = open(active);
        expect(plansFrom(rules.answers())).toEqual(plansFrom(fresh.answers()));
        if (model.revisiting === undefined)
          expect(fresh.interview.next()?.question.id).toBe(rules.interview.next()?.question.id);
      }),
      { numRuns: 120, seed: 20270313, endOnFailure: true },
    );
    expect(dormantSeen).toBeGreaterThan(20);
  }, 120_000);
});
