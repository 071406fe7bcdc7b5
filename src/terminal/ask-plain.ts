/** What is asked outside the interview: to pick a line, to say yes or no, to type something. */
import { cleanLine } from '../base/clean-text.js';
import { bareYesNo, NUMBER_OF_LIST, optionsMeant, readYesNo } from '../interview/read-choice.js';
import type { LineKind, PickChoice } from './asker.js';
import type { Asking, Entry, Heard } from './asking.js';
import { settled } from './settle.js';
import { commandIn, KEEP_IT, WHICH_ONE, YES_OR_NO } from './words.js';

type Picked = string | undefined;

/** One of the choices, by number or words; the last line, if there is one, picks nothing and is what Enter takes. */
export function pickAsking(
  message: string,
  choices: readonly PickChoice[],
  leaveLabel: string | undefined,
): Asking<Picked> {
  const labels = [...choices.map(({ label }) => label), ...(leaveLabel === undefined ? [] : [leaveLabel])];
  const refused: Heard<Picked> = {
    kind: 'refused',
    says: `Type a number from 1 to ${labels.length}, or words of the list, or quit.`,
  };
  const asking: Asking<Picked> = {
    text: message,
    entries: labels.map(numbered),
    isNumbered: true,
    ...(leaveLabel === undefined ? {} : { enter: leaveLabel, marked: choices.length }),
    back: undefined,
    hear: (line) => {
      const command = commandIn(line);
      if (command === 'save' || command === 'quit') return { kind: 'leave', how: command };
      if (leaveLabel !== undefined && (line === '' || command === 'back'))
        return { kind: 'result', result: undefined };
      const isUnknown = (choice: PickChoice): boolean => command === 'unknown' && choice.isUnknown === true;
      const unknown = choices.find(isUnknown);
      if (unknown !== undefined) return { kind: 'result', result: unknown.value };
      const found = placesOf(line, labels);
      const [only, another] = found;
      if (only === undefined) return refused;
      if (another === undefined) return { kind: 'result', result: choices[only]?.value };
      return { kind: 'doubt', asking: narrowed(asking, found) };
    },
  };
  return asking;
}

/** Which labels a line may mean, by their places: its number, yes or no, its name or words of it. */
function placesOf(line: string, labels: readonly string[]): number[] {
  const [, number] = NUMBER_OF_LIST.exec(line) ?? [];
  if (number !== undefined) return labels[Number(number) - 1] === undefined ? [] : [Number(number) - 1];
  const yesNo = bareYesNo(line);
  const said = yesNo === undefined ? -1 : labels.indexOf(yesNo ? 'yes' : 'no');
  if (said >= 0) return [said];
  // What stands in brackets or after a colon tells about the choice; what comes before is its name.
  const options = labels.map((label) => ({ value: label.split(/ \(|: /)[0] ?? label, label }));
  return optionsMeant(options, line).map((option) => options.indexOf(option));
}

/** Only those choices that were meant by words that fit more than one. */
function narrowed(all: Asking<Picked>, places: readonly number[]): Asking<Picked> {
  const entries = places.map((place) => all.entries[place] as Entry);
  return {
    text: 'That fits more than one. Which is it?',
    isDoubt: true,
    entries: entries.map(({ label }) => label).map(numbered),
    isNumbered: true,
    ways: WHICH_ONE,
    back: undefined,
    hear: (line) => {
      const chosen = entries[Number(line) - 1];
      if (chosen !== undefined) return all.hear(chosen.line);
      const heard = line === '' ? ({ kind: 'refused', says: WHICH_ONE } as const) : all.hear(line);
      return heard.kind === 'refused' && line !== '' ? { ...heard, next: all } : heard;
    },
  };
}

const numbered = (label: string, index: number): Entry => ({
  label: cleanLine(label),
  line: String(index + 1),
});

/** Yes or no. Without a suggestion Enter alone takes neither. */
export function confirmAsking(message: string, suggested: boolean | undefined): Asking<boolean | undefined> {
  const enter = suggested === undefined ? {} : { enter: suggested ? 'yes' : 'no', marked: suggested ? 0 : 1 };
  const asking: Asking<boolean | undefined> = {
    text: message,
    entries: [
      { label: 'yes', line: 'yes' },
      { label: 'no', line: 'no' },
    ],
    isNumbered: false,
    ...enter,
    back: undefined,
    hear: (line) => {
      const command = commandIn(line);
      if (command === 'save' || command === 'quit') return { kind: 'leave', how: command };
      if (command === 'back') return { kind: 'result', result: undefined };
      if (line === '')
        return suggested === undefined
          ? { kind: 'refused', says: YES_OR_NO }
          : { kind: 'result', result: suggested };
      const reading = readYesNo(line);
      if (reading.kind === 'value') return { kind: 'result', result: reading.value === true };
      if (reading.kind !== 'odd') return { kind: 'refused', says: YES_OR_NO };
      return { kind: 'doubt', asking: doubting(reading, line, asking) };
    },
  };
  return asking;
}

function doubting(
  about: Extract<ReturnType<typeof readYesNo>, { kind: 'odd' }>,
  typed: string,
  asking: Asking<boolean | undefined>,
): Asking<boolean | undefined> {
  return {
    text: about.says,
    isDoubt: true,
    entries: [{ label: `keep ${about.understood}`, line: 'keep it' }],
    isNumbered: false,
    ways: KEEP_IT,
    back: undefined,
    hear: (line) => {
      const kept = settled(about, { typed, line, isNamed: false });
      if (kept !== undefined) return { kind: 'result', result: kept.value === true };
      if (line === '') return { kind: 'refused', says: KEEP_IT };
      const heard = asking.hear(line);
      return heard.kind === 'refused' ? { ...heard, next: asking } : heard;
    },
  };
}

/** A free line. */
export function lineAsking(message: string, suggested: string, as: LineKind): Asking<Picked> {
  return {
    text: message,
    entries: [],
    isNumbered: false,
    ...(suggested === '' ? {} : { enter: suggested }),
    back: undefined,
    hear: (line) => {
      const command = commandIn(line);
      if (command === 'save' || command === 'quit') return { kind: 'leave', how: command };
      if (command === 'back' && as !== 'name') return { kind: 'result', result: undefined };
      return { kind: 'result', result: line === '' ? suggested : line };
    },
  };
}
