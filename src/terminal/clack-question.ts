/** One question at a terminal: a list where the answers are few, a typed line otherwise; asked until it is a reply. */
import { type AnswerValue, UNKNOWN } from '../interview/answers.js';
import type { Reading } from '../interview/reading.js';
import type { AskerSettings, Prompt, Reply } from './asker.js';
import type { ClackScreen, ListEntry } from './clack-screen.js';
import { suggestedReply } from './line-question.js';
import {
  type Command,
  commandIn,
  countLine,
  DONT_KNOW,
  howToAnswer,
  LISTED,
  listedAnswers,
  NOTHING_TYPED,
  notedLine,
  optionLine,
  WORDS_LINE,
} from './words.js';

interface Conversation {
  readonly prompt: Prompt;
  readonly screen: ClackScreen;
  readonly read: AskerSettings['read'];
}

/** A reply, or undefined: ask the same question again. */
type Outcome = Reply | undefined;

/** Entry values: an answer by its place, a word of the session by name. */
const ANSWER = 'answer:';
const WORD = 'word:';

/** The reply to one prompt. */
export async function askAtTerminal(conversation: Conversation): Promise<Reply> {
  for (;;) {
    const isListed = listedAnswers(conversation.prompt.question) !== undefined;
    const outcome = await (isListed ? fromList(conversation) : fromText(conversation));
    if (outcome !== undefined) return outcome;
  }
}

async function fromList(conversation: Conversation): Promise<Outcome> {
  const { prompt, screen } = conversation;
  const answers = listedAnswers(prompt.question) ?? [];
  const entries: ListEntry[] = [
    // clack shows a hint only under the cursor; here it helps to choose, so it stands in the label.
    ...answers.map((answer, index) => ({ value: `${ANSWER}${index}`, label: optionLine(answer) })),
    { value: `${WORD}unknown`, label: DONT_KNOW, endsGroup: true },
    ...LISTED.map(({ command, label }) => ({ value: `${WORD}${command}`, label })),
  ];
  const message = `${countLine(prompt)}\n${prompt.question.text}`;
  const given = await screen.list(message, entries, initialEntry(prompt));
  if (given.kind !== 'given') return { kind: given.kind };
  if (given.value.startsWith(WORD)) return obey(given.value.slice(WORD.length) as Command, conversation);
  const answer = answers[Number(given.value.slice(ANSWER.length))];
  if (answer === undefined) return undefined;
  return { kind: 'value', value: answer.value, understood: answer.label, typed: answer.label };
}

/**
 * The entry that the cursor starts on: the shown default, or the first. Where someone can be hurt it starts on
 * "don't know", so that a careless Enter states nothing that nobody has looked at.
 */
function initialEntry({ question, suggested }: Prompt): string | undefined {
  const index = listedAnswers(question)?.findIndex(({ value }) => value === suggested) ?? -1;
  if (index >= 0) return `${ANSWER}${index}`;
  return suggested === UNKNOWN || question.safety === true ? `${WORD}unknown` : undefined;
}

async function fromText(conversation: Conversation): Promise<Outcome> {
  const { prompt, screen, read } = conversation;
  const byDefault = suggestedReply(prompt);
  const check = (line: string) => {
    if (line === '') return byDefault === undefined ? NOTHING_TYPED : undefined;
    if (commandIn(line) !== undefined) return undefined;
    const reading = read(prompt.question, line);
    return reading.kind === 'refused' ? reading.says : undefined;
  };
  const suggestion = prompt.suggestedText === undefined ? '' : `\nEnter alone takes: ${prompt.suggestedText}`;
  const message = `${countLine(prompt)}\n${prompt.question.text}\n${howToAnswer(prompt)} Or type: ${DONT_KNOW}, help, back or quit.${suggestion}`;
  const given = await screen.typed(message, { placeholder: prompt.suggestedText ?? '', check });
  if (given.kind !== 'given') return { kind: given.kind };
  if (given.value === '') return byDefault?.kind === 'value' ? noted(byDefault, screen) : byDefault;
  const command = commandIn(given.value);
  if (command !== undefined) return obey(command, conversation);
  return settle(read(prompt.question, given.value), given.value, screen);
}

function obey(command: Command, { prompt, screen }: Conversation): Outcome {
  if (command === 'why') screen.say(prompt.why);
  else if (command === 'walk') screen.say(prompt.walk);
  else if (command === 'help') screen.say(`${prompt.help}\n${howToAnswer(prompt)}\n${WORDS_LINE}`);
  else {
    if (command === 'save' || command === 'quit') screen.leave(command);
    return { kind: command };
  }
  return undefined;
}

/** Asks what is in doubt before the reading is taken. */
async function settle(reading: Reading, typed: string, screen: ClackScreen): Promise<Outcome> {
  if (reading.kind === 'refused') return undefined;
  if (reading.kind === 'value') return noted({ ...reading, typed }, screen);
  const choices =
    reading.kind === 'which'
      ? reading.choices
      : [{ label: `keep ${reading.understood}`, value: reading.value }];
  const entries = choices.map(({ label }, index) => ({
    value: String(index),
    label,
    endsGroup: index === choices.length - 1,
  }));
  const given = await screen.list(
    reading.says,
    [...entries, { value: 'again', label: 'type it again' }],
    undefined,
  );
  if (given.kind === 'ended' || given.kind === 'interrupted') return { kind: given.kind };
  const choice = given.kind === 'given' ? choices[Number(given.value)] : undefined;
  if (choice === undefined) return undefined;
  const understood = reading.kind === 'odd' ? reading.understood : choice.label;
  return noted({ value: choice.value, understood, typed }, screen);
}

function noted(
  {
    value,
    understood,
    typed,
  }: { readonly value: AnswerValue; readonly understood: string; readonly typed: string },
  screen: ClackScreen,
): Reply {
  screen.say(notedLine(understood));
  return { kind: 'value', value, understood, typed };
}
