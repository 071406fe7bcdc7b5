import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { COMMANDS } from '../../src/cli/commands.js';
import { newFolder, run } from './run.js';

const hasShell = (shell: string): boolean => spawnSync(shell, ['--version']).status === 0;

/** What bash offers when the words are typed and the last is to be completed. */
function offered(...words: readonly string[]): string[] {
  const { out } = run(['completion', 'bash']);
  const list = words.map((word) => `'${word}'`).join(' ');
  const script = `${out}\nCOMP_WORDS=(${list}); COMP_CWORD=${words.length - 1}; _seedbed; printf '%s\\n' "\${COMPREPLY[@]}"`;
  const { stdout, stderr } = spawnSync('bash', ['-c', script], { encoding: 'utf8' });
  expect(stderr).toBe('');
  return stdout.split('\n').filter((line) => line !== '');
}

describe('completion', () => {
  it.runIf(hasShell('bash'))('in bash offers commands, tasks, options and their values', () => {
    expect(offered('seedbed', '').slice(0, COMMANDS.length)).toEqual(COMMANDS.map(({ name }) => name));
    expect(offered('seedbed', 'pl')).toEqual(['plan']);
    expect(offered('seedbed', 'rules', 'co')).toEqual(['coverage']);
    expect(offered('seedbed', 'reckon', 'area-o')).toEqual(['area-offsets', 'area-outline']);
    expect(offered('seedbed', 'plan', 'x.json', '--as')).toEqual(['--assume']);
    expect(offered('seedbed', 'plan', '--format', 'js')).toEqual(['json']);
    expect(offered('seedbed', 'plan', 'x')).toEqual([]);
  });

  it.each(['bash', 'zsh', 'fish'])(
    'in %s names every command and is read by that shell without a fault',
    (shell) => {
      const { code, out } = run(['completion', shell]);
      expect(code).toBe(0);
      for (const { name } of COMMANDS) expect(out).toContain(name);
      if (hasShell(shell)) {
        const path = join(newFolder(), 'script');
        writeFileSync(path, out);
        const { status, stderr } = spawnSync(shell, ['-n', path], { encoding: 'utf8' });
        expect([status, stderr]).toEqual([0, '']);
      }
    },
  );

  it.each([
    [['completion'], 'one shell'],
    [['completion', 'dash'], 'Allowed: bash, zsh, fish'],
  ])('%j exits with 2', (args, says) => {
    const { code, err } = run(args);
    expect(code).toBe(2);
    expect(err).toContain(says);
  });
});
