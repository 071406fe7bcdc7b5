/**
 * The plain line mode: one numbered question at a time, nothing redrawn, no colour, for screen readers,
 * dumb terminals and piped lines. Every answer is a line: a number of the list, words, or a value with unit.
 */
import type { Asker, AskerSettings, PickChoice } from './asker.js';
import { askInLines } from './line-question.js';
import { type LineScreen, openLineScreen } from './line-screen.js';
import { type Command, commandIn } from './words.js';

type Choices = readonly PickChoice[];

const YES = /^(?:y|yes)$/i;
const NO = /^(?:n|no)$/i;

/** An asker over lines of text. */
export function createLineAsker(settings: AskerSettings): Asker {
  const screen = openLineScreen(settings);
  let isFirst = true;
  return {
    async ask(prompt) {
      const left = screen.left();
      if (left !== undefined) return { kind: left };
      const reply = await askInLines({ prompt, screen, read: settings.read }, isFirst);
      isFirst = false;
      return reply;
    },
    pick: (message, choices, leaveLabel) => pickInLines({ message, choices, leaveLabel }, screen),
    confirm: (message, suggested) => confirmInLines(message, suggested, screen),
    async line(message, suggested, as = 'anything') {
      if (screen.left() !== undefined) return undefined;
      screen.put(`\n${suggested === '' ? message : `${message} (Enter alone takes ${suggested})`}`);
      const line = await screen.next();
      if (typeof line !== 'string') return undefined;
      const isGivenUp = as === 'name' ? isLeaving(commandIn(line), screen) : goesBack(line, screen);
      if (isGivenUp) return undefined;
      return line === '' ? suggested : line;
    },
    say: (text) => screen.put(text),
    close: () => screen.close(),
    left: () => screen.left(),
  };
}

interface PickList {
  readonly message: string;
  readonly choices: Choices;
  readonly leaveLabel: string | undefined;
}

async function pickInLines(
  { message, choices, leaveLabel }: PickList,
  screen: LineScreen,
): Promise<string | undefined> {
  if (screen.left() !== undefined) return undefined;
  const labels = [...choices.map(({ label }) => label), ...(leaveLabel === undefined ? [] : [leaveLabel])];
  screen.put(`\n${message}`);
  screen.putList(labels);
  if (leaveLabel !== undefined) screen.put(`Enter alone takes: ${leaveLabel}`);
  for (;;) {
    const line = await screen.next();
    if (typeof line !== 'string') return undefined;
    const command = commandIn(line);
    const isLast = line === '' || command === 'back' || Number(line) === choices.length + 1;
    if (isLeaving(command, screen) || (isLast && leaveLabel !== undefined)) return undefined;
    const chosen = choices[Number(line) - 1] ?? onlyOneStarting(choices, line);
    if (chosen !== undefined) return chosen.value;
    screen.put(`Type a number from 1 to ${labels.length}, or quit.`);
  }
}

async function confirmInLines(
  message: string,
  suggested: boolean,
  screen: LineScreen,
): Promise<boolean | undefined> {
  if (screen.left() !== undefined) return undefined;
  screen.put(`\n${message} (yes or no; Enter alone takes ${suggested ? 'yes' : 'no'})`);
  for (;;) {
    const line = await screen.next();
    if (typeof line !== 'string' || goesBack(line, screen)) return undefined;
    if (line === '') return suggested;
    if (YES.test(line)) return true;
    if (NO.test(line)) return false;
    screen.put('Type yes or no.');
  }
}

/** "save" and "quit" leave for good. */
function isLeaving(command: Command | undefined, screen: LineScreen): boolean {
  if (command !== 'save' && command !== 'quit') return false;
  screen.leave(command);
  return true;
}

/** "back" gives up this one question. */
function goesBack(line: string, screen: LineScreen): boolean {
  const command = commandIn(line);
  return command === 'back' || isLeaving(command, screen);
}

function onlyOneStarting(choices: Choices, line: string): Choices[number] | undefined {
  const matching = choices.filter(({ label }) => label.toLowerCase().startsWith(line.toLowerCase()));
  return matching.length === 1 ? matching[0] : undefined;
}
