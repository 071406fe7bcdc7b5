/** The list of unfinished sessions: which one to go on with, told apart by lawn, place, days and answers. */
import { formatDay, type IsoDate } from '../base/dates.js';
import { showAnswer } from '../interview/show-answer.js';
import type { Pack } from '../rules/pack.js';
import type { SavedAnswer } from '../session/saved-session.js';
import type { SessionStore, SessionSummary } from '../session/store.js';
import type { Asker } from '../terminal/asker.js';
import { localDay, localTime } from './local-time.js';

export interface UnfinishedInput {
  readonly store: SessionStore;
  readonly asker: Asker;
  readonly pack: Pack;
  readonly today: IsoDate;
}

const NEW = ':new';
const FORGET = ':forget';
const LEAVE_NOW = ':leave';

/** Name of the session to go on with, `new`, or `left` when they walked away from the list. */
export async function chooseUnfinished(
  input: UnfinishedInput,
): Promise<{ readonly name: string } | 'new' | 'left'> {
  const { store, asker } = input;
  const all = await store.list();
  const elsewhere = all.filter(({ heldBy }) => heldBy !== undefined);
  for (const { name } of elsewhere)
    asker.say(`The session ${name} is open in another window. It goes on there and is left alone here.`);
  for (;;) {
    const open = await described(input);
    if (open.length === 0) return 'new';
    const chosen = await asker.pick(
      open.length === 1
        ? 'There is an unfinished session.'
        : `There are ${open.length} unfinished sessions, the latest first.`,
      [
        ...open.map(({ name, label }) => ({ value: name, label: `go on with ${label}` })),
        { value: NEW, label: `start another lawn; ${open.length === 1 ? 'this one stays' : 'these stay'}` },
        { value: FORGET, label: 'throw one away' },
        { value: LEAVE_NOW, label: 'leave now' },
      ],
    );
    if (chosen === undefined || chosen === LEAVE_NOW) return 'left';
    if (chosen === NEW) return 'new';
    if (chosen !== FORGET) return { name: chosen };
    await throwAway(open, input);
  }
}

interface Described {
  readonly name: string;
  readonly label: string;
}

/** Those that nobody has open and that hold an answer, or that are damaged and may hold one. */
async function described({ store, pack, today }: UnfinishedInput): Promise<Described[]> {
  const free = (await store.list()).filter(({ heldBy }) => heldBy === undefined);
  const labels = await Promise.all(
    free.map(async (summary) => {
      const reading = await store.glance(summary.name);
      if (reading === undefined || reading.kind === 'foreign') return undefined;
      const session = reading.kind === 'whole' ? reading.session : reading.salvaged;
      const answers = [...session.answers, ...session.dormant];
      if (answers.length === 0 && reading.kind === 'whole') return undefined;
      const parts = [
        `${counted(answers.length)}${reading.kind === 'whole' ? '' : ' that can still be read (the file is damaged)'}`,
        ...(session.startedOn === undefined ? [] : [`begun ${formatDay(session.startedOn)}`]),
        `last answer ${whenSaved(summary, today)}`,
      ];
      return { name: summary.name, label: `${lawnOf(answers, pack)}: ${parts.join(', ')}` };
    }),
  );
  return labels.filter((label) => label !== undefined);
}

/** `back lawn, Oxford`. */
function lawnOf(answers: readonly SavedAnswer[], pack: Pack): string {
  const words = ['lawnName', 'place'].flatMap((id) => {
    const value = answers.find(({ questionId }) => questionId === id)?.value;
    const question = pack.questionById.get(id);
    const isSaid = typeof value === 'string' && value !== 'unknown' && question !== undefined;
    return isSaid ? [showAnswer(question, value)] : [];
  });
  return words.length === 0 ? 'a lawn without a name yet' : words.join(', ');
}

function whenSaved({ savedAtMs }: SessionSummary, today: IsoDate): string {
  const day = localDay(new Date(savedAtMs));
  return `${day === today ? 'today' : formatDay(day)} at ${localTime(new Date(savedAtMs))}`;
}

const counted = (answers: number): string => (answers === 1 ? '1 answer' : `${answers} answers`);

async function throwAway(open: readonly Described[], { store, asker }: UnfinishedInput): Promise<void> {
  const only = open.length === 1 ? open[0]?.name : undefined;
  const choices = open.map(({ name, label }) => ({ value: name, label }));
  const name = only ?? (await asker.pick('Which one?', choices, 'none of them'));
  const label = open.find((each) => each.name === name)?.label;
  if (name === undefined || label === undefined) return;
  const isSure = await asker.confirm(`Throw away ${label}? It cannot be brought back.`, false);
  if (isSure !== true) return;
  const lock = await store.lock(name);
  if (lock.kind !== 'held') return;
  await store.remove(name);
  await lock.release();
  asker.say('It is gone.');
}
