/**
 * One drawn prompt for everything that is asked: answers to point at with the arrow keys, and a field to type in.
 * What stands typed is what Enter gives; only an empty field gives the marked answer.
 */

import { styleText } from 'node:util';
import { Prompt } from '@clack/core';
import { limitOptions, S_BAR, S_BAR_END, S_RADIO_ACTIVE, S_RADIO_INACTIVE, symbol } from '@clack/prompts';
import type { Entry } from './asking.js';
import type { SizedOutput } from './sized-output.js';

export interface EntryOptions {
  readonly input: NodeJS.ReadableStream;
  readonly output: SizedOutput;
  readonly signal: AbortSignal;
  /** Lines above the answers, wrapped. */
  readonly message: readonly string[];
  readonly entries: readonly Entry[];
  readonly marked: number | undefined;
  /** Stands in the empty field. */
  readonly placeholder: string;
  /** Lines below the field, wrapped. */
  readonly footer: readonly string[];
  /** Why a line is refused, wrapped; the field is then empty again. */
  readonly refusal: (line: string) => readonly string[] | undefined;
}

type Tint = Parameters<typeof styleText>[0];

/** Rows besides message, answers and footer: the bar above, an empty one, the field, what stands below. */
const OTHER_ROWS = 5;

class EntryPrompt extends Prompt<string> {
  private at: number | undefined;
  /** Typed and refused: shown until the next key, and then gone. */
  private refused = '';

  constructor(private readonly options: EntryOptions) {
    super(
      {
        render: () => this.drawn(),
        validate: () => this.checked(),
        input: options.input as never,
        output: options.output,
        signal: options.signal,
      },
      true,
    );
    this.at = options.marked;
    this.settle();
    this.on('userInput', () => this.settle());
    this.on('cursor', (key) => {
      if (key === 'up') this.move(-1);
      if (key === 'down') this.move(1);
    });
  }

  private move(by: 1 | -1): void {
    const count = this.options.entries.length;
    if (count === 0) return;
    this._clearUserInput();
    const from = this.at ?? (by === 1 ? -1 : count);
    this.at = (from + by + count) % count;
    this.settle();
  }

  /** The line that Enter would give now. */
  private settle(): void {
    const marked = this.at === undefined ? undefined : this.options.entries[this.at];
    this._setValue(this.userInput.trim() === '' ? (marked?.line ?? '') : this.userInput);
  }

  private checked(): string | undefined {
    const says = this.options.refusal(this.value ?? '');
    this.refused = says === undefined ? '' : this.userInput;
    if (says === undefined) return undefined;
    this.userInput = '';
    this._cursor = 0;
    return says.join('\n');
  }

  private drawn(): string {
    const { message } = this.options;
    const [first = '', ...more] = message;
    const head = [
      bar('gray'),
      `${symbol(this.state)}  ${first}`,
      ...more.map((line) => `${this.side()}  ${line}`),
    ];
    if (this.state === 'submit' || this.state === 'cancel')
      return [...head, `${bar('gray')}  ${styleText('dim', this.given())}`].join('\n');
    return [...head, ...this.answers(), `${this.side()}  > ${this.field()}`, ...this.below()].join('\n');
  }

  private given(): string {
    const picked = this.options.entries.find(
      ({ line }) => this.userInput.trim() === '' && line === this.value,
    );
    return picked?.label ?? this.userInput;
  }

  private answers(): string[] {
    const { entries, output, message, footer } = this.options;
    if (entries.length === 0) return [];
    const marked = this.userInput.trim() === '' && this.refused === '' ? this.at : undefined;
    const lines = limitOptions({
      output: output as never,
      cursor: marked ?? 0,
      options: entries.map(({ label }) => ({ value: label, label })),
      columnPadding: 3,
      rowPadding: message.length + footer.length + OTHER_ROWS,
      style: ({ label = '' }, isFirst) =>
        isFirst && marked !== undefined
          ? `${styleText('green', S_RADIO_ACTIVE)} ${label}`
          : `${styleText('dim', S_RADIO_INACTIVE)} ${label}`,
    });
    return lines.map((line) => `${this.side()}  ${line}`);
  }

  private field(): string {
    if (this.state === 'error') return styleText('dim', this.refused);
    const { userInput: text, _cursor: cursor } = this;
    if (text === '') {
      const { placeholder } = this.options;
      if (placeholder === '') return styleText(['inverse', 'hidden'], '_');
      return `${styleText('inverse', placeholder.slice(0, 1))}${styleText('dim', placeholder.slice(1))}`;
    }
    if (cursor >= text.length) return `${text}█`;
    return `${text.slice(0, cursor)}${styleText('inverse', text.slice(cursor, cursor + 1))}${text.slice(cursor + 1)}`;
  }

  private below(): string[] {
    const isRefused = this.state === 'error';
    const lines = isRefused ? this.error.split('\n') : this.options.footer;
    const [tint, style]: [Tint, Tint] = isRefused ? ['yellow', 'yellow'] : ['cyan', 'dim'];
    const shown = lines.map((line) => styleText(style, line));
    const last = shown.pop();
    return [
      ...shown.map((line) => `${bar(tint)}  ${line}`),
      last === undefined ? styleText(tint, S_BAR_END) : `${styleText(tint, S_BAR_END)}  ${last}`,
      '',
    ];
  }

  private side(): string {
    if (this.state === 'error') return bar('yellow');
    return bar(this.state === 'submit' || this.state === 'cancel' ? 'gray' : 'cyan');
  }
}

const bar = (tint: Tint): string => styleText(tint, S_BAR);

/** The line that was typed or pointed at, or clack's cancel symbol. */
export async function drawnEntry(options: EntryOptions): Promise<string | symbol> {
  return (await new EntryPrompt(options).prompt()) ?? '';
}
