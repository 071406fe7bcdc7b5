/** What can be wrong with a pack: a record per problem, its sentence made in one place. */
import { OPERATOR_NAMES } from './operators.js';

export interface Place {
  /** File inside the pack folder. */
  readonly file: string;
  /** JSON Pointer inside the file (RFC 6901). */
  readonly pointer: string;
  /** The record, such as `figure fork-depth-mm`, where the file holds several. */
  readonly record?: string;
}

export type RuleProblem = Place &
  (
    | { readonly code: 'not-json'; readonly found: string }
    | { readonly code: 'shape'; readonly found: string }
    | { readonly code: 'missing-file' }
    | { readonly code: 'doubled-key'; readonly id: string }
    | { readonly code: 'twice'; readonly kind: string; readonly id: string; readonly other: string }
    | { readonly code: 'unknown-id'; readonly kind: string; readonly id: string; readonly nearest?: string }
    | { readonly code: 'no-input'; readonly formula: string; readonly id: string }
    | { readonly code: 'last-verdict' }
    | { readonly code: 'unknown-name'; readonly id: string; readonly nearest?: string }
    | { readonly code: 'operator'; readonly found: string; readonly nearest?: string }
    | {
        readonly code: 'arguments';
        readonly operator: string;
        readonly count: number;
        readonly allowed: string;
      }
    | { readonly code: 'many-keys'; readonly found: string }
    | { readonly code: 'kind'; readonly wanted: string; readonly found: string }
    | { readonly code: 'depth'; readonly limit: number }
    | { readonly code: 'bare-number'; readonly found: number }
    | { readonly code: 'option'; readonly id: string; readonly found: string; readonly allowed: string }
    | { readonly code: 'unused'; readonly kind: string; readonly id: string }
    | { readonly code: 'circle'; readonly path: string }
    | { readonly code: 'order'; readonly id: string; readonly first: string; readonly why: string }
    | { readonly code: 'unassumed'; readonly id: string; readonly reader: string }
    | { readonly code: 'units'; readonly id: string; readonly found: string; readonly wanted: string }
    | { readonly code: 'case'; readonly id: string; readonly found: string }
    | {
        readonly code: 'example';
        readonly id: string;
        readonly wanted: string;
        readonly found: string;
        readonly answers: string;
      }
    | { readonly code: 'example-answers'; readonly found: string }
  );

/** One sentence or two: where, what was found, what is allowed, what to do. */
export function explain(problem: RuleProblem): string {
  const at = problem.pointer === '' ? '' : ` at ${problem.pointer}`;
  const record = problem.record === undefined ? '' : ` (${problem.record})`;
  return `${problem.file}${at}${record}: ${whatIsWrong(problem)}`;
}

function whatIsWrong(problem: RuleProblem): string {
  switch (problem.code) {
    case 'not-json':
      return `this is not JSON (${problem.found}). Mend the file; a JSON editor shows the place.`;
    case 'shape':
      return `${problem.found}. The shapes are listed by "seedbed rules schema".`;
    case 'missing-file':
      return 'the file is missing. A pack needs it; copy it from the bundled rules and change what differs.';
    case 'doubled-key':
      return `the key "${problem.id}" stands twice in one object, and only one can be meant. Remove the other.`;
    case 'twice':
      return `the ${problem.kind} "${problem.id}" is already in ${problem.other}. One id has one meaning: rename one of them.`;
    case 'unknown-id':
      return `there is no ${problem.kind} "${problem.id}".${hint(problem.nearest)} Correct the id, or add the ${problem.kind}.`;
    case 'no-input':
      return `the formula "${problem.formula}" needs the input "${problem.id}". Add it.`;
    case 'last-verdict':
      return 'the last verdict must always be left: its "when" is true, not a condition. Otherwise a lawn could get none.';
    case 'unknown-name':
      return `this reads "${problem.id}", but no question, fact, finding or figure has that name, so it could never be known.${hint(problem.nearest)} Correct the name, or add the record.`;
    case 'operator':
      return `the operator "${problem.found}" is not allowed.${hint(problem.nearest)} Allowed are: ${OPERATOR_NAMES.join(' ')}.`;
    case 'arguments':
      return `"${problem.operator}" has ${problem.count} operands; it takes ${problem.allowed}.`;
    case 'many-keys':
      return `an operator object has one key, this ${problem.found}. JSON Logic would pass it through as plain data.`;
    case 'kind':
      return `a ${problem.wanted} is wanted here, this gives a ${problem.found}.`;
    case 'depth':
      return `the condition is nested deeper than ${problem.limit}. Give part of it a name in facts.json.`;
    case 'bare-number':
      return `the number ${problem.found} stands in a condition without unit or source. Make it a figure and read that.`;
    case 'option':
      return `"${problem.found}" is no answer of "${problem.id}". Allowed: ${problem.allowed}.`;
    case 'unused':
      return `nothing uses the ${problem.kind} "${problem.id}". Use it, or delete it.`;
    case 'circle':
      return `these depend on each other in a circle: ${problem.path}. Break it at one of them.`;
    case 'order':
      return `"${problem.id}" stands in the list before "${problem.first}", but ${problem.why}. Give it the higher "order".`;
    case 'unassumed':
      return `"${problem.reader}" depends on the question "${problem.id}", which assumes nothing when it is not known, so a plan could be left undecided. Give it a dontKnow.assume.`;
    case 'units':
      return `"${problem.id}" is in ${problem.found}, but ${problem.wanted} is wanted.`;
    case 'example':
      return `finding "${problem.id}" should be ${problem.wanted} for ${problem.answers}, but is ${problem.found}.`;
    case 'example-answers':
      return `this example is no possible answer: ${problem.found}`;
    case 'case':
      return `training case "${problem.id}": ${problem.found}`;
    default:
      return problem satisfies never;
  }
}

const hint = (nearest: string | undefined): string =>
  nearest === undefined ? '' : ` Did you mean "${nearest}"?`;
