/**
 * The lines of a stream of bytes, one at a time, however the bytes are cut; ended by a newline or the end.
 * Not node:readline: it also breaks at U+2028, which may stand in a JSON string as it is.
 */
export async function* textLines(chunks: AsyncIterable<Uint8Array>): AsyncGenerator<string> {
  const decoder = new TextDecoder();
  let pieces: string[] = [];
  for await (const chunk of chunks) {
    const [first = '', ...more] = decoder.decode(chunk, { stream: true }).split('\n');
    pieces.push(first);
    for (const next of more) {
      yield pieces.join('');
      pieces = [next];
    }
  }
  const last = pieces.join('') + decoder.decode();
  if (last !== '') yield last;
}
