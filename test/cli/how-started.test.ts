import { describe, expect, it } from 'vitest';
import { commandLineFor } from '../../src/cli/how-started.js';

describe('the command that a message tells', () => {
  it.each([
    [{ npm_lifecycle_event: 'start', npm_command: 'run-script' }, 'npm start -- ask', 'npm start'],
    [{ npm_lifecycle_event: 'npx', npm_command: 'exec' }, 'npx seedbed ask', 'npx seedbed'],
    [{ npm_lifecycle_event: 'test' }, 'seedbed ask', 'seedbed'],
    [{}, 'seedbed ask', 'seedbed'],
  ])('started with %j is %s', (env, withWords, alone) => {
    expect([commandLineFor(env)('ask'), commandLineFor(env)('')]).toEqual([withWords, alone]);
  });
});
