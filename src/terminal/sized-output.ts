/** An output that says how wide it is and, where colour is not wanted, lets no colour code through. */
import { Writable } from 'node:stream';

export type SizedOutput = Writable & { readonly columns: number; readonly rows: number };

/** Colour and text weight (ECMA-48 SGR); codes that move the cursor are left alone. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: control sequences are what it looks for
const COLOUR_CODE = /\x1b\[[\d;:]*m/g;
const USUAL_ROWS = 24;

/**
 * The output as the prompts need it.
 *
 * @param width columns, an upper limit: a terminal that is narrower now counts as it is
 */
export function sizedOutput(
  output: Writable,
  { width, colour }: { readonly width: number; readonly colour: boolean },
): SizedOutput {
  const sized = new Writable({
    decodeStrings: false,
    write(chunk: string | Buffer, _encoding, done) {
      output.write(colour ? chunk : String(chunk).replace(COLOUR_CODE, ''));
      done();
    },
  });
  const size = (name: 'columns' | 'rows'): number | undefined => {
    const value = (output as { readonly columns?: unknown; readonly rows?: unknown })[name];
    return typeof value === 'number' && value > 0 ? value : undefined;
  };
  output.on('resize', () => sized.emit('resize'));
  return Object.defineProperties(sized, {
    columns: { get: () => Math.min(width, size('columns') ?? width) },
    rows: { get: () => size('rows') ?? USUAL_ROWS },
  }) as SizedOutput;
}
