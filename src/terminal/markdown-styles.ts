/** Bold, italics and one colour for Markdown in a terminal; every style is a no-op without colour. */

type Style = (text: string) => string;

export type TerminalStyles = Readonly<Record<(typeof STYLED)[number], Style>>;

/** Every style that marked-terminal would otherwise take from the process's own colour settings. */
const STYLED = [
  'code',
  'blockquote',
  'html',
  'heading',
  'firstHeading',
  'hr',
  'listitem',
  'table',
  'paragraph',
  'strong',
  'em',
  'codespan',
  'del',
  'link',
  'href',
] as const;

const plain: Style = (text) => text;
const bold = between(1, 22);
const italic = between(3, 23);
const cyan = between(36, 39);

const COLOURED: Partial<TerminalStyles> = {
  heading: (text) => bold(cyan(text)),
  strong: bold,
  em: italic,
  codespan: cyan,
};

export function stylesOf(colour: boolean): TerminalStyles {
  const entries = STYLED.map((name) => [name, (colour ? COLOURED[name] : undefined) ?? plain] as const);
  return Object.fromEntries(entries) as TerminalStyles;
}

/** The text between two SGR codes (ECMA-48, 8.3.117). */
function between(on: number, off: number): Style {
  return (text) => `\x1b[${on}m${text}\x1b[${off}m`;
}
