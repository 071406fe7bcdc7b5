/**
 * Rebuilds transcripts-examples from the journeys and drills in it: `node test/journeys/rebuild.mjs`, after a build.
 * With --check it writes nothing and fails when a file is not what the program makes of it now.
 */
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { Writable } from 'node:stream';
import { playFollow } from '../../dist/cli/follow/play-follow.js';
import { loadCases } from '../../dist/cli/load-cases.js';
import { loadPack } from '../../dist/cli/load-pack.js';
import { playDrill } from '../../dist/cli/play-drill.js';
import { playJourney } from '../../dist/cli/play-journey.js';
import { rendered } from '../../dist/cli/render-plan.js';

const WIDTH = 80;
const examples = new URL('../../transcripts-examples/', import.meta.url);
const isCheck = process.argv.includes('--check');
const pack = await loadPack(undefined);
const book = await loadCases(undefined, pack);
const stale = [];

/** A stream and the text that was written to it. */
function collector(text) {
  const said = { text };
  said.stream = new Writable({
    write(chunk, _encoding, done) {
      said.text += chunk;
      done();
    },
  });
  return said;
}

async function filesOfJourney(journey, folder) {
  const said = collector(`${journey.title}\n${journey.invented}\nPlayed for ${journey.today}.\n\n`);
  const { answers, plan, asked } = await playJourney(journey, pack, said.stream, WIDTH);
  console.log(`${folder}: ${asked.length} questions, verdict ${plan.verdict.id}, ${plan.steps.length} steps`);
  return {
    'answers.json': `${JSON.stringify({ format: 1, answers }, null, 2)}\n`,
    'transcript.txt': said.text,
    'plan.md': await rendered(plan, 'md'),
    ...(await filesOfFollowing(journey, folder, answers)),
  };
}

async function filesOfFollowing(journey, folder, answers) {
  const visits = new URL(`${folder}/follow.json`, examples);
  if (!existsSync(visits)) return {};
  const said = collector(`${journey.title}: what was done and seen\n${journey.invented}\n`);
  const log = await playFollow(
    JSON.parse(readFileSync(visits, 'utf8')),
    { answers, pack },
    said.stream,
    WIDTH,
  );
  return { 'follow-log.md': log, 'follow-transcript.txt': said.text };
}

async function filesOfDrill(drill, folder) {
  const said = collector(`${drill.title}\n${drill.invented}\n\n`);
  const { debrief, marks } = await playDrill(drill, { pack, book }, said.stream, WIDTH);
  console.log(`${folder}: ${Math.round(marks.total)} of 100, ${marks.passed ? 'passed' : 'not passed'}`);
  return { 'transcript.txt': said.text, 'debrief.md': debrief };
}

const KINDS = { 'journey.json': filesOfJourney, 'drill.json': filesOfDrill };

for (const folder of readdirSync(examples).sort()) {
  const at = (name) => new URL(`${folder}/${name}`, examples);
  const kind = Object.keys(KINDS).find((name) => existsSync(at(name)));
  if (kind === undefined) continue;
  const files = await KINDS[kind](JSON.parse(readFileSync(at(kind), 'utf8')), folder);
  for (const [name, text] of Object.entries(files)) {
    if (existsSync(at(name)) && readFileSync(at(name), 'utf8') === text) continue;
    stale.push(`${folder}/${name}`);
    if (!isCheck) writeFileSync(at(name), text);
  }
}
if (isCheck && stale.length > 0) {
  console.error(
    `Not what the program makes of them now: ${stale.join(', ')}. Run "npm run transcripts" and read the difference.`,
  );
  process.exit(1);
}
