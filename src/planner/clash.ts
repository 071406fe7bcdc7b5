/** Why no dates hold: the fewest waits and seasons that cannot be kept together, and the answers that would undo it. */
import { addDays, daysBetween, type IsoDate } from '../base/dates.js';
import type { Scope } from '../rules/evaluate.js';
import type { Pack } from '../rules/pack.js';
import type { Step } from '../rules/schema.js';
import type { Timing } from './computed-facts.js';
import { brokenBesideIn, type Demand, type DemandingNet, type DemandingStep, demandsOf } from './demands.js';
import type { Link } from './network.js';
import { netFrom, type Progress } from './progress.js';
import { smallestClash } from './smallest-clash.js';
import { numbersOf, type StepNet, seasonOf, stepNet } from './step-net.js';
import { fitDaysOf, type Season, windowsOf } from './windows.js';
import { remembered } from './work-days.js';

/** A net for which no dates hold, and what it was made of. */
export interface Undatable {
  readonly pack: Pack;
  readonly scope: Scope;
  readonly season: Season;
  /** First free day: days of the net count from it. */
  readonly startOn: IsoDate;
  readonly net: DemandingNet;
}

export interface UndatableInput {
  readonly pack: Pack;
  readonly scopeOf: (timing: Timing) => Scope;
  readonly today: IsoDate;
  readonly progress: Progress | undefined;
}

/** Sets of demands to try before a clash of the fewest is given up for one without anything needless. */
const MOST_TRIES = 1000;

/** @param timing with it in the rules no dates hold */
export function undatable({ pack, scopeOf, today, progress }: UndatableInput, timing: Timing): Undatable {
  const scope = scopeOf(timing);
  const season = seasonOf(pack, scope, today);
  const whole = stepNet(pack, scope, { today, season, leftOut: progress?.leftOut });
  const net = progress === undefined ? whole : netFrom(whole, pack, progress);
  const { startOn } = net;
  const toDo = net.steps.filter(({ id }) => net.inPlan.has(id) && progress?.done.has(id) !== true);
  const steps = toDo.map(({ id, notBefore }): DemandingStep => {
    const rule = pack.stepById.get(id) as Step;
    return {
      id,
      notBefore,
      hasSeason: windowsOf(rule, season, numbersOf(scope)) !== undefined,
      isForWeekends: season.weekendsOnly && rule.labour !== undefined,
      nextFit: fitBy(rule, { season, scope, startOn }),
    };
  });
  return { pack, scope, season, startOn, net: { steps, waits: betweenSteps(net, steps) } };
}

type FitInput = Pick<Undatable, 'season' | 'scope' | 'startOn'>;

function fitBy(rule: Step, { season, scope, startOn }: FitInput): DemandingStep['nextFit'] {
  const fitWhen = (anyTimeOfYear: boolean, weekendsOnly: boolean): ((day: number) => number) => {
    const { nextFitDay } = fitDaysOf(rule, { ...season, anyTimeOfYear, weekendsOnly }, numbersOf(scope));
    return remembered((day) => daysBetween(startOn, nextFitDay(addDays(startOn, day))));
  };
  const { weekendsOnly } = season;
  const [inSeason, always] = [fitWhen(false, false), fitWhen(true, false)];
  const [inSeasonAtWeekends, atWeekends] = [fitWhen(false, weekendsOnly), fitWhen(true, weekendsOnly)];
  return (day, counting) => {
    if (counting.weekends) return (counting.season ? inSeasonAtWeekends : atWeekends)(day);
    return (counting.season ? inSeason : always)(day);
  };
}

/** The waits between the steps; what carries their order through steps that are not there becomes one wait of no days. */
function betweenSteps({ waits }: StepNet, steps: readonly DemandingStep[]): Link[] {
  const ids = new Set(steps.map(({ id }) => id));
  const bound = waits.filter(({ from, to }) => ids.has(from) && ids.has(to));
  const reachedFrom = (id: string, reached = new Set<string>()): ReadonlySet<string> => {
    for (const { to } of waits.filter(({ from }) => from === id))
      if (!reached.has(to)) {
        reached.add(to);
        if (!ids.has(to)) reachedFrom(to, reached);
      }
    return reached;
  };
  const carried = [...ids].flatMap((from) =>
    [...reachedFrom(from)]
      .filter((to) => to !== from && ids.has(to))
      .filter((to) => !bound.some((wait) => wait.from === from && wait.to === to))
      .map((to): Link => ({ from, to, minDays: 0, maxDays: undefined })),
  );
  return [...bound, ...carried];
}

/** The demands that clash; undefined when dates hold after all. */
export function clashIn({ net }: Undatable): readonly Demand[] | undefined {
  const demands = demandsOf(net);
  return smallestClash(demands, brokenBesideIn(net, demands), MOST_TRIES)?.demands;
}
