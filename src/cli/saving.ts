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
import type { CommandLine } from './how-started.js';
import { CliStop, EXIT } from './io.js';
import { chooseUnfinished } from './unfinished.js';

export interface Saving {
  /** Answers of the session that is taken up again. */
  readonly answers: readonly SavedAnswer[];
  readonly startedOn: IsoDate;
  readonly where: string;
  /** The command that goes on with it. */
  readonly resume: string;
  save(session: SavedSession): Promise<void>;
  /** The plan is made: gives back where the answers lie from now on, and the command that opens them again. */
  finished(): Promise<{ readonly where: string; readonly resume: string }>;
  release(): Promise<void>;
}

export interface SavingInput {
  readonly file: string | undefined;
  readonly home: string;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly today: IsoDate;
  readonly asker: Asker;
  readonly pack: Pack;
  readonly commandLine: CommandLine;
}

/** Undefined when the person left while being asked what to do with an unfinished session. */
export async function openSaving(input: SavingInput): Promise<Saving | undefined> {
  return input.file === undefined ? inStore(input) : inFile(input, input.file);
}

async function inFile(input: SavingInput, file: string): Promise<Saving> {
  const { today, asker, pack, commandLine } = input;
  const found = takenUp(await loadSessionFile(file), file, asker, pack);
  const resume = commandLine(`ask --save ${quoted(file)}`);
  return {
    answers: found?.answers ?? [],
    startedOn: found?.startedOn ?? today,
    where: file,
    resume,
    save: (session) => unlessEmpty(session, () => saveSessionFile(file, session)),
    finished: async () => ({ where: file, resume }),
    release: async () => undefined,
  };
}

async function inStore(input: SavingInput): Promise<Saving | undefined> {
  const { env, home, today, asker, pack } = input;
  const store = openStore({ folder: sessionFolder(env, home) });
  const choice = await chooseUnfinished({ store, asker, pack, today });
  if (choice === 'left') return undefined;
  if (choice !== 'new') {
    const { name } = choice;
    const lock = await store.lock(name);
    if (lock.kind === 'held') {
      const found = takenUp(await store.load(name), name, asker, pack);
      if (found !== undefined) return kept(store, { name, release: lock.release }, found, input);
      await lock.release();
    } else {
      asker.say(`The session ${name} has just been opened in another window. Here a new one begins.`);
    }
  }
  return kept(store, await store.begin(today), { answers: [], startedOn: today }, input);
}

type TakenUp = Pick<Saving, 'answers' | 'startedOn'>;

function kept(
  store: SessionStore,
  { name, release }: { readonly name: string; readonly release: () => Promise<void> },
  found: TakenUp,
  { commandLine }: SavingInput,
): Saving {
  return {
    ...found,
    where: store.pathOf(name),
    resume: commandLine(''),
    save: (session) => unlessEmpty(session, () => store.save(name, session)),
    finished: async () => {
      const where = await store.finish(name);
      await release();
      return { where, resume: commandLine(`ask --save ${quoted(where)}`) };
    },
    release,
  };
}

/** A session without an answer is not worth a file. */
async function unlessEmpty({ answers, dormant }: SavedSession, save: () => Promise<void>): Promise<void> {
  if (answers.length + dormant.length > 0) await save();
}

/** A path as a shell takes it. */
const quoted = (path: string): string =>
  /^[\w./~+@%:,-]+$/.test(path) ? path : `'${path.replaceAll("'", "'\\''")}'`;

/** What a loaded file gives: its answers that the rules still know, with a word about the rest. */
function takenUp(loaded: LoadedSession, file: string, asker: Asker, pack: Pack): TakenUp | undefined {
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
  return session.startedOn === undefined ? undefined : { answers: known, startedOn: session.startedOn };
}
