/**
 * Rebuilds transcripts-examples from the journeys in it: `node test/journeys/rebuild.mjs`, after a build.
 * With --check it writes nothing and fails when a file is not what the program makes of it now.
 */
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { Writable } from 'node:stream';
import { playFollow } from '../../dist/cli/follow/play-follow.js';
import { loadPack } from '../../dist/cli/load-pack.js';
import { playJourney } from '../../dist/cli/play-journey.js';
import { rendered } from '../../dist/cli/render-plan.js';

const WIDTH = 80;
const examples = new URL('../../transcripts-examples/', import.meta.url);
const isCheck = process.argv.includes('--check');
const pack = await loadPack(undefined);
const stale = [];

for (const folder of readdirSync(examples).sort()) {
  const at = (name) => new URL(`${folder}/${name}`, examples);
  if (!existsSync(at('journey.json'))) continue;
  const journey = JSON.parse(readFileSync(at('journey.json'), 'utf8'));
  let transcript = `${journey.title}\n${journey.invented}\nPlayed for ${journey.today}.\n\n`;
  const dialogue = new Writable({
    write(chunk, _encoding, done) {
      transcript += chunk;
      done();
    },
  });
  const { answers, plan, asked } = await playJourney(journey, pack, dialogue, WIDTH);
  const files = {
    'answers.json': `${JSON.stringify({ format: 1, answers }, null, 2)}\n`,
    'transcript.txt': transcript,
    'plan.md': await rendered(plan, 'md'),
  };
  if (existsSync(at('follow.json'))) {
    const visits = JSON.parse(readFileSync(at('follow.json'), 'utf8'));
    let told = `${journey.title}: what was done and seen\n${journey.invented}\n`;
    const lines = new Writable({
      write(chunk, _encoding, done) {
        told += chunk;
        done();
      },
    });
    files['follow-log.md'] = await playFollow(visits, { answers, pack }, lines, WIDTH);
    files['follow-transcript.txt'] = told;
  }
  for (const [name, text] of Object.entries(files)) {
    if (existsSync(at(name)) && readFileSync(at(name), 'utf8') === text) continue;
    stale.push(`${folder}/${name}`);
    if (!isCheck) writeFileSync(at(name), text);
  }
  console.log(`${folder}: ${asked.length} questions, verdict ${plan.verdict.id}, ${plan.steps.length} steps`);
}
if (isCheck && stale.length > 0) {
  console.error(
    `Not what the program makes of them now: ${stale.join(', ')}. Run "npm run transcripts" and read the difference.`,
  );
  process.exit(1);
}
