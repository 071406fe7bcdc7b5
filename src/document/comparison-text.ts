/** A comparison of two plans in plain lines: what differs, and for each difference the answer and the rule that did it. */
import { daysBetween, formatDay, formatKnown, type IsoDate, type KnownTo } from '../base/dates.js';
import type { Comparison, PlanChange } from '../planner/compare-plans.js';
import { counted, inWords, said, sentence, stopped, withoutStop } from './words.js';

/** A line and how far its further lines are set in. */
export interface TextLine {
  readonly text: string;
  readonly hang: string;
}

/** The groups in reading order. */
const GROUPS: readonly {
  readonly title: string;
  readonly holds: (change: PlanChange) => boolean;
  readonly item: (change: PlanChange, knownTo: KnownTo) => string;
}[] = [
  {
    title: 'The verdict',
    holds: ({ kind }) => kind === 'verdict',
    item: ({ before, after }) => `${withoutStop(before ?? '')}; now: ${withoutStop(after ?? '')}.`,
  },
  {
    title: 'What is wrong',
    holds: ({ kind }) => kind === 'finding',
    item: ({ how, title }) => `${how === 'in' ? 'New' : 'No longer'}: ${said(title)}.`,
  },
  {
    title: 'Steps that come in',
    holds: ({ kind, how }) => kind === 'step' && how === 'in',
    item: ({ title, after }, knownTo) => stopped(`${said(title)}, ${spanShown(after ?? '', knownTo)}`),
  },
  {
    title: 'Steps that go',
    holds: ({ kind, how }) => kind === 'step' && how === 'out',
    item: ({ title, before }, knownTo) => stopped(`${said(title)}, ${spanShown(before ?? '', knownTo)}`),
  },
  { title: 'Steps that move', holds: ({ kind }) => kind === 'days', item: movedWords },
  {
    title: 'Amounts and work',
    holds: ({ kind }) => kind === 'amount' || kind === 'hours',
    item: (change) => `${said(change.title)}: ${thenWords(change)}.`,
  },
  {
    title: 'The shopping',
    holds: ({ kind }) => kind === 'buy' || kind === 'cost',
    item: (change) => `${said(change.title)}: ${thenWords(change)}.`,
  },
  {
    title: 'Cautions',
    holds: ({ kind }) => kind === 'caution',
    item: ({ how, title }) => `${how === 'in' ? 'New' : 'No longer'}: ${said(title)}`,
  },
  {
    title: 'Not in the plan',
    holds: ({ kind }) => kind === 'left-out',
    item: ({ how, title }) => `${how === 'in' ? 'New' : 'No longer'}: ${said(title)}`,
  },
];

export function comparisonText(comparison: Comparison): TextLine[] {
  const { answers, changes, withoutEffect, assumed, datesKnownTo } = comparison;
  const labels = new Map(answers.map(({ questionId, label }) => [questionId, said(label)]));
  const lines: TextLine[] = [
    plain(headOf(comparison)),
    ...section(
      'Answers that differ',
      answers.map(({ label, before, after }) => `${said(label)}: ${said(before)}; now: ${said(after)}.`),
    ),
  ];
  if (changes.length > 0) lines.push(plain(''), plain(LEGEND));
  for (const { title, holds, item } of GROUPS) {
    // Days that shift within their months are no shift that could be told.
    const mine = changes.filter(
      (change) => holds(change) && !(change.kind === 'days' && isSameShown(change, datesKnownTo)),
    );
    lines.push(
      ...section(
        title,
        mine.map((change) => `${item(change, datesKnownTo)} ${causeWords(change, labels)}`),
      ),
    );
  }
  if (changes.length > 0 && withoutEffect.length > 0) {
    const names = withoutEffect.map((id) => labels.get(id) ?? id);
    lines.push(
      plain(''),
      plain(sentence(`Nothing in the plan needs the change of ${inWords(names)} to come about`)),
    );
  }
  if (assumed.length > 0) {
    const rest = counted(assumed.length, 'question is', 'questions are');
    lines.push(
      plain(''),
      plain(
        `${rest} not answered and stand${assumed.length === 1 ? 's' : ''} at the stated assumption: ${assumed.join(', ')}.`,
      ),
    );
  }
  return lines;
}

const LEGEND =
  'After each change: the fewest answers that bring it about, then in brackets the rule, and the findings and facts behind it that came out another way.';

function headOf({ madeOn, answers, changes }: Comparison): string {
  const differ = counted(answers.length, 'answer differs', 'answers differ');
  const outcome =
    changes.length === 0
      ? 'the plan is the same, step for step'
      : `${counted(changes.length, 'thing', 'things')} in the plan ${changes.length === 1 ? 'does' : 'do'} too`;
  return `Two plans made on ${formatDay(madeOn)}. ${sentence(answers.length === 0 ? 'No answer differs' : `${differ}; ${outcome}`)}`;
}

const plain = (text: string): TextLine => ({ text, hang: '' });

function section(title: string, items: readonly string[]): TextLine[] {
  if (items.length === 0) return [];
  return [plain(''), plain(title), ...items.map((text) => ({ text: `- ${text}`, hang: '  ' }))];
}

function thenWords({ before, after }: PlanChange): string {
  if (before === null) return `new, ${after}`;
  return after === null ? `${before}, no longer` : `${before}; now: ${after}`;
}

/** `2027-04-01 to 2027-04-03` as days in words, or as months where no more is known. */
function spanShown(span: string, knownTo: KnownTo): string {
  const [from, until] = span.split(' to ') as [IsoDate, IsoDate | undefined];
  const [first, last] = [from, until ?? from].map((day) => formatKnown(day, knownTo)) as [string, string];
  return first === last ? first : `${first} to ${last}`;
}

const isSameShown = ({ before, after }: PlanChange, knownTo: KnownTo): boolean =>
  knownTo === 'month' && spanShown(before ?? '', knownTo) === spanShown(after ?? '', knownTo);

function movedWords({ title, before, after }: PlanChange, knownTo: KnownTo): string {
  const [was, is] = [before ?? '', after ?? ''];
  const days = daysBetween(was.slice(0, ISO_LENGTH) as IsoDate, is.slice(0, ISO_LENGTH) as IsoDate);
  const shift =
    days === 0 || knownTo === 'month'
      ? ''
      : `, ${counted(Math.abs(days), 'day')} ${days > 0 ? 'later' : 'earlier'}`;
  return stopped(`${said(title)}: ${spanShown(was, knownTo)}; now: ${spanShown(is, knownTo)}${shift}`);
}

const ISO_LENGTH = 'yyyy-mm-dd'.length;

/** The answers that are enough, the reason in words, and the rules by id. */
function causeWords(
  { by, isComplete, rules, because }: PlanChange,
  labels: ReadonlyMap<string, string>,
): string {
  const sets = by.map((set) => inWords(set.map((id) => labels.get(id) ?? id)));
  const answers = `By ${sets.join(', or by ')}${sets.length > 1 ? ': each is enough' : ''}.`;
  const [rule = '', ...turned] = rules;
  const sure = isComplete ? '' : ' (Too many answers differ to try every set; there may be other ways.)';
  return `${answers}${sure}${because === '' ? '' : ` ${sentence(because)}`} [${rule}${turned.length === 0 ? '' : `: ${turned.join(', ')}`}]`;
}
