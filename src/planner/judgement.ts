/** The verdict and the findings of a plan: what was judged, by which reasons, and what it rests on. */
import { formatKnown, type IsoDate, type KnownTo } from '../base/dates.js';
import { diagnose, type Judged } from '../diagnosis/diagnose.js';
import { reasonsFor, sentenceOf, type View } from '../interview/reasons.js';
import { evaluate, type Scope } from '../rules/evaluate.js';
import type { Pack } from '../rules/pack.js';
import type { VerdictRule } from '../rules/schema-judgement.js';
import { worded } from './explain-words.js';
import type { Plan, PlanFinding } from './plan.js';
import type { Ledger } from './provenance.js';
import { holds } from './steps.js';
import type { Say } from './texts.js';

/** A verdict without what is only worked out when it is asked for. */
export type Verdict = Omit<Plan['verdict'], 'sure' | 'wouldChange' | 'sureness'>;

/**
 * @param sowOn the day of the first sowing, for a verdict that puts the work off
 */
export function verdictOf(
  view: View,
  knownScope: Scope,
  {
    ledger,
    say,
    sowOn,
    datesKnownTo,
  }: {
    readonly ledger: Ledger;
    readonly say: Say;
    readonly sowOn: IsoDate | null;
    readonly datesKnownTo: KnownTo;
  },
): Verdict {
  const { pack, scope } = view;
  const chosen = pack.verdicts.findIndex(({ when }) => holds(when, scope));
  const rule = pack.verdicts.find((each) => isTooOpen(each, knownScope)) ?? pack.verdicts[chosen];
  if (rule === undefined)
    throw new Error('no verdict holds: the last one in verdicts.json must always be true');
  const isKnown = rule === pack.verdicts[chosen];
  const put = isKnown ? workPutOff(pack, scope, chosen) : undefined;
  return {
    id: rule.id,
    title: titledRule(rule, put),
    because: say(rule.because),
    reasons: isKnown ? sentenceOf(verdictReasons(rule, view)) : '',
    meant: put === undefined ? null : { id: put.id, title: put.title, because: say(put.because) },
    says: [
      ...(put === undefined
        ? []
        : [worded(pack, 'comesTo', { title: put.title, because: say(put.because) })]),
      ...(put === undefined || sowOn === null
        ? []
        : [worded(pack, 'sowingOn', { day: formatKnown(sowOn, datesKnownTo) })]),
      ...(rule.also ?? []).filter(({ when }) => holds(when, scope)).map(({ says }) => say(says)),
    ],
    sources: ledger.cite([...rule.sources, ...(put?.sources ?? [])]),
  };
}

const verdictReasons = ({ when }: VerdictRule, view: View): string[] =>
  reasonsFor(when === true ? { var: 'facts.need' } : when, view);

/** Whether too many signs are open, and none of those answered speaks for work. */
function isTooOpen({ open }: VerdictRule, knownScope: Scope): boolean {
  if (open === undefined || holds(open.unless, knownScope)) return false;
  const from = evaluate(open.from, knownScope);
  const unknown = open.signs.filter((ids) => ids.every((id) => !knownScope(id).known));
  return from.known && unknown.length >= Number(from.value);
}

/** The verdict that would hold but for the one that puts it off. */
function workPutOff(pack: Pack, scope: Scope, chosen: number): VerdictRule | undefined {
  if (pack.verdicts[chosen]?.putsOff === undefined) return undefined;
  return pack.verdicts.slice(chosen + 1).find(({ work, when }) => work !== undefined && holds(when, scope));
}

const titledRule = ({ title, putsOff }: VerdictRule, put: VerdictRule | undefined): string =>
  put?.work === undefined || putsOff === undefined ? title : `${putsOff} ${put.work}`;

/** The title of a verdict by its number, with the work that it puts off. */
export function titledVerdict(pack: Pack, scope: Scope, chosen: number | undefined): string | null {
  const rule = chosen === undefined ? undefined : pack.verdicts[chosen];
  return rule === undefined ? null : titledRule(rule, workPutOff(pack, scope, chosen as number));
}

export function findingsOf(view: View, knownScope: Scope, say: Say, ledger: Ledger): PlanFinding[] {
  const { pack, scope: assumedScope } = view;
  const known = { ...view, scope: knownScope };
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
          : sentenceOf(reasonsFor(finding.when, known)),
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
