/** `rules check`: every problem of a pack at once, for whoever writes rules. */
import type { Command } from '../command.js';
import { CliStop, EXIT } from '../io.js';
import { problemsOf } from '../load-pack.js';
import { RULES_FOLDER } from '../paths.js';

export const rules: Command = {
  name: 'rules',
  summary: 'Check the rules and list every problem',
  usage: 'rules check [FOLDER]',
  options: {},
  takes: { least: 1, most: 2, says: 'a task and perhaps a folder' },
  async run(args, io) {
    const [task, folder = args.text('pack') ?? RULES_FOLDER, ...more] = args.positionals;
    if (task !== 'check' || more.length > 0) {
      throw new CliStop(EXIT.usage, `"rules" knows one task: check.\nUsage: seedbed ${rules.usage}`);
    }
    const { data, problems } = await problemsOf(folder);
    const { explain } = await import('../../rules/problem.js');
    for (const problem of problems) io.out(`${explain(problem)}\n`);
    if (problems.length > 0) {
      io.err(`${problems.length} to mend.\n`);
      return EXIT.rulesFound;
    }
    const count = (list: readonly unknown[] | undefined): number => list?.length ?? 0;
    io.out(
      `The rules are sound: ${count(data?.questions)} questions, ${count(data?.findings)} findings, ${count(data?.steps)} steps, ${count(data?.cautions)} cautions, ${count(data?.figures)} figures, ${count(data?.sources)} sources.\n`,
    );
    return EXIT.done;
  },
};
