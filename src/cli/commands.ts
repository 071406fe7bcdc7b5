/** The list of commands; each is loaded only when it is called, so that help costs nothing. */
import type { Command } from './command.js';
import type { CommandLine } from './how-started.js';

export interface CommandEntry {
  readonly name: string;
  readonly summary: string;
  readonly load: () => Promise<Command>;
}

/** What runs when no command is named. */
export const START: CommandEntry = {
  name: 'start',
  summary: 'start, or go on with an unfinished session',
  load: async () => (await import('./commands/start.js')).start,
};

export const COMMANDS: readonly CommandEntry[] = [
  {
    name: 'ask',
    summary: 'answer questions about a lawn and save a plan',
    load: async () => (await import('./commands/ask.js')).ask,
  },
  {
    name: 'plan',
    summary: 'make a plan from an answers file, without questions',
    load: async () => (await import('./commands/plan.js')).plan,
  },
  {
    name: 'compare',
    summary: 'what changes in the plan when answers change, and why',
    load: async () => (await import('./commands/compare.js')).compare,
  },
  {
    name: 'follow',
    summary: 'later: say what was done; the rest is planned again',
    load: async () => (await import('./commands/follow.js')).follow,
  },
  {
    name: 'drill',
    summary: 'train: find out what is wrong with an invented lawn',
    load: async () => (await import('./commands/drill.js')).drill,
  },
  {
    name: 'reckon',
    summary: 'work out one figure, with equation and source',
    load: async () => (await import('./commands/reckon.js')).reckon,
  },
  {
    name: 'batch',
    summary: 'make many plans, a line of JSON each',
    load: async () => (await import('./commands/batch.js')).batch,
  },
  {
    name: 'rules',
    summary: 'check or show the rules, for whoever writes them',
    load: async () => (await import('./commands/rules.js')).rules,
  },
  {
    name: 'completion',
    summary: 'completion of commands and options in your shell',
    load: async () =>
      (await import('./commands/completion.js')).completionOf(COMMANDS.map(({ load }) => load)),
  },
];

export function generalHelp(version: string, commandLine: CommandLine): string {
  const wide = COMMANDS.map(({ name }) => commandLine(name).length).reduce((a, b) => Math.max(a, b));
  const row = (words: string, says: string): string => `  ${commandLine(words).padEnd(wide)}   ${says}`;
  const rows = COMMANDS.map(({ name, summary }) => row(name, summary));
  return `Seedbed ${version}: asks about a tired lawn and writes a dated plan that brings it back.

${row('', START.summary)}
${rows.join('\n')}

  ${commandLine('COMMAND --help')} tells more. Answers stay in files on this machine; nothing is sent anywhere.
`;
}
