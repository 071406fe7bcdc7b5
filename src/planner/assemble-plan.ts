/**
 * The plan: answers and rules in, one plain object out.
 *
 * Needs every question that decides to be answered or assumed; what is open then is left out, never guessed.
 * The steps are dated twice: once to see how long the season makes them wait, then with that wait in the rules.
 */
import { addDays, type IsoDate, isInWindow, lastDateInWindow } from '../base/dates.js';
import { diagnose, type Judged } from '../diagnosis/diagnose.js';
import { type Answers, type AnswerValue, UNKNOWN } from '../interview/answers.js';
import { reasonsFor, sentenceOf } from '../interview/reasons.js';
import { namesIn } from '../rules/call.js';
import { evaluate, type Scope } from '../rules/evaluate.js';
import { expressionsOf } from '../rules/expressions.js';
import { everythingBehind, readsByName } from '../rules/graph.js';
import type { Pack } from '../rules/pack.js';
import type { Step } from '../rules/schema.js';
import { outlookOf } from './aftercare.js';
import { amountsOf, hoursOf, rounded } from './amounts.js';
import { assumptionsOf } from './assumptions.js';
import { cautionsOf } from './cautions.js';
import { dateSteps, type PartDates } from './dating.js';
import type { Plan, PlanFinding, PlanStep } from './plan.js';
import type { Progress } from './progress.js';
import { type Ledger, openLedger } from './provenance.js';
import { shoppingOf } from './shopping.js';
import { numbersOf, seasonOf } from './step-net.js';
import { activeSteps, answered, daysOf, holds } from './steps.js';
import { type Say, sayer } from './texts.js';
import { wateringOf } from './watering.js';
import { type Season, windowsOf } from './windows.js';
import { scopeFor } from './working-scope.js';

export interface PlanInput {
  readonly pack: Pack;
  readonly answers: Answers;
  readonly today: IsoDate;
  /** Whether absent answers may be assumed too, not only those said to be unknown. */
  readonly assumeAll: boolean;
  /** What has happened since it was first made: then the rest is worked out again. */
  readonly progress?: Progress | undefined;
}

/** Thrown when waits and windows cannot all hold; names the steps that could not settle. */
export class ScheduleClash extends Error {
  override readonly name = 'ScheduleClash';
  constructor(readonly steps: readonly string[]) {
    super(`No dates satisfy every wait and season for: ${steps.join(', ')}.`);
  }
}

export function assemblePlan(input: PlanInput): Plan {
  const { pack, answers, today, progress } = input;
  const { choice, timing, dates } = datedChoice(input);
  const scope = scopeFor({ ...choice, timing });

  const ledger = openLedger(pack);
  const say = sayer(pack, scope, ledger.noteFigure);
  const active = activeSteps(pack, scope, progress?.leftOut);
  const season = seasonOf(pack, scope, today);
  const knownScope = scopeFor({ ...choice, assume: 'nothing', timing });
  const verdict = verdictOf(pack, knownScope, scope, ledger);
  const findings = findingsOf(pack, knownScope, scope, say, ledger);
  const steps = active
    .map((step) => planStep(step, { pack, scope, season, dates, active, say, ledger, progress }))
    .sort((a, b) => (a.startOn < b.startOn ? -1 : a.startOn > b.startOn ? 1 : 0));
  const sowOn = steps.find(({ id }) => id === 'sow')?.startOn;
  const watering = wateringOf({ pack, scope, climate: season.climate, sowOn, note: ledger.noteFigure });
  if (watering.length > 0) for (const { sources } of pack.watering) ledger.cite(sources);
  const name = answers.lawnName;
  const place = answers.place;
  return {
    format: 1,
    pack: { id: pack.id, version: pack.version, sha256: pack.sha256 },
    madeOn: progress?.today ?? today,
    name: typeof name === 'string' && name !== UNKNOWN ? name : null,
    place: typeof place === 'string' && place !== UNKNOWN ? place : null,
    climate: climateOf(season, ledger),
    lawn: lawnOf(answers, scope, ledger),
    verdict,
    findings,
    steps,
    watering,
    outlook: outlookOf(pack, scope, sowOn, say),
    shopping: shoppingOf(
      steps.filter(({ doneOn }) => doneOn === null),
      pack,
    ),
    assumptions: assumptionsOf(pack, answers, scope, questionsThatMatter(pack, active), say),
    cautions: cautionsOf(steps, pack, say, ledger),
    notDone: pack.notDone
      .filter(({ when }) => holds(when, scope))
      .map(({ id, says }) => ({ id, says: say(says) })),
    figures: ledger.figures(),
    sources: ledger.sources(),
    answers: inOrderOfQuestions(answers, pack),
  };
}

/** @throws {ScheduleClash} when no dates hold */
function datedChoice({ pack, answers, today, assumeAll, progress }: PlanInput) {
  const choice = { pack, answers, today, assume: assumeAll ? 'all' : 'said' } as const;
  const dating = dateSteps(pack, (timing) => scopeFor({ ...choice, timing }), today, progress);
  if (dating === undefined) throw new ScheduleClash(activeSteps(pack, scopeFor(choice)).map(({ id }) => id));
  return { choice, ...dating };
}

/** The scope in which the plan of the same input was made, for whoever asks why. */
export function plannedScope(input: PlanInput): Scope {
  const { choice, timing } = datedChoice(input);
  return scopeFor({ ...choice, timing });
}

/** The same answers give the same bytes, in whatever order they were given. */
const inOrderOfQuestions = (answers: Answers, pack: Pack): Answers =>
  Object.fromEntries(
    pack.questions.flatMap(({ id }) =>
      Object.hasOwn(answers, id) ? [[id, answers[id] as AnswerValue]] : [],
    ),
  );

function lawnOf(answers: Answers, scope: Scope, ledger: Ledger): Plan['lawn'] {
  const area = scope('facts.areaM2');
  const areaM2 = area.known ? (area.value as number) : 0;
  if (area.known)
    for (const name of area.from)
      if (name.startsWith('figures.')) ledger.noteFigure(name.slice('figures.'.length));
  const isGiven = Array.isArray(answers.lawnParts) || typeof answers.areaM2 === 'number';
  return {
    areaM2: rounded(areaM2),
    areaUncertaintyM2: area.known ? rounded((area.most ?? areaM2) - areaM2) : 0,
    areaAssumed: !isGiven,
    measuredBy: String(answered(scope, 'measuredBy') ?? 'paces'),
  };
}

function verdictOf(pack: Pack, knownScope: Scope, scope: Scope, ledger: Ledger): Plan['verdict'] {
  const chosen = pack.verdicts.findIndex(({ when }) => holds(when, scope));
  const rule = pack.verdicts[chosen];
  if (rule === undefined)
    throw new Error('no verdict holds: the last one in verdicts.json must always be true');
  const need = { var: 'facts.need' };
  return {
    id: rule.id,
    title: rule.title,
    because: rule.because,
    reasons: sentenceOf(reasonsFor(rule.when === true ? need : rule.when, pack, scope)),
    restsOn: openBehind(pack.verdicts.slice(0, chosen + 1), knownScope).map(
      (id) => pack.questionById.get(id)?.label ?? id,
    ),
    sources: ledger.cite(rule.sources),
  };
}

/** The open questions that could still have led to another verdict; none when it is certain. */
function openBehind(verdicts: Pack['verdicts'], knownScope: Scope): string[] {
  const open = verdicts.flatMap(({ when }) => {
    const outcome = evaluate(when, knownScope);
    return outcome.known ? [] : outcome.open;
  });
  return [...new Set(open)];
}

function findingsOf(
  pack: Pack,
  knownScope: Scope,
  assumedScope: Scope,
  say: Say,
  ledger: Ledger,
): PlanFinding[] {
  const planFinding = ({ finding, verdict, strength, signsFor, signsAgainst, open }: Judged): PlanFinding => {
    const missing = open.map((id) => pack.questionById.get(id)?.label ?? id);
    return {
      id: finding.id,
      title: finding.title,
      verdict,
      strength,
      because:
        verdict === 'cannotTell'
          ? `Not answered: ${missing.join(', ')}.`
          : sentenceOf(reasonsFor(finding.when, pack, knownScope)),
      why: say(finding.why),
      signsFor: signsFor.map(say),
      signsAgainst: signsAgainst.map(say),
      tellsApart: say(finding.tellsApart),
      open,
      assumedSo: verdict === 'cannotTell' && holds(finding.when, assumedScope),
      sources: verdict === 'found' ? ledger.cite(finding.sources) : finding.sources,
    };
  };
  return diagnose(pack, knownScope).map(planFinding);
}

interface StepContext {
  readonly pack: Pack;
  readonly scope: Scope;
  readonly season: Season;
  readonly dates: ReadonlyMap<string, readonly PartDates[]>;
  readonly active: readonly Step[];
  readonly say: Say;
  readonly ledger: Ledger;
  readonly progress: Progress | undefined;
}

function planStep(
  step: Step,
  { pack, scope, season, dates, active, say, ledger, progress }: StepContext,
): PlanStep {
  // The verdict has said these once.
  const verdictClauses = reasonsFor({ var: 'facts.need' }, pack, scope);
  const parts = dates.get(step.id) as readonly PartDates[];
  const [first, last] = [parts[0] as PartDates, parts.at(-1) as PartDates];
  const lastsUntil = addDays(last.startOn, daysOf(step.lastsDays, scope) ?? 0);
  const endOn = [lastsUntil, last.endOn].sort()[1] as IsoDate;
  const hours = hoursOf(step, scope);
  const amounts = amountsOf(step, pack, scope);
  for (const id of [...hours.figures, ...amounts.flatMap(({ figures }) => figures)]) ledger.noteFigure(id);
  const tools = step.tools.filter(({ when }) => when === undefined || holds(when, scope));
  const cautions = step.cautions.filter((id) => holds(pack.cautionById.get(id)?.when ?? true, scope));
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
    purpose: say(step.purpose),
    because: sentenceOf(
      reasonsFor(step.when, pack, scope).filter((clause) => !verdictClauses.includes(clause)),
    ),
    how: step.how.map(say),
    dayChecks: step.dayChecks.map(({ check, otherwise }) => ({
      check: say(check),
      otherwise: say(otherwise),
    })),
    tools: tools.map(({ id }) => ({ id, title: pack.materialById.get(id)?.title ?? id })),
    amounts,
    cautions,
    doneWhen: say(step.doneWhen),
    ifNot: say(step.ifNot),
    window: step.window?.why ?? null,
    windowHere: windowHereOf(step, first.startOn, { scope, season }),
    sources: ledger.cite([...step.sources, ...(step.window?.sources ?? [])]),
  };
}

function climateOf({ climate }: Season, ledger: Ledger): Plan['climate'] {
  if (climate === undefined) return null;
  ledger.cite([{ id: climate.sourceId, at: climate.station }]);
  ledger.noteFigure('station-reach-km');
  const { station, km, period, licenceLine } = climate;
  return { station, km: rounded(km), period, licenceLine };
}

/** Only where the place changes the window; the published months are in the step's own words. */
function windowHereOf(
  step: Step,
  startOn: IsoDate,
  { scope, season }: { readonly scope: Scope; readonly season: Season },
): PlanStep['windowHere'] {
  const numberOf = numbersOf(scope);
  const [here, anywhere] = [season, { ...season, climate: undefined }].map((each) =>
    windowsOf(step, each, numberOf)?.find((window) => isInWindow(startOn, window)),
  );
  if (here === undefined || (here.from === anywhere?.from && here.until === anywhere.until)) return null;
  const until = lastDateInWindow(startOn, here);
  return { from: lastDateInWindow(startOn, here).replace(/-\d\d-\d\d$/, `-${here.from}`) as IsoDate, until };
}

/** Questions behind anything that decides, and behind the amounts and hours of the steps that are in. */
function questionsThatMatter(pack: Pack, active: readonly Step[]): ReadonlySet<string> {
  const activeIds = new Set(active.map(({ id }) => id));
  const decisive = expressionsOf(pack).filter(
    ({ kindOfRecord, id, decides, pointer }) =>
      (decides &&
        kindOfRecord !== 'notDone' &&
        (kindOfRecord !== 'step' || pointer === '/when' || activeIds.has(id))) ||
      (kindOfRecord === 'step' && activeIds.has(id)),
  );
  const names = decisive.flatMap(({ expression }) => namesIn(expression));
  return new Set(
    [...everythingBehind(names, readsByName(pack))].filter((name) => pack.questionById.has(name)),
  );
}
