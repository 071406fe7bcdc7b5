/** `ask`: the guided session, at a terminal or line by line, to a saved plan. */
import { daysBetween } from '../../base/dates.js';
import type { Answers } from '../../interview/answers.js';
import type { Pack } from '../../rules/pack.js';
import { NO_AREAS, type SavedAnswer, type SavedAreas } from '../../session/saved-session.js';
import type { Leaving } from '../../terminal/asker.js';
import { runSession, type SessionEnd } from '../../terminal/session-loop.js';
import { askerFor, lazyReader } from '../asker-for.js';
import { type Command, type ParsedArgs, PRICES_OPTION, UNITS_OPTION, unitsOf } from '../command.js';
import type { FinishInput } from '../finish-plan.js';
import { type CliIo, CliStop, EXIT, isScheduleClash } from '../io.js';
import { lawnInterview } from '../lawn-interview.js';
import { CLIMATE_OPTION, refuseOtherHalf, withOwnClimate } from '../own-climate.js';
import { openSaving, quoted, type Saving } from '../saving.js';

export const ask: Command = {
  name: 'ask',
  summary: 'Answer questions about a lawn and save a plan',
  usage:
    'ask [--answers FILE] [--plain] [--save FILE] [--out PLAN.md] [--force] [--climate FILE] [--prices FILE] [--units metric|us] | ask --walk [--answers FILE] [--out FILE]',
  options: {
    ...CLIMATE_OPTION,
    answers: { type: 'string', value: 'FILE', says: 'answers that are known already' },
    plain: { type: 'boolean', says: 'numbered lines instead of drawn questions; reads piped lines too' },
    save: { type: 'string', value: 'FILE', says: 'keep the session there instead of in the state folder' },
    out: { type: 'string', value: 'PLAN.md', says: 'write the plan there' },
    force: { type: 'boolean', says: 'replace the plan file if it is there' },
    prices: PRICES_OPTION,
    units: UNITS_OPTION,
    walk: {
      type: 'boolean',
      says: 'instead: a list to print of what to look at out of doors, and what to take',
    },
  },
  run: (args, io) => runAsk(args, io),
};

async function runAsk(args: ParsedArgs, io: CliIo): Promise<number> {
  const present = await withOwnClimate(await io.loadPack(args.text('pack')), args, io);
  if (args.flag('walk')) return printWalk(args, io, present);
  // Read before the first question: a fault in it is better told now than after forty answers.
  const prices =
    args.text('prices') === undefined
      ? undefined
      : await (await import('../read-prices.js')).pricesFrom(args, io, present);
  const signals = new AbortController();
  const reader = lazyReader(present, io.today, unitsOf(args));
  const asker = await askerFor(args, io, signals.signal, reader);
  const stop = (): void => signals.abort();
  for (const name of ['SIGTERM', 'SIGHUP', 'SIGINT'] as const) process.once(name, stop);
  try {
    const saving = await openSaving({
      file: args.text('save'),
      env: io.env,
      today: io.today,
      asker,
      pack: present,
      commandLine: goingOn(args, io),
    });
    if (saving === undefined) return codeOfLeaving(asker.left?.());
    const pack = { ...(saving.pack ?? present), ownClimate: present.ownClimate ?? saving.climate };
    reader.use(pack);
    const prefilled = await prefilledFrom(args, io, pack);
    const given = withDaysPassed([...prefilled.answers, ...saving.answers], io.today, pack);
    refuseOtherHalf(Object.fromEntries(given.map(({ questionId, value }) => [questionId, value])), pack);
    const { heldOver, startedOn } = saving;
    const { areas, inAreas } = saving.areas.length > 0 ? saving : prefilled;
    const rules = lawnInterview({
      pack,
      areas,
      inAreas,
      today: io.today,
      given,
      heldOver,
      startedOn,
      units: unitsOf(args),
      withPrices: prices !== undefined,
      ...(heldOver.length === 0
        ? {}
        : { canOffer: (await import('../fitting.js')).fitsQuestions(pack, io.today) }),
    });
    // What was moved over or could be read is safe before the first question.
    await saving.save(rules.toSave()).catch(() => undefined);
    if (!args.flag('quiet')) asker.say(welcome(saving, pack));
    const save = (): Promise<void> => saving.save(rules.toSave());
    for (;;) {
      const end = await runSession({ asker, interview: rules.interview, save });
      const lawn = rules.answers();
      try {
        return await leave(end, {
          args,
          io,
          asker,
          saving,
          pack,
          prices,
          ...lawn,
          session: rules.toSave(),
          isOpen: rules.isOpen(),
        });
      } catch (error) {
        if (!isScheduleClash(error)) throw error;
        if (end.outcome !== 'finished' || asker.left?.() !== undefined) {
          await saving.release();
          throw new CliStop(EXIT.answers, `${error.message}${partingWords(end, { saving, ...lawn })}`);
        }
        // Back to the list of answers, where one can be changed.
        asker.say(`\n${error.message}\n`);
      }
    }
  } finally {
    for (const name of ['SIGTERM', 'SIGHUP', 'SIGINT'] as const) process.removeListener(name, stop);
    asker.close();
  }
}

/** How to go on, with the same units and prices. */
function goingOn(args: ParsedArgs, io: CliIo): CliIo['commandLine'] {
  const prices = args.text('prices');
  const kept = [
    ...(prices === undefined ? [] : [`--prices ${quoted(prices)}`]),
    ...(unitsOf(args) === 'metric' ? [] : [`--units ${unitsOf(args)}`]),
  ];
  return (words) => io.commandLine(kept.length === 0 ? words : [words || 'ask', ...kept].join(' '));
}

/** The list goes where the plan would, and nothing is asked. */
async function printWalk(args: ParsedArgs, io: CliIo, pack: Pack): Promise<number> {
  const { answers: given, ...prefilled } = await prefilledFrom(args, io, pack);
  const { writeResult } = await import('../write-result.js');
  const { walks } = lawnInterview({
    pack,
    today: io.today,
    ...prefilled,
    given,
    heldOver: [],
    startedOn: io.today,
    units: unitsOf(args),
  });
  const where = { out: args.text('out'), force: args.flag('force'), quiet: args.flag('quiet') };
  await writeResult(`${walks()}\n`, where, io);
  return EXIT.done;
}

async function prefilledFrom(
  args: ParsedArgs,
  io: CliIo,
  pack: Pack,
): Promise<SavedAreas & { readonly answers: readonly SavedAnswer[] }> {
  const file = args.text('answers');
  if (file === undefined) return { answers: [], ...NO_AREAS };
  const { lawnFrom } = await import('../given-answers.js');
  const { answers, areas } = lawnFrom(await io.readText(file), file, pack, io.today);
  return {
    answers: asSaved(answers),
    areas: areas.map(({ name }) => name),
    inAreas: areas.flatMap((area) => asSaved(area.answers).map((answer) => ({ ...answer, area: area.name }))),
  };
}

const asSaved = (answers: Answers): SavedAnswer[] =>
  Object.entries(answers).map(([questionId, value]) => ({ questionId, value, typed: '' }));

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

function welcome(saving: Saving, { ownClimate }: Pack): string {
  const start =
    saving.answers.length > 0
      ? `We go on where you stopped.${ownClimate === undefined ? '' : ` The seasons follow your own climate: ${ownClimate.from}.`}`
      : 'I ask about the lawn, you answer what you can; "don\'t know" is always an answer.';
  const kept = saving.isKept
    ? ` Every answer is kept in ${saving.where}, readable by you alone, and goes nowhere else.`
    : '';
  return `${start} Type walk for a list of all that wants a look out of doors.${kept}`;
}

async function leave(
  end: SessionEnd,
  context: FinishInput & { readonly saving: Saving; readonly isOpen: boolean },
): Promise<number> {
  const { args, saving, io, isOpen } = context;
  if (end.outcome === 'finished' || (end.outcome === 'ended' && !isOpen)) {
    const { finishPlan } = await import('../finish-plan.js');
    const code = await finishPlan(context);
    if (!end.isSaved) return code;
    const { where, resume } = await saving.finished();
    if (!args.flag('quiet'))
      io.err(`\nYour answers are kept:\n  ${where}\nTo change one and plan again:\n  ${resume}\n`);
    return code;
  }
  await saving.release();
  io.err(partingWords(end, context));
  return codeOfLeaving(end.outcome === 'interrupted' || end.outcome === 'ended' ? end.outcome : undefined);
}

/** Left before a session was opened. */
function codeOfLeaving(left: Leaving | undefined): number {
  if (left === 'interrupted') return EXIT.interrupted;
  return left === 'ended' ? EXIT.answers : EXIT.done;
}

function partingWords(
  { isSaved }: SessionEnd,
  { saving, answers, areas }: Pick<FinishInput, 'answers' | 'areas'> & { readonly saving: Saving },
): string {
  if (Object.keys(answers).length + areas.length === 0)
    return '\nNothing was answered, so nothing is kept.\n';
  if (!isSaved) return '\nYour answers could not be saved.\n';
  return `\nYour answers are saved:\n  ${saving.where}\nGo on with:\n  ${saving.resume}\n`;
}
