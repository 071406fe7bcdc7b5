/** `seedbed` alone: the guided session at a terminal; elsewhere the bundled example, from first question to plan. */
import { readFileSync } from 'node:fs';
import { type Command, type ParsedArgs, unitsOf } from '../command.js';
import { type CliIo, EXIT } from '../io.js';
import { EXAMPLE_JOURNEY } from '../paths.js';
import { ask } from './ask.js';

export const start: Command = {
  ...ask,
  name: 'seedbed',
  summary: 'Start, or go on with an unfinished session',
  usage: '[--answers FILE] [--plain] [--save FILE] [--out PLAN.md] [--force] [--units metric|us]',
  run: (args, io) =>
    (io.input.isTTY === true && io.output.isTTY === true) || isOwnLawn(args)
      ? ask.run(args, io)
      : playExample(args, io),
};

/** Whoever names a file or asks for lines means a lawn of their own, terminal or not. */
const isOwnLawn = (args: ParsedArgs): boolean =>
  args.flag('plain') || ['answers', 'save', 'out'].some((name) => args.text(name) !== undefined);

async function playExample(args: ParsedArgs, io: CliIo): Promise<number> {
  const units = unitsOf(args);
  const [{ playJourney }, { assemblePlan }, { rendered }] = await Promise.all([
    import('../play-journey.js'),
    import('../../planner/assemble-plan.js'),
    import('../render-plan.js'),
  ]);
  io.err(
    `This is an invented example lawn, played from the first question to the plan. For your own lawn run "${io.commandLine('')}" in a terminal, or "${io.commandLine('plan FILE')}" with an answers file.${units === 'us' ? ' Its answers were typed in metric units; the plan is in US units.' : ''}\n\n`,
  );
  const pack = await io.loadPack(args.text('pack'));
  const journey = JSON.parse(readFileSync(EXAMPLE_JOURNEY, 'utf8')) as Parameters<typeof playJourney>[0];
  const { plan, answers } = await playJourney(journey, pack, io.dialogue, io.width);
  const said =
    units === plan.units
      ? plan
      : assemblePlan({ pack, answers, today: plan.madeOn, assumeAll: false, units });
  io.out(await rendered(said, 'md'));
  return EXIT.done;
}
