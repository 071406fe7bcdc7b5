import { expect } from 'vitest';
import type { NotUnderstood, Parsed, Understood } from '../../../src/base/quantity/result.js';

/** The result, checked to be understood. */
export function understood<Unit extends string>(result: Parsed<Unit>): Understood<Unit> {
  expect(result).toMatchObject({ ok: true });
  return result as Understood<Unit>;
}

/** The result, checked to be refused or asked about. */
export function notUnderstood(result: Parsed<string>): NotUnderstood {
  expect(result).toMatchObject({ ok: false });
  return result as NotUnderstood;
}

/** What may be typed instead of an ambiguous text. */
export function offered(result: Parsed<string>): string[] {
  return (notUnderstood(result).choices ?? []).map((choice) => choice.typed);
}
