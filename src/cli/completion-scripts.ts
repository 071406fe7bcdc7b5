/** The completion scripts themselves. Only words of our own tables go in: plain letters, digits and hyphens. */
import type { Command, OptionSpec } from './command.js';

type Options = Readonly<Record<string, OptionSpec>>;
type Script = (commands: readonly Command[], common: Options) => string;

export const scriptFor: Readonly<Record<'bash' | 'zsh' | 'fish', Script>> = { bash, zsh, fish };

const allOptions = (command: Command, common: Options): readonly (readonly [string, OptionSpec])[] =>
  Object.entries({ ...command.options, ...common });

/** The first line of what a command or option says, safe inside single quotes. */
const oneLine = (says: string): string =>
  (says.split('\n')[0] ?? '').replaceAll("'", '’').replace(/[[\]:]/g, ' ');

function bash(commands: readonly Command[], common: Options): string {
  const cases = commands.map((command) => {
    const options = allOptions(command, common);
    const flags = options.map(([name]) => `--${name}`).join(' ');
    return `    ${command.name}) words="${[...(command.words ?? []), flags].join(' ').trim()}" ;;`;
  });
  const values = valuesByOption(commands, common).map(
    ([name, allowed]) =>
      `    --${name}) COMPREPLY=($(compgen -W "${allowed.join(' ')}" -- "$current")); return ;;`,
  );
  return `# bash completion for seedbed
_seedbed() {
  local current="\${COMP_WORDS[COMP_CWORD]}" previous="\${COMP_WORDS[COMP_CWORD-1]}" words
  COMPREPLY=()
  case "$previous" in
${values.join('\n')}
  esac
  if [ "$COMP_CWORD" -eq 1 ]; then
    COMPREPLY=($(compgen -W "${commands.map(({ name }) => name).join(' ')} --help --version" -- "$current"))
    return
  fi
  case "\${COMP_WORDS[1]}" in
${cases.join('\n')}
    *) return ;;
  esac
  COMPREPLY=($(compgen -W "$words" -- "$current"))
}
complete -o default -F _seedbed seedbed
`;
}

function zsh(commands: readonly Command[], common: Options): string {
  const named = commands.map(({ name, summary }) => `    '${name}:${oneLine(summary)}'`);
  const cases = commands.map((command) => {
    const options = allOptions(command, common).map(([name, { says, value, allowed }]) => {
      const taken =
        allowed === undefined
          ? value === undefined
            ? ''
            : `:${value}:_files`
          : `:${value}:(${allowed.join(' ')})`;
      return `'--${name}[${oneLine(says)}]${taken}'`;
    });
    const words =
      command.words === undefined
        ? "'*:file:_files'"
        : `'1:word:(${command.words.join(' ')})' '*:file:_files'`;
    return `    ${command.name}) _arguments ${[...options, words].join(' ')} ;;`;
  });
  return `#compdef seedbed
# zsh completion for seedbed
_seedbed() {
  local -a commands
  commands=(
${named.join('\n')}
  )
  if (( CURRENT == 2 )); then
    _describe 'command' commands
    return
  fi
  local command=$words[2]
  shift words
  (( CURRENT-- ))
  case $command in
${cases.join('\n')}
  esac
}
_seedbed "$@"
`;
}

function fish(commands: readonly Command[], common: Options): string {
  const lines = commands.flatMap((command) => {
    const on = `complete -c seedbed -n '__fish_seen_subcommand_from ${command.name}'`;
    return [
      `complete -c seedbed -n '__fish_use_subcommand' -a ${command.name} -d '${oneLine(command.summary)}'`,
      ...(command.words === undefined ? [] : [`${on} -a '${command.words.join(' ')}'`]),
      ...allOptions(command, common).map(([name, { says, value, allowed }]) => {
        const taken =
          value === undefined ? '' : allowed === undefined ? ' -r' : ` -x -a '${allowed.join(' ')}'`;
        return `${on} -l ${name}${taken} -d '${oneLine(says)}'`;
      }),
    ];
  });
  return `# fish completion for seedbed\n${lines.join('\n')}\n`;
}

/** Every option that takes only some values, with all that any command allows. */
function valuesByOption(commands: readonly Command[], common: Options): [string, string[]][] {
  const values = new Map<string, Set<string>>();
  for (const command of commands) {
    for (const [name, { allowed = [] }] of allOptions(command, common)) {
      if (allowed.length > 0) values.set(name, new Set([...(values.get(name) ?? []), ...allowed]));
    }
  }
  return [...values].map(([name, allowed]) => [name, [...allowed]]);
}
