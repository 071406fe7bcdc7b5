/** Reads a pack folder from disk: JSON, shapes, ids used twice. Every problem is gathered; nothing is guessed. */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import type { z } from 'zod';
import { jsonPointer } from '../base/json-pointer.js';
import { jsonShapeOf } from '../base/json-shape.js';
import type { PlaceOf } from './check.js';
import { DEPTH_LIMIT } from './operators.js';
import type { PackData } from './pack.js';
import type { Place, RuleProblem } from './problem.js';
import * as shapes from './schema.js';
import * as judgementShapes from './schema-judgement.js';
import * as packShapes from './schema-pack.js';
import { questionSchema } from './schema-question.js';

export interface ReadPack {
  /** Complete only when there are no problems. */
  readonly data: PackData | undefined;
  readonly problems: readonly RuleProblem[];
  readonly placeOf: PlaceOf;
}

/** Folder or file of each kind of record; a folder may hold arrays or single records. */
export const PLACES = {
  source: { path: 'sources.json', schema: shapes.sourceSchema },
  figure: { path: 'figures', schema: shapes.figureSchema },
  fact: { path: 'facts.json', schema: shapes.factSchema },
  question: { path: 'questions', schema: questionSchema },
  finding: { path: 'findings', schema: shapes.findingSchema },
  step: { path: 'steps', schema: shapes.stepSchema },
  material: { path: 'materials', schema: shapes.materialSchema },
  caution: { path: 'cautions', schema: shapes.cautionSchema },
  verdict: { path: 'verdicts.json', schema: judgementShapes.verdictSchema },
  outlook: { path: 'outlook.json', schema: packShapes.outlookSchema },
  watering: { path: 'watering.json', schema: packShapes.wateringSchema },
  trouble: { path: 'troubles.json', schema: packShapes.troubleSchema },
  notDone: { path: 'not-done.json', schema: packShapes.notDoneSchema },
  daySign: { path: 'day-signs.json', schema: packShapes.daySignSchema },
  together: { path: 'together.json', schema: packShapes.togetherSchema },
  sign: { path: 'signs.json', schema: judgementShapes.signSchema },
} as const satisfies Record<string, { path: string; schema: z.ZodType }>;

type RecordKind = keyof typeof PLACES;
type RecordOf<Kind extends RecordKind> = z.infer<(typeof PLACES)[Kind]['schema']>;

/** More than a record with the deepest sound condition has, each level an object and a list, and less than zod can bear. */
const JSON_DEPTH_LIMIT = 3 * DEPTH_LIMIT;

const CLIMATE_FILE = 'climate/uk-stations.json';
/** Files that are one record by themselves. */
const FILE_OF: Readonly<Record<string, string>> = { climate: CLIMATE_FILE, season: 'pack.json' };
export const CASES_FOLDER = 'cases/';

/** Kinds whose ids may repeat: a verdict has several ways in, outlook and watering have no id. */
const MAY_REPEAT: readonly RecordKind[] = ['verdict', 'outlook', 'watering'];

/**
 * The pack in `folder`.
 *
 * @throws {NodeJS.ErrnoException} when the folder itself cannot be read
 */
export function readPack(folder: string): ReadPack {
  const problems: RuleProblem[] = [];
  const places = new Map<string, Place>();
  const hash = createHash('sha256');
  const texts = new Map<string, string>();
  for (const file of jsonFilesIn(folder)) {
    const text = readFileSync(join(folder, file), 'utf8');
    texts.set(file, text);
    hash.update(`${file}\0${text}\0`);
  }

  const parse = (file: string): unknown => {
    try {
      const text = (texts.get(file) ?? '').replace(/^\uFEFF/, '');
      const value: unknown = JSON.parse(text);
      const { depth, doubled } = jsonShapeOf(text);
      for (const key of doubled) problems.push({ code: 'doubled-key', file, pointer: '', id: key });
      if (depth <= JSON_DEPTH_LIMIT) return value;
      problems.push({ code: 'depth', file, pointer: '', limit: DEPTH_LIMIT });
      return undefined;
    } catch (error) {
      problems.push({ code: 'not-json', file, pointer: '', found: (error as Error).message });
      return undefined;
    }
  };
  const accept = <Shape extends z.ZodType>(
    schema: Shape,
    value: unknown,
    file: string,
    at: string,
  ): z.infer<Shape> | undefined => {
    const result = schema.safeParse(value);
    if (result.success) return result.data;
    for (const issue of result.error.issues) {
      const pointer = `${at}${jsonPointer(...issue.path.map(String))}`;
      problems.push({ code: 'shape', file, pointer, found: issue.message });
    }
    return undefined;
  };
  const readKind = <Kind extends RecordKind>(kind: Kind): RecordOf<Kind>[] => {
    const { path, schema } = PLACES[kind];
    const mine = [...texts.keys()].filter((file) => file === path || file.startsWith(`${path}/`));
    if (mine.length === 0) problems.push({ code: 'missing-file', file: path, pointer: '' });
    return mine.flatMap((file) => {
      const parsed = parse(file);
      if (parsed === undefined) return [];
      const list: unknown[] = Array.isArray(parsed) ? parsed : [parsed];
      return list.flatMap((each, index) => {
        const pointer = Array.isArray(parsed) ? jsonPointer(index) : '';
        const record = accept(schema, each, file, pointer) as RecordOf<Kind> | undefined;
        if (record === undefined) return [];
        const key = 'id' in record && !MAY_REPEAT.includes(kind) ? record.id : `${index}`;
        const other = places.get(`${kind} ${key}`);
        if (other !== undefined && !MAY_REPEAT.includes(kind)) {
          problems.push({ code: 'twice', file, pointer, kind, id: key, other: other.file });
        }
        const name = 'id' in record ? ` ${record.id}` : '';
        places.set(`${kind} ${key}`, {
          file,
          pointer,
          ...(pointer === '' ? {} : { record: `${kind}${name}` }),
        });
        return [record];
      });
    });
  };

  const manifest = texts.has('pack.json')
    ? accept(packShapes.manifestSchema, parse('pack.json'), 'pack.json', '')
    : undefined;
  if (!texts.has('pack.json')) problems.push({ code: 'missing-file', file: 'pack.json', pointer: '' });
  const climate = texts.has(CLIMATE_FILE)
    ? accept(packShapes.climateSchema, parse(CLIMATE_FILE), CLIMATE_FILE, '')
    : undefined;
  if (!texts.has(CLIMATE_FILE)) problems.push({ code: 'missing-file', file: CLIMATE_FILE, pointer: '' });
  const records = {
    sources: readKind('source'),
    figures: readKind('figure'),
    facts: readKind('fact'),
    questions: readKind('question'),
    findings: readKind('finding'),
    steps: readKind('step'),
    materials: readKind('material'),
    cautions: readKind('caution'),
    verdicts: readKind('verdict'),
    outlook: readKind('outlook'),
    watering: readKind('watering'),
    notDone: readKind('notDone'),
    together: readKind('together'),
    signs: readKind('sign'),
    daySigns: readKind('daySign'),
    troubles: readKind('trouble'),
  };
  const isComplete = problems.length === 0 && manifest !== undefined && climate !== undefined;
  return {
    data: isComplete ? { ...manifest, sha256: hash.digest('hex'), ...records, climate } : undefined,
    problems,
    placeOf: (kind, key, pointer = '') => {
      const place = places.get(`${kind} ${key}`) ?? { file: FILE_OF[kind] ?? `${kind} ${key}`, pointer: '' };
      return { ...place, pointer: `${place.pointer}${pointer}` };
    },
  };
}

function jsonFilesIn(folder: string): string[] {
  return (
    readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((file) => file.endsWith('.json'))
      .map((file) => relative('.', file).split(sep).join('/'))
      // Training cases are no part of what a plan is made from; read-cases.ts reads them.
      .filter((file) => !file.startsWith(CASES_FOLDER))
      .sort()
  );
}
