/** `seedbed` alone: the guided session at a terminal; elsewhere the bundled example, from first question to plan. */
import { readFileSync } from 'node:fs';
import type { Command, ParsedArgs } from '../command.js';
import { type CliIo, EXIT } from '../io.js';
import { EXAMPLE_JOURNEY } from '../paths.js';
import { ask } from './ask.js';

export const start: Command = {
  ...ask,
  name: 'seedbed',
  summary: 'Start, or go on with an unfinished session',
  usage: '[--answers FILE] [--plain] [--save FILE] [--out PLAN.md] [--force]',
  run: (args, io) =>
    (io.input.isTTY === true && io.output.isTTY === true) || isOwnLawn(args)
      ? ask.run(args, io)
      : playExample(args, io),
};

/** Whoever names a file or asks for lines means a lawn of their own, terminal or not. */
const isOwnLawn = (args: ParsedArgs): boolean =>
  args.flag('plain') || ['answers', 'save', 'out'].some((name) => args.text(name) !== undefined);

async function playExample(args: ParsedArgs, io: CliIo): Promise<number> {
  const [{ playJourney }, { rendered }] = await Promise.all([
    import('../play-journey.js'),
    import('../render-plan.js'),
  ]);
  io.err(
    `This is an invented example lawn, played from the first question to the plan. For your own lawn run "${io.commandLine('')}" in a terminal, or "${io.commandLine('plan FILE')}" with an answers file.\n\n`,
  );
  const pack = await io.loadPack(args.text('pack'));
  const journey = JSON.parse(readFileSync(EXAMPLE_JOURNEY, 'utf8')) as Parameters<typeof playJourney>[0];
  const { plan } = await playJourney(journey, pack, io.dialogue, io.width);
  io.out(await rendered(plan, 'md'));
  return EXIT.done;
}
