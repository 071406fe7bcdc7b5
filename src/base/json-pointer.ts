/**
 * A JSON Pointer to the place that the parts lead to: `/3/when/and/0`; empty for the whole document.
 *
 * @source rfc-6901, sections 3 and 4: `~` is written `~0`, `/` is written `~1`
 */
export function jsonPointer(...parts: readonly (string | number)[]): string {
  return parts.map((part) => `/${String(part).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('');
}
