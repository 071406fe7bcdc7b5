/** A pack in memory: the records as read, and the same by id. */
import type {
  Caution,
  Expression,
  Fact,
  Figure,
  Finding,
  Material,
  Question,
  Source,
  Step,
} from './schema.js';
import type { SignRule, VerdictRule } from './schema-judgement.js';
import type {
  Climate,
  DaySign,
  Manifest,
  NotDone,
  Outlook,
  Together,
  Trouble,
  WateringRule,
} from './schema-pack.js';
import { withServed } from './skeleton.js';

/** Plain JSON, as one file can hold it; lists in reading order. */
export interface PackData extends Manifest {
  /** Hash of every rules file, so that a plan or session can name the rules it came from. */
  readonly sha256: string;
  readonly sources: readonly Source[];
  readonly figures: readonly Figure[];
  readonly facts: readonly Fact[];
  readonly questions: readonly Question[];
  readonly findings: readonly Finding[];
  readonly steps: readonly Step[];
  readonly materials: readonly Material[];
  readonly cautions: readonly Caution[];
  readonly verdicts: readonly VerdictRule[];
  readonly outlook: readonly Outlook[];
  readonly watering: readonly WateringRule[];
  readonly notDone: readonly NotDone[];
  readonly together: readonly Together[];
  readonly signs: readonly SignRule[];
  readonly daySigns: readonly DaySign[];
  readonly troubles: readonly Trouble[];
  readonly climate: Climate;
}

/** The climate of one place as its owner brought it: twelve values each, January to December. */
export interface OwnClimate {
  /** What it was worked out from, for the plan to say: a file and its days. */
  readonly from: string;
  readonly tMinC: readonly number[];
  readonly tMaxC: readonly number[];
  /** False where only mean temperatures were given: then no water use can be worked out. */
  readonly hasRange: boolean;
  /** mm a month. */
  readonly rainMm?: readonly number[] | undefined;
  /** Days of air frost in the month. */
  readonly airFrostDays?: readonly number[] | undefined;
}

export interface Pack extends PackData {
  /** Stands in for the stations, wherever the lawn is. */
  readonly ownClimate?: OwnClimate | undefined;
  readonly sourceById: ReadonlyMap<string, Source>;
  readonly figureById: ReadonlyMap<string, Figure>;
  readonly factById: ReadonlyMap<string, Fact>;
  readonly questionById: ReadonlyMap<string, Question>;
  readonly findingById: ReadonlyMap<string, Finding>;
  readonly stepById: ReadonlyMap<string, Step>;
  /** The step's own condition, without what it serves: that is the reason to tell for it. */
  readonly ownWhenOf: ReadonlyMap<string, Expression>;
  readonly materialById: ReadonlyMap<string, Material>;
  readonly cautionById: ReadonlyMap<string, Caution>;
}

const byId = <Item extends { readonly id: string }>(items: readonly Item[]): ReadonlyMap<string, Item> =>
  new Map(items.map((item) => [item.id, item]));

/** The pack with its lookups; questions put in the order of the sections. */
export function indexPack(data: PackData): Pack {
  const rank = new Map(data.sections.map((section, index) => [section.id, index]));
  const questions = [...data.questions].sort(
    (a, b) => (rank.get(a.section) ?? 0) - (rank.get(b.section) ?? 0),
  );
  const steps = withServed([...data.steps].sort((a, b) => a.order - b.order));
  return {
    ...data,
    questions,
    steps,
    sourceById: byId(data.sources),
    figureById: byId(data.figures),
    factById: byId(data.facts),
    questionById: byId(questions),
    findingById: byId(data.findings),
    stepById: byId(steps),
    ownWhenOf: new Map(data.steps.map(({ id, when }) => [id, when])),
    materialById: byId(data.materials),
    cautionById: byId(data.cautions),
  };
}
