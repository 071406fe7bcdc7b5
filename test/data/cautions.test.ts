import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { parseIsoDate } from '../../src/base/dates.js';
import { sayer } from '../../src/planner/texts.js';
import { wordedIn } from '../../src/planner/worded-rule.js';
import { scopeFor } from '../../src/planner/working-scope.js';
import { namesIn } from '../../src/rules/call.js';
import { type Caution, cautionSchema, materialSchema, sourceSchema } from '../../src/rules/schema.js';
import { pack } from '../planner/any-lawn.js';

const rules = new URL('../../rules/', import.meta.url);
const readJson = (path: string): unknown => JSON.parse(readFileSync(new URL(path, rules), 'utf8'));
const recordsOf = (folder: string): unknown[] =>
  readdirSync(new URL(folder, rules)).flatMap((name) => z.array(z.unknown()).parse(readJson(folder + name)));

const cautions = z.array(cautionSchema).parse(recordsOf('cautions/'));
const materials = z.array(materialSchema).parse(recordsOf('materials/'));
const sourceIds = z
  .array(sourceSchema)
  .parse(readJson('sources.json'))
  .map(({ id }) => id);

const say = sayer({
  pack,
  scope: scopeFor({ pack, answers: {}, today: parseIsoDate('2027-04-01'), assume: 'all' }),
  note: () => undefined,
  units: 'metric',
});
/** The caution as a reader sees it, its figures filled in. */
const caution = (id: string): Caution => {
  const found = cautions.find((each) => each.id === id);
  if (found === undefined) throw new Error(`no caution ${id}`);
  return { ...found, line: say(found.line), detail: say(found.detail) };
};
const readersOf = (name: string): string[] =>
  cautions.filter(({ when }) => namesIn(when).includes(name)).map(({ id }) => id);

/** Ids that steps name, by what they guard against. */
const SETS: Readonly<Record<string, string>> = {
  chemicals: `label-first spray-wind spray-no-still-air spray-protect-yourself keep-in-original-pack
    no-chemical-down-drain not-in-frost not-in-heat-or-drought no-rain-before-dry treated-clippings
    weedkiller-label-seed-wait lime-eyes`,
  dog: 'moss-killer-dog weedkiller-dog feed-dog keep-off-new-seed-dog',
  children: 'moss-killer-children weedkiller-children feed-children keep-off-new-seed-children',
  'electric machine': 'electric-rcd electric-cable electric-wet',
  'petrol machine': 'petrol-fuel machine-hire-two-people',
  'any machine': `machine-clear-ground machine-hands-off machine-eyes-ears-feet vibration noise-hours
    mower-hands`,
  paving: 'iron-stains-paving paving-sweep-feed',
  water: 'water-strip feed-water-course top-dressing-water hosepipe-ban drain-permission',
  'services and ground': 'buried-services slope tree-roots tree-work-licensed keep-off-frosted-grass',
  body: 'lifting back-and-rake compost-lungs tetanus-soil',
  wildlife: 'hedgehogs-first ground-bees birds-nesting-trees grubs-no-home-remedy',
};

describe('the cautions', () => {
  it.each(Object.entries(SETS))('cover %s', (_, ids) => {
    expect(cautions.map(({ id }) => id)).toEqual(expect.arrayContaining(ids.split(/\s+/)));
  });

  it('use each id once', () => {
    expect(new Set(cautions.map(({ id }) => id)).size).toBe(cautions.length);
  });

  it('have a shape that refuses a line too long to be read at a glance', () => {
    const [first] = cautions;
    expect(cautionSchema.safeParse({ ...first, line: 'a'.repeat(139) }).success).toBe(true);
    expect(cautionSchema.safeParse({ ...first, line: 'a'.repeat(140) }).success).toBe(false);
  });

  it.each([
    ['dog', SETS.dog],
    ['children', SETS.children],
    ['pavingBeside', SETS.paving],
    ['treesNear', 'tree-roots tree-work-licensed birds-nesting-trees'],
    ['findings.near-water', 'water-strip feed-water-course top-dressing-water'],
    ['slopeDeg', 'slope mower-bank'],
    ['findings.root-grubs', 'grubs-no-home-remedy badgers-protected'],
  ])('that hang on %s are just these', (name, ids) => {
    expect(readersOf(name).sort()).toEqual(ids?.split(/\s+/).sort());
  });

  it('about a cable or fuel ask which machine it is', () => {
    const electric = { '===': [{ var: 'facts.scarifierUsed' }, 'electric'] };
    for (const id of [
      'electric-rcd',
      'electric-cable',
      'electric-cut-cable',
      'electric-wet',
      'electric-hands-off',
    ])
      expect(caution(id).when).toEqual(electric);
    // A hired corer has an engine too.
    const engine = { or: [{ '===': [{ var: 'facts.scarifierUsed' }, 'petrol'] }, { var: 'facts.cores' }] };
    for (const id of ['petrol-fuel', 'engine-fumes', 'machine-hands-off', 'machine-guards'])
      expect(caution(id).when).toEqual(engine);
  });
});

/** Each as it is worded at home, and as it is worded for the US where that differs. */
const wordings = cautions.flatMap((each) => [
  { ...each, name: each.id },
  ...(each.us === undefined ? [] : [{ ...wordedIn('us', each), name: `${each.id}, for the US` }]),
]);

describe.each(wordings)('$name', ({ line, detail, severity, basis, sources }) => {
  it('says in one short line what to do, calmly', () => {
    expect(line.length).toBeLessThan(140);
    expect(line).toMatch(/^[A-Z].*\.$/);
    expect(line + detail).not.toContain('!');
  });

  it('adds two to four sentences and no copy of the line', () => {
    expect(detail).toMatch(/\.$/);
    const sentences = detail.split(/[.?] (?=[A-Z])/).length;
    expect(sentences).toBeGreaterThanOrEqual(2);
    expect(sentences).toBeLessThanOrEqual(4);
    expect(detail).not.toContain(line);
  });

  it('names a listed source when it claims to be published', () => {
    if (basis === 'published') expect(sources).not.toEqual([]);
    expect(sourceIds).toEqual(expect.arrayContaining(sources.map(({ id }) => id)));
  });

  it('says what to do when the worst has happened, where it can injure', () => {
    if (severity !== 'danger' && severity !== 'warning') return;
    expect(detail).toMatch(
      /\b(rinse|unplug|unplugged|switch off|doctor|medical|call|emergency|stop|press|do not use|leave it|let it cool)\b/i,
    );
  });

  it('makes no claim of law without saying where it holds', () => {
    const text = `${line} ${detail}`;
    if (/\b(law|legal|breach|temporary ban|authorised)\b/i.test(text)) {
      expect(text).toMatch(/in Britain|where you live/i);
    }
  });
});

describe('words that hold back', () => {
  // HSE, garden and home users: a lawn sand is a pesticide too, and whoever uses one answers for using it properly.
  it('put the label before the plan', () => {
    expect(caution('label-first').line).toContain('the label is right');
    expect(caution('label-first').detail).toContain('lawn sand');
  });

  // The rating of an RCD is known from memory only: common practice, no source.
  it('give the RCD its rating as common practice', () => {
    expect(caution('electric-rcd').line).toContain('30 mA');
    expect(caution('electric-rcd').basis).toBe('common-practice');
  });

  // DEFRA, Avoiding Drift: leave 2 m unsprayed beside watercourses and ponds.
  it('keep sprays two metres from water', () => {
    expect(caution('water-strip').line).toContain('2 m');
  });

  // BS 5837:2012 annex D as quoted: twelve stem diameters, so 35 cm gives 4.2 m.
  it('keep tools off the roots of a tree to twelve trunk widths', () => {
    expect(caution('tree-roots').line).toContain('12 times');
    expect(caution('tree-roots').detail).toContain('35 cm across means 4.2 m');
  });

  // HSE guide figures as reproduced: 25 kg for men, 16 kg for women, close and at waist height.
  it('give the lifting guide as a guide', () => {
    expect(caution('lifting').detail).toMatch(
      /16 to 25 kg, the least for women and the most for men.*a guide/,
    );
  });
});

describe('the materials', () => {
  const MATERIALS =
    `seed-ryegrass-mix seed-fescue-mix seed-tall-fescue seed-meadow-grass seed-warm-season moss-product
    moss-product-dry water topsoil seed-cover spring-feed starter-feed lime wetting-agent debris scarifier-electric
    scarifier-petrol hollow-tine-corer garden-fork hand-fork spring-tine-rake leaf-rake garden-sprayer drop-spreader
    spinning-spreader hose sprinkler watering-can wheelbarrow gloves goggles ear-defenders stout-shoes dust-mask
    rcd-plug mower spade half-moon-iron board-for-firming stiff-broom soil-test-kit kitchen-scales canes-and-string
    netting pruning-saw tarpaulin grass-shears jute-net old-turf sandy-dressing`.split(/\s+/);
  const LIQUIDS = ['moss-product', 'wetting-agent'];
  const SHEETS = ['jute-net'];
  const VOLUMES = ['water', 'topsoil', 'seed-cover', 'debris', 'old-turf', 'sandy-dressing'];

  it('hold everything that steps name, each once', () => {
    expect(materials.map(({ id }) => id).sort()).toEqual([...MATERIALS].sort());
  });

  it.each(materials)('$id says on what its pack sizes rest', ({ packs, packsBasis, usPacks }) => {
    const memory = 'common practice, no source, from memory';
    expect(packsBasis).toBe(packs.length === 0 ? undefined : memory);
    if (usPacks !== undefined) expect(usPacks.basis).toBe(memory);
  });

  it.each(materials)('$id is counted in a unit that fits it', ({ id, kind, unit, packs }) => {
    const bought = LIQUIDS.includes(id)
      ? 'mL'
      : VOLUMES.includes(id)
        ? 'L'
        : SHEETS.includes(id)
          ? 'm2'
          : 'g';
    expect(unit).toBe(kind === 'buy' ? bought : 'each');
    expect([...packs].sort((a, b) => a - b)).toEqual(packs);
    if (kind !== 'buy') expect(packs).toEqual([]);
  });

  it('name no annual ryegrass for a lawn that is to last', () => {
    for (const id of ['seed-ryegrass-mix', 'seed-fescue-mix', 'seed-tall-fescue']) {
      expect(materials.find((material) => material.id === id)?.lookFor).toMatch(/no annual ryegrass/i);
    }
  });

  // East Lothian Council specification 6.2.2: germination at least 85 %, purity at least 95 %.
  it('say what good seed shows on its label', () => {
    expect(materials.find(({ id }) => id === 'seed-ryegrass-mix')?.lookFor).toContain(
      'at least 85 % and 95 %',
    );
  });
});
