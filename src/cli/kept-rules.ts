/** The rules of a session as a text that can be kept, and read again with every check. */
import { indexPack, type Pack } from '../rules/pack.js';

/** The pack as JSON, without its lookups. */
export function textOfPack(pack: Pack): string {
  return JSON.stringify(
    Object.fromEntries(Object.entries(pack).filter(([, part]) => !(part instanceof Map))),
  );
}

/** The pack in the text; undefined when this version of the program cannot work by it. */
export async function packFromText(text: string): Promise<Pack | undefined> {
  const [{ packDataSchema }, { checkPack }, { PROGRAM_SIDE }] = await Promise.all([
    import('../rules/schema-pack.js'),
    import('../rules/check.js'),
    import('./program-side.js'),
  ]);
  try {
    const { data } = packDataSchema.safeParse(JSON.parse(text));
    if (data === undefined) return undefined;
    const problems = checkPack(data, PROGRAM_SIDE, (kind, key) => ({ file: kind, pointer: key }));
    return problems.some(({ code }) => code !== 'unused') ? undefined : indexPack(data);
  } catch {
    return undefined;
  }
}
