import { type CliIo, CliStop, EXIT } from './io.js';

/**
 * Writes a result to standard output or to a file; a file that is there stays unless force is given.
 *
 * @throws {CliStop} exit code 5 when the file exists or cannot be written
 */
export async function writeResult(
  text: string,
  where: { readonly out: string | undefined; readonly force: boolean; readonly quiet: boolean },
  io: CliIo,
): Promise<void> {
  if (where.out === undefined || where.out === '-') {
    io.out(text);
    return;
  }
  if (io.exists(where.out) && !where.force) {
    throw new CliStop(
      EXIT.files,
      `${where.out} is already there and was left as it is. Choose another name, or replace it with --force.`,
    );
  }
  await io.writeText(where.out, text);
  if (!where.quiet) io.err(`Saved as ${where.out}.\n`);
}
