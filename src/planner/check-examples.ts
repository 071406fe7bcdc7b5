/** Runs the examples that every finding brings along: found, not found, cannot tell. A rule is only as good as its proof. */

import { type IsoDate, isIsoDate, parseIsoDate } from '../base/dates.js';
import { jsonPointer } from '../base/json-pointer.js';
import { type FindingVerdict, judgeFinding } from '../diagnosis/diagnose.js';
import type { Answers } from '../interview/answers.js';
import { type AnswersContext, checkAnswers } from '../interview/check-answers.js';
import type { PlaceOf } from '../rules/check.js';
import { RuleFault } from '../rules/evaluate.js';
import type { Pack } from '../rules/pack.js';
import type { RuleProblem } from '../rules/problem.js';
import type { Finding } from '../rules/schema.js';
import { scopeFor } from './working-scope.js';

/** The day on which an example without any date is told; which one matters to none. */
const SOME_DAY = parseIsoDate('2026-01-01');

export interface Example {
  readonly finding: Finding;
  readonly wanted: FindingVerdict;
  readonly answers: Answers;
  /** Place inside the finding. */
  readonly pointer: string;
  readonly today: IsoDate;
}

export function examplesOf(pack: Pack): Example[] {
  return pack.findings.flatMap((finding) =>
    (['found', 'notFound', 'cannotTell'] as const).flatMap((wanted) =>
      finding.examples[wanted].map((example, index) => {
        const answers = example as Answers;
        const pointer = jsonPointer('examples', wanted, index);
        return { finding, wanted, answers, pointer, today: dayOf(answers, pack) };
      }),
    ),
  );
}

/** @param contextFor what the reader of answers needs to know on that day */
export function checkExamples(
  pack: Pack,
  placeOf: PlaceOf,
  contextFor: (today: IsoDate) => AnswersContext,
): RuleProblem[] {
  return examplesOf(pack).flatMap((example): RuleProblem[] => {
    const { finding, wanted, answers, pointer, today } = example;
    const place = placeOf('finding', finding.id, pointer);
    const read = checkAnswers(answers, contextFor(today));
    if (!read.ok) return read.faults.map((fault) => ({ code: 'example-answers', ...place, found: fault }));
    const found = verdictOf(example, pack);
    return found === wanted
      ? []
      : [{ code: 'example', ...place, id: finding.id, wanted, found, answers: JSON.stringify(answers) }];
  });
}

function verdictOf({ finding, answers, today }: Example, pack: Pack): string {
  try {
    return judgeFinding(finding, scopeFor({ pack, answers, today, assume: 'nothing' })).verdict;
  } catch (error) {
    if (error instanceof RuleFault) return `a fault: ${error.message}`;
    throw error;
  }
}

/** The latest day that is told as past; else the first free day, since no work is done before today. */
function dayOf(answers: Answers, pack: Pack): IsoDate {
  const days = Object.entries(answers).filter(
    (entry): entry is [string, IsoDate] =>
      pack.questionById.get(entry[0])?.kind === 'date' && typeof entry[1] === 'string' && isIsoDate(entry[1]),
  );
  const isPast = ([id]: [string, IsoDate]): boolean => pack.questionById.get(id)?.suggest === undefined;
  const past = days.filter(isPast).map(([, day]) => day);
  return past.sort().at(-1) ?? days.map(([, day]) => day).sort()[0] ?? SOME_DAY;
}
