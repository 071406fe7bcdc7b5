/**
 * The finished plan as plain data: everything a document, a calendar or a comparison needs, with the reasons,
 * figures and sources already in it. Nothing downstream computes a number or reads a rule.
 * Amounts in g, mL, L, m2 and h; dates ISO; null where the plan leaves a thing open on purpose.
 */
import type { IsoDate, KnownTo } from '../base/dates.js';
import type { Units } from '../base/us-units.js';
import type { Answers } from '../interview/answers.js';
import type { OwnClimate } from '../rules/pack.js';
import type { Caution, Citation, Figure } from '../rules/schema.js';
import type { PlanArea, PlanPart } from './plan-area.js';
import type { PlanSign, PlanVerdict } from './plan-judgement.js';
import type { PlanBudget, PlanHaul, PlanShoppingLine, PlanWater } from './plan-purchase.js';

export type { PlanBudget, PlanHaul, PlanShoppingLine, PlanSign, PlanWater };

export interface PlanFinding {
  readonly id: string;
  readonly title: string;
  readonly verdict: 'found' | 'notFound' | 'cannotTell';
  /** How strong the signs are, in words; from the evidence for and against. */
  readonly strength: 'likely' | 'possible' | 'unlikely';
  /** The conditions that decided it, or what is missing, as one sentence. */
  readonly because: string;
  readonly why: string;
  readonly signsFor: readonly string[];
  readonly signsAgainst: readonly string[];
  readonly tellsApart: string;
  /** Questions that would settle it, while it cannot be told. */
  readonly open: readonly string[];
  /** Whether the plan goes on as if it were so, on an assumption. */
  readonly assumedSo: boolean;
  readonly sources: readonly Citation[];
}

export interface PlanAmount {
  readonly id: string;
  /** The area that takes it; absent where the lawn is planned as one. */
  readonly area?: string;
  readonly materialId: string;
  readonly title: string;
  /** Null: to be read off the label; then `range` may hold what printed rates would come to, for the purse only. */
  readonly amount: number | null;
  readonly unit: 'g' | 'mL' | 'L' | 'm2' | 'h' | 'each';
  /** Litres of soil or debris, not of a liquid. */
  readonly loose: boolean;
  /** What the figures' ranges allow on this area; no wider than the amount where a label rules. */
  readonly range: { readonly min: number; readonly max: number } | null;
  /** How many times as much the lawn would take if it were as large as the measuring allows. */
  readonly timesForLargest: number;
  /** One line: the equation with the numbers in it. */
  readonly working: string;
  readonly formula: string;
  readonly figures: readonly string[];
  readonly answers: readonly string[];
  /** The weakest basis among the figures behind it. */
  readonly basis: Figure['basis'] | 'label';
  readonly note: string | null;
  /**
   * Spray loads in their order, alike ones together: each fits the tank, product included, and belongs to a piece of
   * the lawn; together they are the whole. Product in mL or g for each load.
   */
  readonly loads: readonly {
    readonly count: number;
    readonly areaM2: number;
    readonly waterL: number;
    readonly product: number;
    readonly unit: 'mL' | 'g';
  }[];
}

export interface PlanWait {
  readonly step: string;
  readonly minDays: number;
  readonly maxDays: number | null;
  readonly sign: string | null;
  readonly why: string;
}

/** What a number of the plan that is no amount was worked out from: hours of work, water. */
export interface PlanWorking {
  readonly formula: string;
  readonly figures: readonly string[];
  /** Question ids. */
  readonly answers: readonly string[];
  /** The weakest among the figures. */
  readonly basis: Figure['basis'];
}

/** What a sowing has ahead of it, by the climate of the place. */
export interface PlanGrowth {
  /** Days from the last sowing on which the soil stays at `aboveC` or warmer; 365 where it always does. */
  readonly daysLeft: number;
  readonly aboveC: number;
  /** Days of growth that are wanted before winter. */
  readonly wantedDays: number;
  /** Nights of air frost in a normal year, month by month over those days; empty where not known. */
  readonly frost: readonly { readonly month: number; readonly nights: number }[];
  /** The same in sentences. */
  readonly says: readonly string[];
}

export interface PlanStep {
  readonly id: string;
  readonly title: string;
  readonly startOn: IsoDate;
  readonly endOn: IsoDate;
  readonly earliestOn: IsoDate;
  readonly latestOn: IsoDate | null;
  /** The day on which it was finished, where the plan is worked out again after that; null: still to do. */
  readonly doneOn: IsoDate | null;
  /**
   * The days of the work itself: one entry, or one for each part where a large lawn is worked part by part, or for
   * each area that has days of its own.
   */
  readonly parts: readonly PlanPart[];
  readonly after: readonly PlanWait[];
  readonly workHours: number;
  readonly workHoursRange: { readonly min: number; readonly max: number };
  /** Null where no work is counted. */
  readonly workHoursFrom: PlanWorking | null;
  readonly purpose: string;
  /** Why this lawn gets this step: the conditions that brought it in, as one sentence. */
  readonly because: string;
  readonly how: readonly string[];
  readonly dayChecks: readonly {
    readonly check: string;
    readonly otherwise: string;
    /** What the answers and the climate say about it for the day; null when they say nothing. */
    readonly expect: string | null;
  }[];
  readonly tools: readonly { readonly id: string; readonly title: string }[];
  readonly amounts: readonly PlanAmount[];
  readonly cautions: readonly string[];
  readonly doneWhen: string;
  readonly ifNot: string;
  readonly window: string | null;
  /** The window at the place in which the step begins, where the climate of the place narrows the published one. */
  readonly windowHere: { readonly from: IsoDate; readonly until: IsoDate } | null;
  /** Null for a step that nothing has to grow after, and where the climate of the place is not known. */
  readonly growth: PlanGrowth | null;
  readonly sources: readonly Citation[];
}

export interface PlanAssumption {
  readonly questionId: string;
  readonly label: string;
  readonly assumed: string;
  /** What is assumed as a sentence of the rules; null where label and answer say it. */
  readonly says: string | null;
  readonly effect: string;
  readonly handTest: string | null;
  /** False: it was left out of the answers file and assumed because the caller allowed it. */
  readonly saidUnknown: boolean;
}

export interface PlanCaution {
  readonly id: string;
  readonly severity: Caution['severity'];
  readonly line: string;
  readonly detail: string;
  readonly who: Caution['who'];
  readonly forSteps: readonly string[];
  readonly basis: Caution['basis'];
  readonly sources: readonly Citation[];
}

export interface PlanWatering {
  readonly area?: string;
  readonly fromOn: IsoDate;
  readonly untilOn: IsoDate;
  readonly weeks: string;
  readonly turnsPerDay: number;
  readonly mmPerDay: number;
  readonly litresPerDay: number;
  readonly mmPerTurn: number;
  readonly litresPerTurn: number;
  /** Somebody's work on such a day, min. */
  readonly workMinPerDay: number;
  /** What falls on a day of a normal year; null where the climate of the place is not known. */
  readonly rainMmPerDay: number | null;
  /** One watering by the means answered: minutes of hose or sprinkler, or cans; null when none is known. */
  readonly means: string | null;
  readonly from: PlanWorking;
  readonly aim: string;
}

export interface PlanSource {
  readonly number: number;
  readonly id: string;
  readonly title: string;
  readonly publisher: string;
  readonly year: number | null;
  readonly address: string | null;
  readonly standing: string;
  /** Every place in the source that the plan leans on. */
  readonly at: readonly string[];
}

export interface PlanFigure {
  readonly id: string;
  readonly what: string;
  readonly typical: number;
  readonly unit: string;
  readonly range: { readonly min: number; readonly max: number };
  readonly basis: Figure['basis'];
  readonly sources: readonly Citation[];
}

export interface Plan {
  readonly format: 1;
  readonly pack: { readonly id: string; readonly version: string; readonly sha256: string };
  readonly madeOn: IsoDate;
  /**
   * The year of the sowing as it was first planned, or of the first step where nothing is sown: a plan made again has
   * the same, next year's plan has another.
   */
  readonly season: number;
  /** In which units the sentences are worded. Numbers are metric always; for US sentences they are not rounded. */
  readonly units: Units;
  /** The lawn's own name as typed, or null. */
  readonly name: string | null;
  readonly place: string | null;
  /**
   * `month`: no climate is known, so the days in the plan are only a reckoning by the months in print. Whoever shows
   * one to a reader shows the month, with a question mark.
   */
  readonly datesKnownTo: KnownTo;
  /**
   * The means by which the seasons are worked out: of a weather station, or, without one, of the user's own file, which
   * the period names; null where there is neither.
   */
  readonly climate: {
    readonly station: string | null;
    readonly km: number | null;
    /** Where no station is near: those that speak for the place together, the nearest first; otherwise empty. */
    readonly neighbours: readonly { readonly name: string; readonly km: number }[];
    readonly period: string;
    readonly licenceLine: string | null;
    /** Whether water use can be worked out; an own climate without a place or a range of temperature gives none. */
    readonly hasWaterUse: boolean;
    /** The user's own means, so that the plan can be worked out again without the file; null for a station. */
    readonly own: OwnClimate | null;
  } | null;
  readonly lawn: {
    readonly areaM2: number;
    readonly areaUncertaintyM2: number;
    readonly areaAssumed: boolean;
    readonly measuredBy: string;
    /** What to do about the size not being known better, in sentences. */
    readonly says: readonly string[];
  };
  /** Empty where the lawn is planned as one. Else what follows is that of all areas, put together. */
  readonly areas: readonly PlanArea[];
  /** That of the area with the most work, where there are several. */
  readonly verdict: PlanVerdict;
  /**
   * Where the work waits for the next season because this one is too short for the people there are: how many would do
   * it in this one, and the day of the first sowing then. Null otherwise.
   */
  readonly sooner: { readonly people: number; readonly sowOn: IsoDate; readonly says: string } | null;
  readonly findings: readonly PlanFinding[];
  /** Every symptom that was told, in the order of the rules. */
  readonly signs: readonly PlanSign[];
  readonly steps: readonly PlanStep[];
  readonly watering: readonly PlanWatering[];
  readonly water: PlanWater | null;
  readonly outlook: readonly {
    readonly area?: string;
    readonly on: IsoDate;
    readonly weeks: number;
    readonly sees: string;
    readonly ifNot: string;
  }[];
  readonly shopping: readonly PlanShoppingLine[];
  readonly haul: PlanHaul | null;
  readonly budget: PlanBudget | null;
  readonly assumptions: readonly PlanAssumption[];
  readonly cautions: readonly PlanCaution[];
  readonly figures: readonly PlanFigure[];
  readonly sources: readonly PlanSource[];
  readonly notDone: readonly { readonly id: string; readonly says: string }[];
  /** As given, so that the plan can be worked out again from the file alone; for all areas where there are several. */
  readonly answers: Answers;
}
