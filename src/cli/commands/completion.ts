/** `completion`: a script for the shell, made from the tables of commands and options. */
import { COMMON_OPTIONS, type Command, metricUnits } from '../command.js';
import { CliStop, EXIT } from '../io.js';

const SHELLS = ['bash', 'zsh', 'fish'] as const;
type Shell = (typeof SHELLS)[number];

/** @param loads every command, loaded only when a script is asked for */
export const completionOf = (loads: readonly (() => Promise<Command>)[]): Command => ({
  name: 'completion',
  summary: `Print a completion script for the shell

  bash: seedbed completion bash > ~/.local/share/bash-completion/completions/seedbed
  zsh:  seedbed completion zsh > a folder of your fpath, as _seedbed
  fish: seedbed completion fish > ~/.config/fish/completions/seedbed.fish`,
  usage: 'completion bash|zsh|fish',
  options: { units: metricUnits('the script is the same in all units') },
  takes: { least: 1, most: 1, says: `one shell: ${SHELLS.join(', ')}` },
  words: SHELLS,
  async run(args, io) {
    const [typed = ''] = args.positionals;
    const shell = SHELLS.find((each) => each === typed);
    if (shell === undefined) {
      throw new CliStop(EXIT.usage, `No completion for "${typed}". Allowed: ${SHELLS.join(', ')}.`);
    }
    const commands = await Promise.all(loads.map((load) => load()));
    const { scriptFor } = await import('../completion-scripts.js');
    io.out(scriptFor[shell satisfies Shell](commands, COMMON_OPTIONS));
    return EXIT.done;
  },
});
