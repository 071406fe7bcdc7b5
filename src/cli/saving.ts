/** Where a session is kept while it runs, and whether an unfinished one is taken up again. */
import type { IsoDate } from '../base/dates.js';
import type { Pack } from '../rules/pack.js';
import type { SavedAnswer, SavedSession } from '../session/saved-session.js';
import {
  type LoadedSession,
  loadSessionFile,
  openStore,
  type SessionStore,
  saveSessionFile,
  sessionFolder,
} from '../session/store.js';
import type { Asker } from '../terminal/asker.js';
import { CliStop, EXIT } from './io.js';

export interface Saving {
  /** Answers of the session that is taken up again. */
  readonly answers: readonly SavedAnswer[];
  readonly startedOn: IsoDate;
  readonly where: string;
  /** The command that goes on with it. */
  readonly resume: string;
  save(session: SavedSession): Promise<void>;
  /** The plan is made: the session has done its work. */
  finished(): Promise<void>;
  release(): Promise<void>;
}

export interface SavingInput {
  readonly file: string | undefined;
  readonly home: string;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly today: IsoDate;
  readonly asker: Asker;
  readonly pack: Pack;
}

/** Undefined when the person left while being asked what to do with an unfinished session. */
export async function openSaving(input: SavingInput): Promise<Saving | undefined> {
  return input.file === undefined ? inStore(input) : inFile(input, input.file);
}

async function inFile({ today, asker, pack }: SavingInput, file: string): Promise<Saving> {
  const found = takenUp(await loadSessionFile(file), file, asker, pack);
  return {
    answers: found?.answers ?? [],
    startedOn: found?.startedOn ?? today,
    where: file,
    resume: `seedbed ask --save ${file}`,
    // What was told about the work stays with the answers.
    save: (session) => saveSessionFile(file, { ...session, followed: found?.followed }),
    finished: async () => undefined,
    release: async () => undefined,
  };
}

async function inStore({ env, home, today, asker, pack }: SavingInput): Promise<Saving | undefined> {
  const store = openStore({ folder: sessionFolder(env, home) });
  const choice = await chooseUnfinished(store, asker);
  if (choice === 'left') return undefined;
  if (choice !== 'new') {
    const lock = await store.lock(choice);
    if (lock.kind === 'held') {
      const found = takenUp(await store.load(choice), choice, asker, pack);
      if (found !== undefined) return kept(store, choice, found, lock.release);
      await lock.release();
    }
  }
  const begun = await store.begin(today);
  return kept(store, begun.name, { answers: [], startedOn: today }, begun.release);
}

function kept(
  store: SessionStore,
  name: string,
  found: { readonly answers: readonly SavedAnswer[]; readonly startedOn: IsoDate },
  release: () => Promise<void>,
): Saving {
  return {
    ...found,
    where: store.folder,
    resume: 'seedbed',
    save: (session) => store.save(name, session),
    finished: async () => {
      await store.remove(name);
      await release();
    },
    release,
  };
}

/** The session to go on with, `new`, or `left` when they walked away from the choice. */
async function chooseUnfinished(store: SessionStore, asker: Asker): Promise<string> {
  const open = (await store.list()).filter(({ heldBy }) => heldBy === undefined);
  if (open.length === 0) return 'new';
  const chosen = await asker.pick('There is an unfinished session.', [
    ...open.slice(0, 5).map(({ name }) => ({ value: name, label: `go on with the one of ${name}` })),
    { value: 'new', label: 'start a new one; the old one is kept' },
  ]);
  if (chosen !== undefined) return chosen;
  return asker.left?.() === undefined ? 'new' : 'left';
}

/** What a loaded file gives: its answers that the rules still know, with a word about the rest. */
function takenUp(
  loaded: LoadedSession,
  file: string,
  asker: Asker,
  pack: Pack,
): Pick<SavedSession, 'answers' | 'startedOn' | 'followed'> | undefined {
  if (loaded.kind === 'missing') return undefined;
  if (loaded.kind === 'foreign') {
    throw new CliStop(
      EXIT.files,
      `${file} is no session of this program and was left as it is: ${loaded.problems.join(' ')}`,
    );
  }
  if (loaded.kind === 'damaged') {
    asker.say(
      `The saved session was damaged. It is set aside as ${loaded.setAsideAs}; what could be read is taken over.`,
    );
  }
  const session = loaded.kind === 'damaged' ? loaded.salvaged : loaded.session;
  const all = [...session.answers, ...session.dormant];
  const known = all.filter(({ questionId }) => pack.questionById.has(questionId));
  if (known.length < all.length)
    asker.say(
      `${all.length - known.length} answers belong to questions that are no longer asked, and are left out.`,
    );
  const followed = loaded.kind === 'whole' ? loaded.session.followed : undefined;
  return session.startedOn === undefined
    ? undefined
    : { answers: known, startedOn: session.startedOn, followed };
}
