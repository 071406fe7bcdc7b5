/** A clash of waits and seasons in the pack's own sentences. */
import { addDays, formatDay, monthName, type YearlyWindow } from '../base/dates.js';
import { daysWords } from '../base/quantity-words.js';
import type { Units } from '../base/us-units.js';
import { showAnswer } from '../interview/show-answer.js';
import type { Step } from '../rules/schema.js';
import type { Undatable } from './clash.js';
import type { Demand } from './demands.js';
import { listed, type WordingName, worded, wordedInside } from './explain-words.js';
import type { MissedSeason } from './missed-season.js';
import { numbersOf } from './step-net.js';
import { type Say, sayer } from './texts.js';
import type { WayOut } from './ways-out.js';
import { windowsOf, windowWhy } from './windows.js';

export interface ToldClash {
  readonly demands: readonly Demand[];
  readonly missed: MissedSeason | undefined;
  readonly ways: readonly WayOut[];
}

/** Several lines: what is missed, what clashes, what could be changed. */
export function clashText({ demands, missed, ways }: ToldClash, undatable: Undatable, units: Units): string {
  const { pack, scope } = undatable;
  const say = sayer({ pack, scope, note: () => undefined, units });
  return [
    worded(pack, 'clash'),
    ...(missed === undefined ? [] : [missedWords(missed, undatable)]),
    worded(pack, 'clashList'),
    ...demands.map((demand) => `  - ${demandWords(demand, { ...undatable, say, demands })}`),
    ...(ways.length === 0 ? [worded(pack, 'clashNoWay')] : [worded(pack, 'clashWays')]),
    ...ways.map((way) => `  - ${wayWords(way, undatable, units)}`),
  ].join('\n');
}

const titleOf = ({ pack }: Undatable, id: string): string => pack.stepById.get(id)?.title ?? id;

function missedWords(
  { last, byOn, first, fromOn, days, wouldBeOn }: MissedSeason,
  undatable: Undatable,
): string {
  return worded(undatable.pack, days > 0 ? 'clashMissed' : 'clashBehind', {
    last: titleOf(undatable, last),
    first: titleOf(undatable, first),
    by: formatDay(byOn),
    from: formatDay(fromOn),
    days: daysWords(days),
    would: formatDay(wouldBeOn),
  });
}

interface Telling extends Undatable {
  readonly say: Say;
  /** All of the clash. */
  readonly demands: readonly Demand[];
}

function demandWords(demand: Demand, telling: Telling): string {
  const { pack, startOn } = telling;
  switch (demand.kind) {
    case 'weekends':
      return worded(pack, 'clashWeekends');
    case 'season':
      return seasonWords(pack.stepById.get(demand.step) as Step, telling);
    case 'no-sooner': {
      const day = formatDay(addDays(startOn, demand.day));
      const values = { title: titleOf(telling, demand.step), day, why: sooner(demand.step, telling) };
      return worded(pack, 'clashNoSooner', values).trimEnd();
    }
    case 'least-wait':
      return waitWords(demand, demand.days > 0 ? 'clashLeast' : 'clashAfter', telling);
    case 'greatest-wait':
      return waitWords(demand, demand.days > 0 ? 'clashGreatest' : 'clashSameDay', telling);
    default:
      return demand satisfies never;
  }
}

function waitWords(
  demand: Extract<Demand, { readonly from: string }>,
  name: WordingName,
  telling: Telling,
): string {
  const { pack, say, demands } = telling;
  const { from, to, days } = demand;
  const wait = pack.stepById.get(to)?.after.find(({ step }) => step === from);
  // The two ends of one wait share their reason.
  const isToldAlready =
    demand.kind === 'greatest-wait' &&
    demands.some((each) => each.kind === 'least-wait' && each.from === from && each.to === to);
  const why = wait === undefined || isToldAlready ? '' : say(wait.why);
  const values = { from: titleOf(telling, from), to: titleOf(telling, to), days: daysWords(days), why };
  return worded(pack, name, values).trimEnd();
}

function seasonWords(step: Step, { pack, scope, season, say }: Telling): string {
  const [here, anywhere] = [season, { ...season, climate: undefined, shutDays: undefined }].map((each) =>
    windowsOf(step, each, numbersOf(scope)),
  );
  const isNarrowed =
    season.climate !== undefined && JSON.stringify(here?.map(ends)) !== JSON.stringify(anywhere?.map(ends));
  const spans = (here ?? []).map((window) => {
    const [from, until] = ends(window).map(dayOfYearWords) as [string, string];
    return wordedInside(pack, 'clashSpan', { from, until });
  });
  return worded(pack, isNarrowed ? 'clashSeasonHere' : 'clashSeason', {
    title: step.title,
    spans: listed(pack, spans, 'or'),
    why: say(windowWhy(step, season) ?? ''),
  }).trimEnd();
}

const ends = ({ from, until }: YearlyWindow): readonly [string, string] => [from, until];

/** `15 April` for `04-15`. */
function dayOfYearWords(monthDay: string): string {
  const [month, day] = monthDay.split('-').map(Number) as [number, number];
  return `${day} ${monthName(month)}`;
}

function sooner(id: string, { pack, say }: Telling): string {
  return (pack.stepById.get(id)?.notBefore ?? []).map(({ why }) => say(why)).join(' ');
}

function wayWords({ question, value, now, isAssumed }: WayOut, { pack }: Undatable, units: Units): string {
  return worded(pack, isAssumed ? 'clashWayAssumed' : 'clashWay', {
    label: question.label,
    id: question.id,
    answer: showAnswer(question, value, units),
    now: now === undefined ? '' : showAnswer(question, now, units),
  });
}
