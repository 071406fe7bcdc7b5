/** A real terminal emulator, without a window, to look at what a text does to a screen. */
import xterm from '@xterm/headless';

export interface Screen {
  /** Rows as a person sees them, without trailing blanks and trailing empty rows. */
  readonly rows: readonly string[];
  readonly titles: readonly string[];
  readonly bells: number;
  readonly isAlternate: boolean;
  /** Some cell has a colour or weight. */
  readonly isStyled: boolean;
}

export async function screenOf(
  text: string,
  { columns, rows }: { readonly columns: number; readonly rows: number },
): Promise<Screen> {
  // As behind a real terminal driver, a newline also returns to the first column.
  const terminal = new xterm.Terminal({
    cols: columns,
    rows,
    scrollback: 2000,
    convertEol: true,
    allowProposedApi: true,
  });
  const titles: string[] = [];
  let bells = 0;
  terminal.onTitleChange((title) => titles.push(title));
  terminal.onBell(() => {
    bells += 1;
  });
  await new Promise<void>((resolve) => terminal.write(text, resolve));
  const { active } = terminal.buffer;
  const seen: string[] = [];
  let isStyled = false;
  for (let row = 0; row < active.length; row++) {
    const line = active.getLine(row);
    seen.push(line?.translateToString(true) ?? '');
    for (let column = 0; column < columns; column++) {
      const cell = line?.getCell(column);
      isStyled ||= cell !== undefined && !cell.isAttributeDefault();
    }
  }
  const isAlternate = active.type === 'alternate';
  terminal.dispose();
  while (seen.at(-1) === '') seen.pop();
  return { rows: seen, titles, bells, isAlternate, isStyled };
}
