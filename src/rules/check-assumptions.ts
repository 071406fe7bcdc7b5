/** Checks of what stands in for an answer that nobody knows. */
import { callOf, namesIn } from './call.js';
import type { PlaceOf } from './check.js';
import { expressionsOf } from './expressions.js';
import { everythingBehind, readsByName } from './graph.js';
import { answerOf } from './names.js';
import type { PackData } from './pack.js';
import type { RuleProblem } from './problem.js';
import type { Expression } from './schema.js';

export function checkAssumptions(pack: PackData, placeOf: PlaceOf): RuleProblem[] {
  return [...checkWords(pack, placeOf), ...checkDecided(pack, placeOf)];
}

/** What is assumed for a choice must be one of its options. */
function checkWords(pack: PackData, placeOf: PlaceOf): RuleProblem[] {
  return pack.questions.flatMap((question) => {
    const { words } = answerOf(question);
    if (words === undefined || question.dontKnow.assume === null) return [];
    return wordsGivenBy(question.dontKnow.assume)
      .filter((word) => !words.includes(word))
      .map(
        (found): RuleProblem => ({
          code: 'option',
          ...placeOf('question', question.id, '/dontKnow/assume'),
          id: question.id,
          found,
          allowed: words.join(', '),
        }),
      );
  });
}

/** The words that an expression can come to: itself, or every branch of an `if`. */
function wordsGivenBy(expression: Expression): string[] {
  if (typeof expression === 'string') return [expression];
  const call = callOf(expression);
  if (call?.operator !== 'if') return [];
  const last = call.operands.length - 1;
  return call.operands.filter((_, index) => index % 2 === 1 || index === last).flatMap(wordsGivenBy);
}

/** What decides a plan must not rest on a question that assumes nothing. */
function checkDecided(pack: PackData, placeOf: PlaceOf): RuleProblem[] {
  const reads = readsByName(pack);
  const computed = new Set(
    pack.facts.filter((fact) => fact.computedBy !== undefined).map((fact) => `facts.${fact.id}`),
  );
  const conditional = new Map([...reads].map(([name, behind]) => [name, computed.has(name) ? [] : behind]));
  const problems = new Map<string, RuleProblem>();
  for (const placed of expressionsOf(pack).filter((each) => each.decides)) {
    for (const name of everythingBehind(namesIn(placed.expression), conditional)) {
      const question = pack.questions.find((each) => each.id === name);
      if (question === undefined || question.dontKnow.assume !== null) continue;
      problems.set(name, {
        code: 'unassumed',
        ...placeOf('question', question.id, '/dontKnow/assume'),
        id: question.id,
        reader: placed.owner,
      });
    }
  }
  return [...problems.values()];
}
