/** How the program was started, so that a message can tell a command that works there. */

type Environment = Readonly<Record<string, string | undefined>>;

/** Makes the line to type for some words: `seedbed ask`, or `npm start -- ask` when npm started it. */
export type CommandLine = (words: string) => string;

/** npm tells its children by these two names which of its commands runs them. */
export function commandLineFor({
  npm_lifecycle_event: script,
  npm_command: command,
}: Environment): CommandLine {
  if (script === 'start') return (words) => (words === '' ? 'npm start' : `npm start -- ${words}`);
  const start = command === 'exec' ? 'npx seedbed' : 'seedbed';
  return (words) => (words === '' ? start : `${start} ${words}`);
}
