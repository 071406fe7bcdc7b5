/** The shapes of a pack as JSON Schema, so that an editor checks and completes a rules file while it is written. */
import { z } from 'zod';
import { PLACES } from './read.js';
import { drillCaseSchema, markingSchema } from './schema-case.js';
import { climateSchema, manifestSchema } from './schema-pack.js';

/** What each file may hold: one record, or a list of them. */
const FILES: Readonly<Record<string, z.ZodType>> = {
  ...Object.fromEntries(
    Object.entries(PLACES).map(([kind, { schema }]) => [kind, z.union([schema, z.array(schema)])]),
  ),
  manifest: manifestSchema,
  climate: climateSchema,
  case: drillCaseSchema,
  marking: markingSchema,
};

/** Kinds of files that have a schema. */
export const SCHEMA_KINDS: readonly string[] = Object.keys(FILES);

/** JSON Schema (draft 2020-12) of the files of one kind. */
export function fileSchemaOf(kind: string): object {
  const { $schema, ...rest } = z.toJSONSchema(FILES[kind] as z.ZodType, { io: 'input' });
  return { $schema, title: `Seedbed rules: a file of the kind "${kind}"`, ...rest };
}

/** All of them, by kind. */
export const allFileSchemas = (): Record<string, object> =>
  Object.fromEntries(SCHEMA_KINDS.map((kind) => [kind, fileSchemaOf(kind)]));
