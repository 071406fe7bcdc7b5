/** A record of the rules in the words that hold where the reader is. */
import type { Units } from '../base/us-units.js';
import type { Material } from '../rules/schema.js';

/** The record with its US sentences in place of the others, for whoever reads US units. */
export const wordedIn = <Rule extends { readonly us?: object | undefined }>(
  units: Units,
  rule: Rule,
): Rule => (units === 'us' ? { ...rule, ...rule.us } : rule);

export const titleIn = (units: Units, material: Material | undefined): string | undefined =>
  material === undefined ? undefined : wordedIn(units, material).title;
