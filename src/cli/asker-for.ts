/** The asker that fits the terminal, and the reader of typed answers that it loads while the first question stands. */
import type { Units } from '../base/us-units.js';
import { readChoice, readYesNo } from '../interview/read-choice.js';
import type { Reading } from '../interview/reading.js';
import type { Pack } from '../rules/pack.js';
import type { Question } from '../rules/schema.js';
import type { Asker, AskerSettings } from '../terminal/asker.js';
import type { ParsedArgs } from './command.js';
import type { CliIo } from './io.js';

/** Drawn questions need a real terminal on both sides; everything else gets numbered lines. */
export async function askerFor(
  args: ParsedArgs,
  io: CliIo,
  interrupt: AbortSignal,
  reader: LazyReader,
): Promise<Asker> {
  const isDrawn =
    !args.flag('plain') &&
    !io.env.ACCESSIBLE &&
    io.env.TERM !== 'dumb' &&
    io.input.isTTY === true &&
    io.output.isTTY === true;
  const output = isDrawn ? io.output : io.dialogue;
  const settings = {
    input: io.input,
    output,
    width: io.width,
    colour: io.colour,
    read: reader.read,
    interrupt,
  };
  if (!isDrawn) {
    const [{ createLineAsker }] = await Promise.all([import('../terminal/line-asker.js'), reader.ready()]);
    return createLineAsker(settings);
  }
  const asker = (await import('../terminal/clack-asker.js')).createClackAsker(settings);
  return {
    ...asker,
    ask: async (prompt) => {
      // What is typed at a list is read by what is here already: it can be drawn while the other reader loads.
      if (!isListed(prompt.question)) await reader.ready();
      const reply = asker.ask(prompt);
      setImmediate(() => void reader.ready());
      return reply;
    },
  };
}

const isListed = ({ kind }: Question): boolean => kind === 'choice' || kind === 'yes-no';

/** As the reader of all questions would read it; undefined where the answer is not one of a list. */
function readListed(question: Question, typed: string): Reading | undefined {
  if (!isListed(question)) return undefined;
  return question.kind === 'choice' ? readChoice(question, typed) : readYesNo(typed);
}

export interface LazyReader {
  readonly read: AskerSettings['read'];
  readonly ready: () => Promise<void>;
  /** Reads by these rules from now on. */
  readonly use: (pack: Pack) => void;
}

/** The reader of typed answers, loaded when it is first wanted. */
export function lazyReader(present: Pack, today: CliIo['today'], units?: Units): LazyReader {
  let pack = present;
  let readerFor: typeof import('./reader-for.js').readerFor | undefined;
  let read: AskerSettings['read'] | undefined;
  return {
    ready: async () => {
      readerFor ??= (await import('./reader-for.js')).readerFor;
      read ??= readerFor(pack, today, units);
    },
    use: (other) => {
      if (other === pack) return;
      pack = other;
      read = readerFor?.(pack, today, units);
    },
    read: (question, typed) =>
      read?.(question, typed) ??
      readListed(question, typed) ?? { kind: 'refused', says: 'One moment, then type it again.' },
  };
}
