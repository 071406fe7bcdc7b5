/**
 * The plan: answers and rules in, one plain object out.
 *
 * Needs every question that decides to be answered or assumed; what is open then is left out, never guessed.
 * The steps are dated twice: once to see how long the season makes them wait, then with that wait in the rules.
 */
import { addDays, type IsoDate, isInWindow, lastDateInWindow, lastOpening, yearOf } from '../base/dates.js';
import type { Units } from '../base/us-units.js';
import type { Answers, AnswerValue } from '../interview/answers.js';
import { reasonsFor, sentenceOf, type View } from '../interview/reasons.js';
import type { Scope } from '../rules/evaluate.js';
import type { Pack } from '../rules/pack.js';
import type { Step } from '../rules/schema.js';
import { outlookOf } from './aftercare.js';
import { amountsOf, hoursOf, rounded } from './amounts.js';
import { assumptionsOf, leftOutOf } from './assumptions.js';
import { cautionsOf, goesWith } from './cautions.js';
import { dateSteps, type PartDates, SOWINGS } from './dating.js';
import { type DaySigns, daySign } from './day-signs.js';
import { growthAhead } from './growth-ahead.js';
import { judgementOf } from './judged.js';
import { lawnOf, measuringWords } from './measuring.js';
import { soonerOf } from './more-hands.js';
import { placeName } from './place.js';
import type { Plan, PlanStep } from './plan.js';
import { climateOf } from './plan-climate.js';
import type { PriceList } from './price-list.js';
import type { Progress } from './progress.js';
import { type Ledger, openLedger } from './provenance.js';
import { purchaseOf } from './purchase.js';
import { ScheduleClash } from './schedule-clash.js';
import { type HoursOnDays, numbersOf } from './step-net.js';
import { activeSteps, daysOf, holds, isNotRuledOut } from './steps.js';
import { type Say, sayer } from './texts.js';
import { waterOf } from './water-total.js';
import { lastWateredOn, wateringOf } from './watering.js';
import { type Season, windowsOf, windowWhy } from './windows.js';
import { titleIn } from './worded-rule.js';
import { answersInUse, said, scopeFor, scopesByTiming } from './working-scope.js';

export interface PlanInput {
  readonly pack: Pack;
  readonly answers: Answers;
  readonly today: IsoDate;
  /** Whether absent answers may be assumed too, not only those said to be unknown. */
  readonly assumeAll: boolean;
  /** Units of the sentences; metric unless said otherwise. */
  readonly units?: Units;
  /** A person's own packs, prices and shed; without it no money is named. */
  readonly prices?: PriceList | undefined;
  /** What has happened since it was first made: then the rest is worked out again. */
  readonly progress?: Progress | undefined;
  /** Hours that other work has already. */
  readonly taken?: HoursOnDays | undefined;
}

export { ScheduleClash };

/** @throws {ScheduleClash} when no dates hold */
export const assemblePlan = (input: PlanInput): Plan => planOn(datedChoice(input), input);

/** The plan on dates that are settled. */
export function planOn(settled: DatedChoice, input: PlanInput): Plan {
  const { choice, timing, scope, season, dates, sooner } = settled;
  const { pack, today, progress, units = 'metric' } = input;
  const { answers } = choice;
  const place = said(answers.place);

  const ledger = openLedger(pack);
  const say = sayer({ pack, scope, note: ledger.noteFigure, units });
  const active = activeSteps(pack, scope, progress?.leftOut);
  const knownScope = scopeFor({ ...choice, assume: 'nothing', timing });
  const judgement = judgementOf({ input, base: settled, dateAgain: datedChoice }, { say, ledger });
  const { climate } = season;
  const datesKnownTo = climate === undefined ? 'month' : 'day';
  const isSoaked = active.some(({ id }) => id === 'soak');
  const daySigns = { pack, scope: knownScope, climate, today, units, isSoaked, note: ledger.noteFigure };
  const saidBefore = reasonsFor({ var: 'facts.need' }, { pack, scope, units });
  const given = {
    pack,
    scope,
    units,
    season,
    dates,
    active,
    say,
    ledger,
    signs: daySigns,
    progress,
    saidBefore,
  };
  const workDays = active.map((step) => planStep(step, given)).sort(byStart);
  const sown = workDays.find(({ id }) => id === 'sow')?.parts ?? [];
  const watering = wateringOf({
    pack,
    scope,
    units,
    climate,
    sowOn: sown[0]?.startOn,
    note: ledger.noteFigure,
  });
  if (watering.length > 0) for (const { sources } of pack.watering) ledger.cite(sources);
  const steps = wateredToTheEnd(workDays, pack, lastWateredOn(watering, sown));
  const toBuyFor = steps.filter(({ doneOn }) => doneOn === null);
  const lawn = lawnOf(answers, scope, ledger, units);
  const shop = { pack, scope, units, prices: input.prices, say, note: ledger.noteFigure };
  const purchase = purchaseOf(toBuyFor, shop);
  return {
    format: 1,
    pack: { id: pack.id, version: pack.version, sha256: pack.sha256 },
    madeOn: progress?.today ?? today,
    season: seasonYearOf(steps, today),
    units,
    name: said(answers.lawnName),
    place: place === null ? null : placeName(place, pack.climate),
    datesKnownTo,
    climate: climateOf(season, pack, ledger, today),
    lawn: {
      ...lawn,
      says: measuringWords(lawn, { pack, units, steps: toBuyFor, shopping: purchase.shopping }),
    },
    areas: [],
    ...judgement,
    sooner: soonerOf(sooner, steps, { pack, scope, datesKnownTo }),
    steps,
    watering,
    water: waterOf({ pack, scope, units, watering, steps, prices: input.prices, note: ledger.noteFigure }),
    outlook: outlookOf(pack, scope, sown[0]?.startOn, say),
    ...purchase,
    assumptions: assumptionsOf({ pack, answers, scope, leftOut: leftOutOf(choice), active, say, units }),
    cautions: cautionsOf(steps, { pack, say, ledger, units }),
    notDone: pack.notDone
      .filter(({ when }) => holds(when, scope))
      .map(({ id, says }) => ({ id, says: say(says) })),
    figures: ledger.figures(),
    sources: ledger.sources(),
    answers: inOrderOfQuestions(answers, pack),
  };
}

/** The step that the watering table tells in full goes on until the last day in it. */
const wateredToTheEnd = (
  steps: readonly PlanStep[],
  pack: Pack,
  lastOn: IsoDate | undefined,
): readonly PlanStep[] =>
  steps.map((step) => {
    const isTold = pack.stepById.get(step.id)?.toldInWateringTable === true;
    return isTold && lastOn !== undefined ? { ...step, endOn: lastOn } : step;
  });

function seasonYearOf(steps: readonly PlanStep[], today: IsoDate): number {
  const sowing = steps.find(({ id }) => SOWINGS.includes(id));
  return yearOf((sowing ?? steps[0])?.startOn ?? today);
}

/** Steps of the same day stay in the order of the trade. */
export const byStart = (a: PlanStep, b: PlanStep): number =>
  a.startOn < b.startOn ? -1 : a.startOn > b.startOn ? 1 : 0;

export type DatedChoice = ReturnType<typeof datedChoice>;

/** @throws {ScheduleClash} when no dates hold */
export function datedChoice({
  pack,
  answers: given,
  today,
  assumeAll,
  units = 'metric',
  ...standing
}: PlanInput) {
  const datingFor = (answers: Answers) => {
    const asked = { pack, answers, today, assume: assumeAll ? 'all' : 'said', units } as const;
    const choice = { ...asked, answers: answersInUse(asked) };
    const scopeOf = scopesByTiming(choice);
    return { choice, scopeOf, dating: dateSteps(pack, scopeOf, today, standing) };
  };
  const { choice, scopeOf, dating } = datingFor(given);
  if ('dates' in dating) return { choice, ...dating };
  const { undatedWith: timing } = dating;
  const hasDates = (answers: Answers): boolean => 'dates' in datingFor(answers).dating;
  const { progress } = standing;
  throw new ScheduleClash({ pack, scopeOf, today, progress, timing, answers: given, hasDates, units });
}

/** The scope in which the plan of the same input was made, for whoever asks why. */
export function plannedScope(input: PlanInput): Scope {
  return datedChoice(input).scope;
}

/** The same answers give the same bytes, in whatever order they were given. */
const inOrderOfQuestions = (answers: Answers, pack: Pack): Answers =>
  Object.fromEntries(
    pack.questions.flatMap(({ id }) =>
      Object.hasOwn(answers, id) ? [[id, answers[id] as AnswerValue]] : [],
    ),
  );

interface StepContext extends View {
  readonly season: Season;
  readonly dates: ReadonlyMap<string, readonly PartDates[]>;
  readonly active: readonly Step[];
  readonly say: Say;
  readonly ledger: Ledger;
  readonly signs: DaySigns;
  readonly progress: Progress | undefined;
  /** What the verdict has said once. */
  readonly saidBefore: readonly string[];
}

function planStep(step: Step, context: StepContext): PlanStep {
  const {
    pack,
    scope,
    units = 'metric',
    season,
    dates,
    active,
    say,
    ledger,
    signs,
    progress,
    saidBefore,
  } = context;
  const parts = dates.get(step.id) as readonly PartDates[];
  const [first, last] = [parts[0] as PartDates, parts.at(-1) as PartDates];
  const lastsUntil = addDays(last.startOn, daysOf(step.lastsDays, scope) ?? 0);
  const endOn = [lastsUntil, last.endOn].sort()[1] as IsoDate;
  const hours = hoursOf(step, pack, scope);
  const amounts = amountsOf(step, pack, scope, units);
  for (const id of [...(hours.from?.figures ?? []), ...amounts.flatMap(({ figures }) => figures)])
    ledger.noteFigure(id);
  const tools = step.tools.filter(({ when }) => when === undefined || holds(when, scope));
  const cautions = step.cautions.filter((id) => goesWith(id, step, pack, scope));
  return {
    id: step.id,
    title: step.title,
    startOn: first.startOn,
    endOn,
    earliestOn: first.startOn,
    // What lasts past its latest start, such as the wait for a season, has no start worth naming.
    latestOn:
      step.labour === undefined && (first.latestOn ?? endOn) < endOn ? null : (first.latestOn ?? null),
    doneOn: progress?.done.get(step.id)?.endOn ?? null,
    parts: parts.map(({ startOn, endOn }) => ({ startOn, endOn })),
    after: step.after
      .filter((wait) => active.some(({ id }) => id === wait.step))
      .map((wait) => ({
        step: wait.step,
        minDays: daysOf(wait.minDays, scope) ?? 0,
        maxDays: daysOf(wait.maxDays, scope) ?? null,
        sign: wait.sign === undefined ? null : say(wait.sign),
        why: say(wait.why),
      })),
    workHours: rounded(hours.value),
    workHoursRange: { min: rounded(hours.least), max: rounded(hours.most) },
    workHoursFrom: hours.from,
    purpose: say(step.purpose),
    because: sentenceOf(
      reasonsFor(pack.ownWhenOf.get(step.id) ?? step.when, context).filter(
        (clause) => !saidBefore.includes(clause),
      ),
    ),
    how: step.how.map(say),
    dayChecks: step.dayChecks
      .filter(({ when = true }) => isNotRuledOut(when, scope))
      // What was answered is settled, and not left to the reader.
      .filter(({ unlessKnown }) => unlessKnown === undefined || !signs.scope(unlessKnown).known)
      .map(({ check, otherwise, sign }) => ({
        check: say(check),
        otherwise: say(otherwise),
        expect: daySign(sign, first.startOn, signs),
      })),
    tools: tools.map(({ id }) => ({ id, title: titleIn(units, pack.materialById.get(id)) ?? id })),
    amounts,
    cautions,
    doneWhen: say(step.doneWhen),
    ifNot: say(step.ifNot),
    window: windowWhy(step, season),
    windowHere: windowHereOf(step, first.startOn, { scope, season }),
    growth: growthAhead(step, last.startOn, {
      pack,
      season,
      say,
      numberOf: numbersOf(scope),
      note: ledger.noteFigure,
    }),
    sources: ledger.cite([...step.sources, ...(step.window?.sources ?? [])]),
  };
}

/** Only where the place changes the window; the published months are in the step's own words. */
function windowHereOf(
  step: Step,
  startOn: IsoDate,
  { scope, season }: { readonly scope: Scope; readonly season: Season },
): PlanStep['windowHere'] {
  // What has no season of its own only keeps off frozen ground.
  if (step.window === undefined || season.climate === undefined) return null;
  const numberOf = numbersOf(scope);
  const inPrint = { ...season, climate: undefined, shutDays: undefined };
  const [here, anywhere] = [season, inPrint].map((each) =>
    windowsOf(step, each, numberOf)?.find((window) => isInWindow(startOn, window)),
  );
  if (here === undefined || (here.from === anywhere?.from && here.until === anywhere.until)) return null;
  return { from: lastOpening(startOn, here), until: lastDateInWindow(startOn, here) };
}
