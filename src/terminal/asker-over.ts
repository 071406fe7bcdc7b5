/** The asker over a screen: the same conversation whether the screen draws or writes lines. */

import { confirmAsking, lineAsking, pickAsking } from './ask-plain.js';
import { askingOf } from './ask-question.js';
import type { Asker, AskerSettings } from './asker.js';
import { type Asking, converse, type Face, isLeft } from './asking.js';

export function askerOver(face: Face, read: AskerSettings['read']): Asker {
  const given = async <Result>(asking: Asking<Result | undefined>): Promise<Result | undefined> => {
    if (face.left() !== undefined) return undefined;
    const ended = await converse(asking, face);
    return isLeft(ended) ? undefined : ended;
  };
  return {
    async ask(prompt) {
      const left = face.left();
      if (left !== undefined) return { kind: left };
      const ended = await converse(askingOf(prompt, read), face);
      return isLeft(ended) ? { kind: ended.left } : ended;
    },
    pick: (message, choices, leaveLabel) => given(pickAsking(message, choices, leaveLabel)),
    confirm: (message, suggested) => given(confirmAsking(message, suggested)),
    line: (message, suggested, as = 'anything') => given(lineAsking(message, suggested, as)),
    say: (text) => face.say(text),
    close: () => face.close(),
    left: () => face.left(),
  };
}
