/** Writes a document tree as GitHub-flavoured Markdown. Import it only when a plan is written: it loads late. */
import type { Root } from 'mdast';
import { gfmToMarkdown } from 'mdast-util-gfm';
import { toMarkdown } from 'mdast-util-to-markdown';

/** The tree as Markdown, ended by one newline; all escaping is done here. */
export function markdownOf(tree: Root): string {
  return toMarkdown(tree, {
    bullet: '-',
    emphasis: '_',
    listItemIndent: 'one',
    extensions: [gfmToMarkdown()],
  });
}
