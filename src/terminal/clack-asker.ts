/**
 * The asker for a terminal, over clack. Import it lazily, and only when input and output are both terminals:
 * everything else is for the line mode.
 */
import type { Asker, AskerSettings } from './asker.js';
import { askAtTerminal } from './clack-question.js';
import { openClackScreen } from './clack-screen.js';

const LEAVE = 'leave';
const CHOICE = 'choice:';

/** An asker at a terminal. */
export function createClackAsker(settings: AskerSettings): Asker {
  const screen = openClackScreen(settings);
  const hasLeft = () => screen.left() !== undefined;
  return {
    async ask(prompt) {
      const left = screen.left();
      return left === undefined ? askAtTerminal({ prompt, screen, read: settings.read }) : { kind: left };
    },
    async pick(message, choices, leaveLabel) {
      if (hasLeft()) return undefined;
      const entries = choices.map(({ label }, index) => ({
        value: `${CHOICE}${index}`,
        label,
        endsGroup: leaveLabel !== undefined && index === choices.length - 1,
      }));
      const leaving = leaveLabel === undefined ? [] : [{ value: LEAVE, label: leaveLabel }];
      const given = await screen.list(message, [...entries, ...leaving], leaveLabel && LEAVE);
      if (given.kind !== 'given' || given.value === LEAVE) return undefined;
      return choices[Number(given.value.slice(CHOICE.length))]?.value;
    },
    async confirm(message, suggested) {
      if (hasLeft()) return undefined;
      const entries = [
        { value: 'yes', label: 'yes' },
        { value: 'no', label: 'no' },
      ];
      const given = await screen.list(message, entries, suggested ? 'yes' : 'no');
      return given.kind === 'given' ? given.value === 'yes' : undefined;
    },
    async line(message, suggested) {
      if (hasLeft()) return undefined;
      const given = await screen.typed(message, { placeholder: suggested, check: () => undefined });
      if (given.kind !== 'given') return undefined;
      return given.value === '' ? suggested : given.value;
    },
    say: (words) => screen.say(words),
    close: () => screen.close(),
    left: () => screen.left(),
  };
}
