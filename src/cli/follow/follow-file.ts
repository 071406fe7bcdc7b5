/** What `follow` goes on from: a saved session, or a plan as JSON, made into one. */
import type { IsoDate } from '../../base/dates.js';
import type { Units } from '../../base/us-units.js';
import { readAnswersFile } from '../../interview/answers-file.js';
import { openQuestions } from '../../interview/open-questions.js';
import { assemblePlan, type PlanInput } from '../../planner/assemble-plan.js';
import type { Plan } from '../../planner/plan.js';
import type { Followed } from '../../planner/progress.js';
import { scopeFor } from '../../planner/working-scope.js';
import type { Pack } from '../../rules/pack.js';
import { NO_AREAS, readSession, type SavedSession } from '../../session/saved-session.js';
import { answersContext } from '../answers-context.js';
import { answersOn, withClimateOf } from '../given-answers.js';
import { type CliIo, CliStop, EXIT } from '../io.js';
import { refuseOtherHalf } from '../own-climate.js';
import { sessionBeside } from './session-beside.js';

export interface FollowFile {
  /** Where everything told is kept. */
  readonly path: string;
  readonly session: SavedSession & { readonly followed: Followed };
  /** The plan as it was first made: its answers, its day. */
  readonly input: PlanInput;
}

/** @throws {CliStop} when the file is nothing that can be followed, with what to use instead */
export async function openFollowFile(path: string, { save, io, pack, units }: Opening): Promise<FollowFile> {
  const text = await io.readText(path);
  if (looksLikeMarkdown(text))
    throw new CliStop(
      EXIT.files,
      `${path} is a plan to read, and cannot be read back. ${insteadOf(path, io)}`,
    );
  const value = parsed(text);
  const isPlan = typeof value === 'object' && value !== null && 'steps' in value && 'verdict' in value;
  return isPlan
    ? fromPlan(value as unknown as Plan, { path, save, io, pack, units })
    : fromSession(text, { path, save, io, pack, units });
}

interface Opening {
  /** Where to keep what is told, if not in the session. */
  readonly save: string | undefined;
  readonly io: CliIo;
  readonly pack: Pack;
  /** In which the plan is worded. */
  readonly units: Units;
}

type OpeningAt = Opening & { readonly path: string };

const looksLikeMarkdown = (text: string): boolean => /^\uFEFF?\s*#{1,3} /.test(text);

function insteadOf(path: string, io: CliIo): string {
  const beside = sessionBeside(path);
  return io.exists(beside)
    ? `The answers behind it lie beside it: seedbed follow ${beside}`
    : 'Use the session that was saved with it (its name ends in .session.json), the file of "seedbed ask --save FILE", or a plan made with "seedbed plan FILE --format json".';
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch {
    return undefined;
  }
}

/** What was done is told of one lawn; several areas have days of their own, and each needs a plan of its own for that. */
function refuseAreas(path: string, areas: readonly string[]): void {
  if (areas.length === 0) return;
  throw new CliStop(
    EXIT.answers,
    `${path} has several areas (${areas.join(', ')}), and one lawn is followed at a time. Plan the area that you want to follow by itself: put its answers and those for the whole lawn into one answers file, and use "seedbed plan FILE --format json".`,
  );
}

async function fromSession(
  text: string,
  { path, save, io, pack: rules, units }: OpeningAt,
): Promise<FollowFile> {
  const reading = await readSession(text);
  if (reading.kind === 'foreign')
    throw new CliStop(
      EXIT.files,
      `${path} is neither a saved session nor a plan as JSON, and was left as it is. ${insteadOf(path, io)}`,
    );
  if (reading.kind === 'damaged')
    throw new CliStop(
      EXIT.files,
      `${path} is damaged and was left as it is: ${reading.problems.join(' ')} Mend it, or save what can be read of its answers with: seedbed ask --save ${path}`,
    );
  refuseAreas(path, reading.session.areas);
  const pack = withClimateOf(rules, reading.session);
  const session = withClimateKept(reading.session, pack);
  const madeOn = session.followed?.madeOn ?? lastGivenOn(session);
  const answers = answersOn(madeOn, session.answers, pack);
  refuseOtherHalf(answers, pack);
  const input = { pack, answers, today: madeOn, assumeAll: session.followed?.assumeAll ?? false, units };
  const open = openQuestions(pack, scopeFor({ ...input, assume: 'said' }));
  if (!input.assumeAll && open.length > 0)
    throw new CliStop(
      EXIT.answers,
      `${path} is not answered to the end, so there is no plan to follow yet. Go on with it: seedbed ask --save ${path}`,
    );
  return opened({ session, input, path: save ?? path, from: path, io });
}

/** The day on which the session came to its plan. */
const lastGivenOn = ({ answers, startedOn }: SavedSession): IsoDate =>
  answers.reduce(
    (last, { givenOn }) => (givenOn !== undefined && givenOn > last ? givenOn : last),
    startedOn,
  );

/** Whatever climate the plan goes by from now on stays with what is told. */
const withClimateKept = (session: SavedSession, { ownClimate }: Pack): SavedSession =>
  ownClimate === undefined ? session : { ...session, climate: ownClimate };

/** The rules with the own climate that the plan was made by. */
async function inClimateOf({ climate }: Plan, path: string, rules: Pack): Promise<Pack> {
  if (rules.ownClimate !== undefined || climate === null || climate.station !== null) return rules;
  const { ownClimate } = await import('../../session/session-schema.js');
  const own = ownClimate(climate.own);
  if (own !== undefined) return withClimateOf(rules, { climate: own });
  throw new CliStop(
    EXIT.answers,
    `${path} was made by an own climate (${climate.period}), whose twelve means are not in it. Give them again with --climate FILE.`,
  );
}

async function fromPlan(plan: Plan, { path, save, io, pack: rules, units }: OpeningAt): Promise<FollowFile> {
  refuseAreas(
    path,
    (plan.areas ?? []).map(({ name }) => name),
  );
  const { madeOn, steps } = plan;
  if (plan.answers === undefined)
    throw new CliStop(
      EXIT.files,
      `${path} is a plan without its answers, so it cannot be worked out again. Make it once more from the answers file: seedbed plan FILE --today ${madeOn} --format json`,
    );
  if (steps.some(({ doneOn }) => doneOn !== null))
    throw new CliStop(
      EXIT.files,
      `${path} was already worked out again. Go on from the session that it came from.`,
    );
  const pack = await inClimateOf(plan, path, rules);
  const context = answersContext(pack, madeOn);
  const read = readAnswersFile(JSON.stringify({ format: 1, answers: plan.answers }), context);
  if (!read.ok) throw new CliStop(EXIT.answers, `${path}: ${read.faults.join(' ')}`);
  refuseOtherHalf(read.answers, pack);
  const kept = save ?? sessionBeside(path);
  if (io.exists(kept))
    throw new CliStop(
      EXIT.files,
      `${kept} is already there. If it holds what you told about this plan, go on with it: seedbed follow ${kept}. Otherwise choose another place with --save.`,
    );
  const answered: SavedSession = {
    format: 1,
    seedbedSession: 2,
    pack: plan.pack,
    startedOn: madeOn,
    answers: Object.entries(read.answers).map(([questionId, value]) => ({
      questionId,
      value,
      typed: '',
      givenOn: madeOn,
    })),
    dormant: [],
    heldOver: [],
    ...NO_AREAS,
  };
  const session = withClimateKept(answered, pack);
  const input = { pack, answers: read.answers, today: madeOn, assumeAll: true, units };
  return opened({ session, input, path: kept, from: path, io });
}

function opened({
  session,
  input,
  path,
  from,
  io,
}: {
  session: SavedSession;
  input: PlanInput;
  path: string;
  from: string;
  io: CliIo;
}): FollowFile {
  const { today: madeOn } = input;
  if (io.today < madeOn)
    throw new CliStop(
      EXIT.usage,
      `${from} was made on ${madeOn}, and the day given is ${io.today}. Give a day on or after it with --today.`,
    );
  const followed = session.followed ?? firstFollowed(input);
  return { path, session: { ...session, followed }, input };
}

/** The plan as it is first made, and nothing told yet. */
export function firstFollowed(input: PlanInput): Followed {
  const { today: madeOn, assumeAll } = input;
  const planned = assemblePlan(input).steps.map(({ id, title, startOn, endOn }) => ({
    step: id,
    title,
    startOn,
    endOn,
  }));
  return { madeOn, assumeAll, planned, records: [] };
}
