/** The log of a renovation: what was planned, what really happened, what was seen; for next year. */
import type { Root, RootContent } from 'mdast';
import { daysBetween, formatDay, formatKnown, type IsoDate } from '../base/dates.js';
import type { Plan } from '../planner/plan.js';
import type { Followed, FollowRecord } from '../planner/progress.js';
import { bullets, heading, paragraph, strong, table } from './nodes.js';
import { oneLine } from './one-line.js';
import { titleOf } from './title-section.js';
import { counted, said, sentence } from './words.js';

type Done = Extract<FollowRecord, { kind: 'done' }>;

export interface LogInput {
  readonly plan: Plan;
  readonly followed: Followed;
  /** What each trouble is called. */
  readonly troubleTitle: (id: string) => string;
  /** Fills the slots of a sentence of the rules. */
  readonly say: (text: string) => string;
}

export function logOf({ plan, followed, troubleTitle, say }: LogInput): Root {
  const { records, madeOn } = followed;
  const done = new Map(
    records.flatMap((record) => (record.kind === 'done' ? [[record.step, record] as const] : [])),
  );
  const children: RootContent[] = [
    heading(1, `Log: ${titleOf(plan)}`),
    paragraph(
      `The plan was made on ${formatDay(madeOn)}. This is how it went, as told up to ${formatDay(plan.madeOn)}.`,
    ),
    heading(2, 'Plan and reality'),
    table(['Step', 'Planned', 'Really', 'Difference'], rowsOf(plan, followed, done)),
    ...seenSection(records, { done, troubleTitle, say }),
    ...notesSection(followed, done),
  ];
  return { type: 'root', children };
}

function rowsOf(plan: Plan, { planned, records }: Followed, done: ReadonlyMap<string, Done>): string[][] {
  const added = plan.steps
    .filter(({ id }) => !planned.some(({ step }) => step === id))
    .map(({ id, title, startOn, endOn }) => ({ step: id, title, startOn, endOn, isAdded: true }));
  return [...planned.map((each) => ({ ...each, isAdded: false })), ...added].map(
    ({ step, title, startOn, isAdded }) => {
      const then = isAdded ? 'not planned' : formatKnown(startOn, plan.datesKnownTo);
      const real = done.get(step);
      if (real !== undefined) {
        const days = isAdded || plan.datesKnownTo === 'month' ? '' : differenceOf(startOn, real.startOn);
        return [said(title), then, spanOf(real), days];
      }
      const now = plan.steps.find(({ id }) => id === step);
      const isLeftOut = records.some((record) => record.kind === 'left-out' && record.step === step);
      if (now === undefined) return [said(title), then, isLeftOut ? 'left out' : 'over, or not needed', ''];
      if (now.doneOn !== null) return [said(title), then, `not told, by ${formatDay(now.doneOn)}`, ''];
      const due = now.startOn < plan.madeOn ? 'since' : 'due';
      return [
        said(title),
        then,
        `${due} ${formatKnown(now.startOn, plan.datesKnownTo)}`,
        isAdded || plan.datesKnownTo === 'month' ? '' : differenceOf(startOn, now.startOn),
      ];
    },
  );
}

const spanOf = ({ startOn, endOn }: Done): string =>
  startOn === endOn ? formatDay(startOn) : `${formatDay(startOn)} to ${formatDay(endOn)}`;

function differenceOf(planned: IsoDate, real: IsoDate): string {
  const days = daysBetween(planned, real);
  if (days === 0) return 'as planned';
  return `${counted(Math.abs(days), 'day')} ${days > 0 ? 'later' : 'earlier'}`;
}

function seenSection(
  records: readonly FollowRecord[],
  {
    done,
    troubleTitle,
    say,
  }: Pick<LogInput, 'troubleTitle' | 'say'> & { readonly done: ReadonlyMap<string, Done> },
): RootContent[] {
  const sown = done.get('sow') ?? done.get('patch-sow');
  const items = records.flatMap((record) => {
    const on = strong(`${formatDay(record.toldOn)}.`);
    switch (record.kind) {
      case 'sign':
        return [[on, seenWords(record), sentence(say(record.sign))]];
      case 'seed-up': {
        if (record.upOn === null) return [[on, 'No green yet.']];
        const after =
          sown === undefined ? '' : `, ${counted(daysBetween(sown.endOn, record.upOn), 'day')} after sowing`;
        return [[strong(`${formatDay(record.upOn)}.`), `The first green showed${after}.`]];
      }
      case 'trouble':
        return [
          [
            on,
            sentence(say(troubleTitle(record.trouble))),
            record.note === '' ? '' : `It was this: ${sentence(record.note)}`,
          ],
        ];
      default:
        return [];
    }
  });
  return items.length === 0 ? [] : [heading(2, 'What was seen'), bullets(items)];
}

function seenWords({ seen, partly }: Extract<FollowRecord, { kind: 'sign' }>): string {
  if (partly === true) return 'Seen only in part:';
  return seen ? 'Seen:' : 'Not seen yet:';
}

/** What was typed stays as it was typed. */
function notesSection({ planned }: Followed, done: ReadonlyMap<string, Done>): RootContent[] {
  const items = [...done.values()]
    .filter(({ note, asItShould }) => note !== '' || asItShould === false)
    .map(({ step, note, asItShould, partly }) => {
      const title = planned.find((each) => each.step === step)?.title ?? step;
      return [
        strong(`${said(title)}.`),
        oneLine(note),
        asItShould === false
          ? `It ${partly === true ? 'came out only in part' : 'did not come out'} as it should.`
          : '',
      ];
    });
  return items.length === 0 ? [] : [heading(2, 'Notes for next year'), bullets(items)];
}
