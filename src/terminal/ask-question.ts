/** A question of the interview as something to ask: its answers, its words, and how a doubt is settled. */
import { cleanLine } from '../base/clean-text.js';
import { type AnswerValue, UNKNOWN } from '../interview/answers.js';
import type { Reading } from '../interview/reading.js';
import type { AskerSettings, Prompt, Reply } from './asker.js';
import type { Asking, Heard } from './asking.js';
import { settled } from './settle.js';
import {
  type Command,
  commandIn,
  countLine,
  DONT_KNOW,
  howToAnswer,
  KEEP_IT,
  listedAnswers,
  NOTHING_TYPED,
  optionLine,
  SAY_IT_AGAIN,
  WHICH_ONE,
  WORDS_LINE,
} from './words.js';

type Read = AskerSettings['read'];
type Doubt = Extract<Reading, { kind: 'odd' | 'which' }>;
type Answered = Pick<Extract<Reply, { kind: 'value' }>, 'value' | 'understood'>;

const NO = /^(?:n|no)$/i;

/** The question as it is first asked. */
export function askingOf(prompt: Prompt, read: Read): Asking<Reply> {
  const { question } = prompt;
  const answers = listedAnswers(question);
  const byDefault = defaultOf(prompt);
  const labels = answers === undefined ? [] : [...answers.map(optionLine), DONT_KNOW];
  const marked = answers === undefined ? -1 : markedIn(answers, byDefault);
  const asking: Asking<Reply> = {
    text: `${countLine(prompt)}\n${question.text}`,
    entries: labels.map((label, index) => ({ label, line: String(index + 1) })),
    isNumbered: true,
    ...waysOf(prompt, answers !== undefined),
    ...(byDefault === undefined || prompt.suggestedText === undefined ? {} : { enter: prompt.suggestedText }),
    ...(marked < 0 ? {} : { marked }),
    words: WORDS_LINE,
    back: { kind: 'back' },
    hear: (line) => {
      const command = commandOf(prompt, line);
      if (command !== undefined) return obeyed(command, prompt);
      if (line !== '') return heardFrom(read(question, line), line, { asking, prompt });
      return byDefault === undefined
        ? { kind: 'refused', says: NOTHING_TYPED }
        : { kind: 'result', result: byDefault };
    },
  };
  return asking;
}

interface Asked {
  readonly asking: Asking<Reply>;
  readonly prompt: Prompt;
}

function heardFrom(reading: Reading, typed: string, asked: Asked): Heard<Reply> {
  if (reading.kind === 'refused') return { kind: 'refused', says: reading.says };
  if (reading.kind === 'value') return { kind: 'result', result: replyWith(reading, typed) };
  return { kind: 'doubt', asking: doubting(reading, typed, asked) };
}

/** The same question with a doubt open: what settles it is heard first, then whatever the question hears. */
function doubting(about: Doubt, typed: string, { asking, prompt }: Asked): Asking<Reply> {
  const isOdd = about.kind === 'odd';
  return {
    text: about.says,
    isDoubt: true,
    entries: isOdd
      ? [{ label: `keep ${cleanLine(about.understood)}`, line: 'keep it' }]
      : about.choices.map(({ label }, index) => ({ label: cleanLine(label), line: String(index + 1) })),
    isNumbered: !isOdd,
    ways: isOdd ? KEEP_IT : WHICH_ONE,
    back: asking.back,
    hear: (line) => {
      const command = commandOf(prompt, line);
      if (command !== undefined) return obeyed(command, prompt);
      const kept = settled(about, { typed, line, isNamed: listedAnswers(prompt.question) === undefined });
      if (kept !== undefined) return { kind: 'result', result: replyWith(kept, typed) };
      if (isOdd && NO.test(line)) return { kind: 'refused', says: NOTHING_TYPED, next: asking };
      if (line === '') return { kind: 'refused', says: isOdd ? KEEP_IT : NOTHING_TYPED };
      const heard = asking.hear(line);
      // What is typed beside the doubt puts it away, read or not.
      return heard.kind === 'refused' ? { ...heard, next: asking } : heard;
    },
  };
}

const replyWith = ({ value, understood }: Answered, typed: string): Reply => ({
  kind: 'value',
  value,
  understood,
  typed,
});

function obeyed(command: Command, prompt: Prompt): Heard<Reply> {
  switch (command) {
    case 'why':
      return { kind: 'told', says: () => [prompt.why] };
    case 'walk':
      return { kind: 'told', says: () => [prompt.walk] };
    case 'help':
      return { kind: 'told', says: () => [prompt.help, howToAnswer(prompt), WORDS_LINE] };
    case 'save':
    case 'quit':
      return { kind: 'leave', how: command };
    default:
      return { kind: 'result', result: { kind: command } };
  }
}

/** The word that a line is; "don't know" is also the last number of a list. */
function commandOf({ question }: Prompt, line: string): Command | undefined {
  const answers = listedAnswers(question);
  return answers !== undefined && line === String(answers.length + 1) ? 'unknown' : commandIn(line);
}

/** What Enter alone takes. Where someone can be hurt it takes nothing: only what is said counts. */
function defaultOf({ question, suggested, suggestedText }: Prompt): Reply | undefined {
  if (suggested === undefined || question.safety === true) return undefined;
  if (suggested === UNKNOWN) return { kind: 'unknown' };
  return { kind: 'value', value: suggested, understood: suggestedText ?? String(suggested), typed: '' };
}

/** How to answer; and, where an earlier answer is not taken up by Enter, what it was. */
function waysOf(prompt: Prompt, isListed: boolean): Pick<Asking<Reply>, 'ways'> {
  const { question, suggestedText } = prompt;
  const ways = [
    ...(isListed ? [] : [`${howToAnswer(prompt)} Or ${DONT_KNOW}.`]),
    ...(question.safety === true && suggestedText !== undefined
      ? [`You said before: ${cleanLine(suggestedText)}. ${SAY_IT_AGAIN}`]
      : []),
  ];
  return ways.length === 0 ? {} : { ways: ways.join('\n') };
}

function markedIn(answers: readonly { readonly value: AnswerValue }[], byDefault: Reply | undefined): number {
  if (byDefault?.kind === 'unknown') return answers.length;
  return byDefault?.kind === 'value' ? answers.findIndex(({ value }) => value === byDefault.value) : -1;
}
