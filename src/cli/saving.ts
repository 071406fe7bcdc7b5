/** Where a session is kept while it runs, and whether an unfinished one is taken up again. */
import type { IsoDate } from '../base/dates.js';
import type { OwnClimate, Pack } from '../rules/pack.js';
import { openLocks } from '../session/lock.js';
import { NO_AREAS, type SavedAnswer, type SavedAreas, type SavedSession } from '../session/saved-session.js';
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

/** What a session goes on from. */
export interface TakenUp extends SavedAreas {
  readonly answers: readonly SavedAnswer[];
  readonly heldOver: readonly SavedAnswer[];
  readonly startedOn: IsoDate;
  /** The rules to go on by; undefined: the present ones. */
  readonly pack: Pack | undefined;
  /** The own climate that it was answered with. */
  readonly climate?: OwnClimate | undefined;
  /** What has happened since the plan was made. */
  readonly followed?: SavedSession['followed'];
}

export interface Saving extends TakenUp {
  readonly where: string;
  /** False where no folder for sessions can be had: the session goes on, and every save says why it failed. */
  readonly isKept: boolean;
  /** The command that goes on with it. */
  readonly resume: string;
  save(session: SavedSession): Promise<void>;
  /** The plan is made: gives back where the answers lie from now on, and the command that opens them again. */
  finished(): Promise<{ readonly where: string; readonly resume: string }>;
  release(): Promise<void>;
}

export interface SavingInput {
  readonly file: string | undefined;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly today: IsoDate;
  readonly asker: Asker;
  readonly pack: Pack;
  readonly commandLine: CommandLine;
}

/** Undefined when the person left while being asked what to do with an unfinished session. */
export async function openSaving(input: SavingInput): Promise<Saving | undefined> {
  const store = openStore({ folder: sessionFolder(input.env) });
  if (input.file !== undefined) return inFile(store, input, input.file);
  try {
    return await inStore(store, input);
  } catch (error) {
    if (error instanceof Error && 'syscall' in error) return unkept(store.folder, error, input);
    throw error;
  }
}

/** A session all the same where no folder for it can be made. */
function unkept(folder: string, { message }: Error, input: SavingInput): Saving {
  const instead = input.commandLine('ask --save FILE');
  const save = async (): Promise<void> => {
    throw new Error(`no folder for it can be made (${message}); to keep the answers, begin with: ${instead}`);
  };
  const kept = { where: folder, resume: instead };
  return {
    ...fresh(input),
    ...kept,
    isKept: false,
    save,
    finished: async () => kept,
    release: async () => {},
  };
}

async function inFile(store: SessionStore, input: SavingInput, file: string): Promise<Saving | undefined> {
  const lock = await readable(file, () => openLocks().take(file));
  if (lock.kind === 'busy') {
    throw new CliStop(
      EXIT.files,
      `${file} is open in another window (process ${lock.pid}). Go on there, or keep this session in another file.`,
    );
  }
  try {
    const loaded = await readable(file, () => loadSessionFile(file));
    const found = await takenUp(loaded, file, store, input);
    if (found !== 'left') {
      const resume = input.commandLine(`ask --save ${quoted(file)}`);
      return {
        ...(found ?? fresh(input)),
        where: file,
        isKept: true,
        resume,
        // What was told about the work stays with the answers.
        save: saver(store, found?.pack ?? input.pack, (session) =>
          saveSessionFile(file, { ...session, followed: found?.followed }),
        ),
        finished: async () => {
          await lock.release();
          return { where: file, resume };
        },
        release: lock.release,
      };
    }
  } catch (error) {
    await lock.release();
    throw error;
  }
  await lock.release();
  return undefined;
}

async function inStore(store: SessionStore, input: SavingInput): Promise<Saving | undefined> {
  const { today, asker, pack } = input;
  // The list is loaded only where there is one: it would hold up the first question.
  const choice =
    (await store.list()).length === 0
      ? 'new'
      : await (await import('./unfinished.js')).chooseUnfinished({ store, asker, pack, today });
  if (choice === 'left') return undefined;
  if (choice !== 'new') {
    const { name } = choice;
    const lock = await store.lock(name);
    if (lock.kind === 'held') {
      const found = await takenUp(await store.load(name), name, store, input);
      if (found !== undefined && found !== 'left') return kept(store, { ...lock, name }, found, input);
      await lock.release();
      if (found === 'left') return undefined;
    } else {
      asker.say(`The session ${name} has just been opened in another window. Here a new one begins.`);
    }
  }
  return kept(store, await store.begin(today), fresh(input), input);
}

const fresh = ({ today }: SavingInput): TakenUp => ({
  ...NO_AREAS,
  answers: [],
  heldOver: [],
  startedOn: today,
  pack: undefined,
});

function kept(
  store: SessionStore,
  { name, release }: { readonly name: string; readonly release: () => Promise<void> },
  found: TakenUp,
  { commandLine, pack }: SavingInput,
): Saving {
  return {
    ...found,
    where: store.pathOf(name),
    isKept: true,
    resume: commandLine(''),
    save: saver(store, found.pack ?? pack, (session) => store.save(name, session)),
    finished: async () => {
      const where = await store.finish(name);
      await release();
      return { where, resume: commandLine(`ask --save ${quoted(where)}`) };
    },
    release,
  };
}

/** Saves a session that holds an answer, and once the rules that it is answered by. */
function saver(
  store: SessionStore,
  pack: Pack,
  save: (session: SavedSession) => Promise<void>,
): (session: SavedSession) => Promise<void> {
  let areRulesKept = false;
  return async (session) => {
    const { answers, dormant, heldOver, inAreas } = session;
    if (answers.length + dormant.length + heldOver.length + inAreas.length === 0) return;
    await save(session);
    if (areRulesKept) return;
    areRulesKept = true;
    const { textOfPack } = await import('./kept-rules.js');
    // Without them the session can still be moved over, so a failure is no reason to stop.
    await store.keepRules(pack.sha256, () => textOfPack(pack)).catch(() => undefined);
  };
}

/** A path as a shell takes it. */
export const quoted = (path: string): string =>
  /^[\w./~+@%:,-]+$/.test(path) ? path : `'${path.replaceAll("'", "'\\''")}'`;

/** What a loaded file gives; undefined when there is nothing to go on from. */
async function takenUp(
  loaded: LoadedSession,
  file: string,
  store: SessionStore,
  input: SavingInput,
): Promise<TakenUp | 'left' | undefined> {
  const { asker, pack, today } = input;
  if (loaded.kind === 'missing') return undefined;
  if (loaded.kind === 'foreign') {
    throw new CliStop(
      EXIT.files,
      `${file} is no session of this program and was left as it is: ${loaded.problems.join(' ')}`,
    );
  }
  const session = loaded.kind === 'damaged' ? loaded.salvaged : loaded.session;
  const answers = [...session.answers, ...session.dormant];
  const { heldOver, areas, inAreas, startedOn = today, climate } = session;
  if (loaded.kind === 'damaged') asker.say(damageWords(loaded, answers.length + inAreas.length));
  const followed = loaded.kind === 'whole' ? loaded.session.followed : undefined;
  const isOfTheseRules = session.pack?.sha256 === pack.sha256 || answers.length + heldOver.length === 0;
  if (isOfTheseRules) {
    const { soundOf } = await import('./fitting.js');
    const sound = soundOf({ answers, inAreas }, pack, today);
    if (sound.faults.length > 0) asker.say(setAsideWords(sound.faults));
    const { setAside, ...kept } = sound;
    return {
      ...kept,
      heldOver: [...heldOver, ...setAside],
      areas,
      startedOn,
      climate,
      followed,
      pack: undefined,
    };
  }
  const [{ takeOver }, { packFromText }] = await Promise.all([
    import('./changed-rules.js'),
    import('./kept-rules.js'),
  ]);
  const text = session.pack === undefined ? undefined : await store.rulesOf(session.pack.sha256);
  const rules = text === undefined ? undefined : await packFromText(text);
  const taken = await takeOver({ ...session, answers, startedOn, rules }, input);
  return taken === undefined ? 'left' : { ...taken, climate, followed };
}

const setAsideWords = (faults: readonly string[]): string =>
  `${faults.length === 1 ? 'One answer' : `${faults.length} answers`} in the saved session cannot stand and will be asked again:\n${faults.map((fault) => `  ${fault}`).join('\n')}`;

function damageWords(
  { setAsideAs, salvaged }: Extract<LoadedSession, { kind: 'damaged' }>,
  count: number,
): string {
  const lost =
    salvaged.lostAnswers === 0 ? '' : `; ${salvaged.lostAnswers} could not be read and will be asked`;
  return `The saved session was damaged, or changed since it was saved. It is set aside as ${setAsideAs}. ${count === 1 ? '1 answer' : `${count} answers`} could be read${lost}.`;
}

async function readable<Result>(file: string, work: () => Promise<Result>): Promise<Result> {
  try {
    return await work();
  } catch (error) {
    const { code, message } = error as NodeJS.ErrnoException;
    const reason =
      code === 'ENOENT' ? 'its folder is not there' : code === 'EISDIR' ? 'it is a folder' : message;
    throw new CliStop(
      EXIT.files,
      `${file} cannot hold a session: ${reason}. Choose another place with --save.`,
    );
  }
}
