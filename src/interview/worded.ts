/** A question as it is worded for whoever reads US units; its values stay metric. */
import type { Units } from '../base/us-units.js';
import type { Question } from '../rules/schema.js';

export function wordedFor(question: Question, units: Units): Question {
  const { us, bounds, options, dontKnow } = question;
  if (units === 'metric' || us === undefined) return question;
  const { text = question.text, help = question.help, says, effect, handTest } = us;
  return {
    ...question,
    text,
    help,
    ...(bounds && says ? { bounds: { ...bounds, says } } : {}),
    ...(options ? { options: options.map((option) => ({ ...option, ...us.options?.[option.value] })) } : {}),
    dontKnow: { ...dontKnow, ...(effect ? { effect } : {}), ...(handTest ? { handTest } : {}) },
  };
}
