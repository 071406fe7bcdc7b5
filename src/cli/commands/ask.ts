/** `ask`: the guided session, at a terminal or line by line, to a saved plan. */
import { homedir } from 'node:os';
import { daysBetween } from '../../base/dates.js';
import type { Pack } from '../../rules/pack.js';
import type { SavedAnswer } from '../../session/saved-session.js';
import type { Asker, AskerSettings } from '../../terminal/asker.js';
import { runSession, type SessionEnd } from '../../terminal/session-loop.js';
import type { Command, ParsedArgs } from '../command.js';
import type { FinishInput } from '../finish-plan.js';
import { interviewFor } from '../interview-for.js';
import { type CliIo, EXIT } from '../io.js';
import { openSaving, type Saving } from '../saving.js';

export const ask: Command = {
  name: 'ask',
  summary: 'Answer questions about a lawn and save a plan',
  usage: 'ask [--answers FILE] [--plain] [--save FILE] [--out PLAN.md] [--force]',
  options: {
    answers: { type: 'string', value: 'FILE', says: 'answers that are known already' },
    plain: { type: 'boolean', says: 'numbered lines instead of drawn questions; reads piped lines too' },
    save: { type: 'string', value: 'FILE', says: 'keep the session there instead of in the state folder' },
    out: { type: 'string', value: 'PLAN.md', says: 'write the plan there' },
    force: { type: 'boolean', says: 'replace the plan file if it is there' },
  },
  run: (args, io) => runAsk(args, io),
};

async function runAsk(args: ParsedArgs, io: CliIo): Promise<number> {
  const pack = await io.loadPack(args.text('pack'));
  const signals = new AbortController();
  const asker = await askerFor(args, io, signals.signal, pack);
  const stop = (): void => signals.abort();
  for (const name of ['SIGTERM', 'SIGHUP', 'SIGINT'] as const) process.once(name, stop);
  try {
    const saving = await openSaving({
      file: args.text('save'),
      home: io.env.HOME ?? homedir(),
      env: io.env,
      today: io.today,
      asker,
      pack,
    });
    if (saving === undefined) return EXIT.done;
    const prefilled = await prefilledFrom(args, io, pack);
    const given = withDaysPassed([...prefilled, ...saving.answers], io.today, pack);
    const rules = interviewFor({ pack, today: io.today, given, startedOn: saving.startedOn });
    if (!args.flag('quiet')) asker.say(welcome(saving));
    const end = await runSession({
      asker,
      interview: rules.interview,
      save: () => saving.save(rules.toSave()),
    });
    return await leave(end, {
      args,
      io,
      asker,
      saving,
      pack,
      answers: rules.answers(),
      session: rules.toSave(),
      isOpen: rules.interview.next() !== undefined,
    });
  } finally {
    for (const name of ['SIGTERM', 'SIGHUP', 'SIGINT'] as const) process.removeListener(name, stop);
    asker.close();
  }
}

/** Drawn questions need a real terminal on both sides; everything else gets numbered lines. */
export async function askerFor(
  args: ParsedArgs,
  io: CliIo,
  interrupt: AbortSignal,
  pack: Pack,
): Promise<Asker> {
  const isDrawn =
    !args.flag('plain') &&
    !io.env.ACCESSIBLE &&
    io.env.TERM !== 'dumb' &&
    io.input.isTTY === true &&
    io.output.isTTY === true;
  const reader = lazyReader(pack, io.today);
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
    const [{ createLineAsker }] = await Promise.all([import('../../terminal/line-asker.js'), reader.ready()]);
    return createLineAsker(settings);
  }
  const asker = (await import('../../terminal/clack-asker.js')).createClackAsker(settings);
  return {
    ...asker,
    ask: async (prompt) => {
      // A list is picked from, nothing is read: it can be drawn while the reader loads.
      const isPicked = prompt.question.kind === 'choice' || prompt.question.kind === 'yes-no';
      if (!isPicked) await reader.ready();
      const reply = asker.ask(prompt);
      setImmediate(() => void reader.ready());
      return reply;
    },
  };
}

/** The reader of typed answers, loaded when it is first wanted. */
function lazyReader(
  pack: Pack,
  today: CliIo['today'],
): { read: AskerSettings['read']; ready: () => Promise<void> } {
  let read: AskerSettings['read'] | undefined;
  return {
    ready: async () => {
      read ??= (await import('../reader-for.js')).readerFor(pack, today);
    },
    read: (question, typed) =>
      read?.(question, typed) ?? { kind: 'refused', says: 'One moment, then type it again.' },
  };
}

async function prefilledFrom(args: ParsedArgs, io: CliIo, pack: Pack): Promise<SavedAnswer[]> {
  const file = args.text('answers');
  if (file === undefined) return [];
  const { answersFrom } = await import('./plan.js');
  const answers = answersFrom(await io.readText(file), file, pack, io.today);
  return Object.entries(answers).map(([questionId, value]) => ({ questionId, value, typed: '' }));
}

/** "3 days ago", said last week, is 10 days ago today. */
function withDaysPassed(answers: readonly SavedAnswer[], today: CliIo['today'], pack: Pack): SavedAnswer[] {
  return answers.map((answer) => {
    const isAgo = pack.questionById.get(answer.questionId)?.kind === 'days-ago';
    if (!isAgo || typeof answer.value !== 'number' || answer.givenOn === undefined) return answer;
    return {
      ...answer,
      value: answer.value + Math.max(0, daysBetween(answer.givenOn, today)),
      givenOn: today,
    };
  });
}

function welcome(saving: Saving): string {
  const start =
    saving.answers.length > 0
      ? 'We go on where you stopped.'
      : 'I ask about the lawn, you answer what you can; "don\'t know" is always an answer.';
  return `${start} Every answer is kept in ${saving.where}, readable by you alone, and goes nowhere else.`;
}

async function leave(
  end: SessionEnd,
  context: FinishInput & { readonly saving: Saving; readonly isOpen: boolean },
): Promise<number> {
  const { saving, io, isOpen } = context;
  if (end.outcome === 'finished' || (end.outcome === 'ended' && !isOpen)) {
    const { finishPlan } = await import('../finish-plan.js');
    const code = await finishPlan(context);
    await saving.finished();
    return code;
  }
  await saving.release();
  io.err(
    end.isSaved
      ? `\nYour answers are saved:\n  ${saving.where}\nGo on with:\n  ${saving.resume}\n`
      : '\nYour answers could not be saved.\n',
  );
  if (end.outcome === 'interrupted') return EXIT.interrupted;
  return end.outcome === 'ended' ? EXIT.answers : EXIT.done;
}
