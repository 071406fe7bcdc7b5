/** marked-terminal ships no types; only what show-markdown.ts uses is declared. */
declare module 'marked-terminal' {
  import type { MarkedExtension } from 'marked';

  type Style = (text: string) => string;

  export interface TerminalOptions {
    readonly code?: Style;
    readonly blockquote?: Style;
    readonly html?: Style;
    readonly heading?: Style;
    readonly firstHeading?: Style;
    readonly hr?: Style;
    readonly listitem?: Style;
    readonly table?: Style;
    readonly paragraph?: Style;
    readonly strong?: Style;
    readonly em?: Style;
    readonly codespan?: Style;
    readonly del?: Style;
    readonly link?: Style;
    readonly href?: Style;
    readonly emoji?: boolean;
    readonly unescape?: boolean;
    readonly showSectionPrefix?: boolean;
    readonly reflowText?: boolean;
    readonly tab?: number;
    readonly width?: number;
  }

  export function markedTerminal(options?: TerminalOptions): MarkedExtension;
}
