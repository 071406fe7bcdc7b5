/** A program run at a real terminal, with keys pressed as its screen asks for them. */
import { spawn } from '@lydell/node-pty';
import { type Screen, screenOf } from './screen.js';

/** A lone Escape is told from a longer key by a pause; and a prompt is drawn before it listens. */
const KEY_GAP_MS = 200;
const FIRST_KEY_MS = 60;
const SIZE = { columns: 80, rows: 50 };

/** What to wait for on the screen, then the keys to press. */
export type Turn = readonly [wait: RegExp, ...keys: string[]];

export interface Sat {
  readonly text: string;
  readonly code: number;
  readonly screen: Screen;
  /** The screen as one line without the guide, to look for sentences in. */
  readonly words: string;
  /** Turns whose text never came. */
  readonly missed: readonly RegExp[];
}

export async function atTerminal(
  args: readonly string[],
  turns: readonly Turn[],
  { cwd, env = {} }: { readonly cwd: string; readonly env?: Readonly<Record<string, string>> },
): Promise<Sat> {
  const child = spawn(process.execPath, [...args], {
    cwd,
    cols: SIZE.columns,
    rows: SIZE.rows,
    env: { PATH: process.env.PATH ?? '', TERM: 'xterm-256color', HOME: cwd, XDG_STATE_HOME: cwd, ...env },
  });
  let text = '';
  let from = 0;
  const waiting = [...turns];
  const code = await new Promise<number>((done) => {
    child.onData((data) => {
      text += data;
      const turn = waiting[0];
      if (
        turn === undefined ||
        !turn[0].test(
          text
            .slice(from)
            .replace(/\s+|[│┃|]/g, ' ')
            .replace(/ +/g, ' '),
        )
      )
        return;
      waiting.shift();
      from = text.length;
      for (const [index, keys] of turn.slice(1).entries())
        setTimeout(() => child.write(keys as string), FIRST_KEY_MS + index * KEY_GAP_MS);
    });
    child.onExit(({ exitCode }) => done(exitCode));
  });
  const screen = await screenOf(text, SIZE);
  const words = screen.rows
    .join(' ')
    .replace(/[│┃|◆◇◈▲■└●○]/g, ' ')
    .replace(/\s+/g, ' ');
  return { text, code, screen, words, missed: waiting.map(([wait]) => wait) };
}
