/** What the sections refer to by number: steps in their order, sources in the list at the end. */
import { yearOf } from '../base/dates.js';
import type { Units } from '../base/us-units.js';
import type { Plan, PlanAmount, PlanWorking } from '../planner/plan.js';
import type { Citation } from '../rules/schema.js';
import { inWords } from './words.js';

export interface References {
  /** Units of every quantity; the sentences of the plan are worded in them already. */
  readonly units: Units;
  /** The year that dates may leave out: the one in which most steps begin. */
  readonly year: number;
  readonly datesKnownTo: Plan['datesKnownTo'];
  readonly stepNumbers: ReadonlyMap<string, number>;
  readonly sourceNumbers: ReadonlyMap<string, number>;
  readonly figureSources: ReadonlyMap<string, readonly Citation[]>;
}

const BASIS_WORDS: Readonly<Record<PlanAmount['basis'], string>> = {
  published: '',
  'common-practice': 'common practice',
  assumption: 'assumption',
  label: 'from the label',
};

export function referencesOf(plan: Plan): References {
  return {
    units: plan.units,
    year: yearOfMostSteps(plan),
    datesKnownTo: plan.datesKnownTo,
    stepNumbers: new Map(plan.steps.map((step, index) => [step.id, index + 1])),
    sourceNumbers: new Map(sourcesInOrder(plan).map((source, index) => [source.id, index + 1])),
    figureSources: new Map(plan.figures.map((figure) => [figure.id, figure.sources])),
  };
}

/** The earlier year where two have as many; the year of the plan where there are no steps. */
function yearOfMostSteps({ steps, madeOn }: Plan): number {
  const years = steps.map(({ startOn }) => yearOf(startOn));
  const count = (year: number) => years.filter((each) => each === year).length;
  const [most] = [...new Set(years)].sort((a, b) => count(b) - count(a) || a - b);
  return most ?? yearOf(madeOn);
}

/** The sources as listed at the end. */
export function sourcesInOrder(plan: Plan): Plan['sources'] {
  return plan.sources.toSorted((a, b) => a.number - b.number);
}

/** `(source 3)`, `(common practice)`, `(assumption, sources 1 and 4)`; nothing when there is nothing to say. */
export function markOf(
  basis: PlanAmount['basis'],
  citations: readonly Citation[],
  references: References,
): string {
  const numbers = citations.map(({ id }) => references.sourceNumbers.get(id)).filter((n) => n !== undefined);
  const unique = [...new Set(numbers)].sort((a, b) => a - b);
  const sources =
    unique.length === 0 ? '' : `${unique.length === 1 ? 'source' : 'sources'} ${inWords(unique)}`;
  const parts = [BASIS_WORDS[basis], sources].filter((part) => part !== '');
  return parts.length === 0 ? '' : `(${parts.join(', ')})`;
}

/** The same for hours or water, by the figures behind them. */
export function markOfWorking(from: PlanWorking | null, references: References): string {
  if (from === null) return '';
  const citations = from.figures.flatMap((id) => references.figureSources.get(id) ?? []);
  return markOf(from.basis, citations, references);
}

/** `step 2`, `steps 1 and 3`; ids that are not in the plan are left out. */
export function stepsInWords(ids: readonly string[], references: References): string {
  const numbers = ids.map((id) => references.stepNumbers.get(id)).filter((n) => n !== undefined);
  if (numbers.length === 0) return '';
  const inOrder = [...new Set(numbers)].sort((a, b) => a - b);
  return `${inOrder.length === 1 ? 'step' : 'steps'} ${inWords(inOrder)}`;
}
