/** What records hold besides for whoever reads US units: sentences that name a unit, and the packs of US shops. */
import { z } from 'zod';

const sentence = z.string().min(1);

/** Sentences of a question that name a unit; the answer is kept metric. */
export const usWording = z
  .strictObject({
    text: sentence,
    help: sentence,
    /** What to compare an odd or impossible answer with. */
    says: sentence,
    effect: sentence,
    handTest: sentence,
    /** Labels by the value of the option. */
    options: z.record(z.string(), z.strictObject({ label: sentence })),
  })
  .partial();

/** A caution in words that hold in the US: other plugs, other telephone numbers. */
export const usCaution = z.strictObject({ line: sentence.max(139), detail: sentence }).partial();

/** What it is called, and what to look for, in a US shop. */
export const usMaterial = z.strictObject({ title: sentence, lookFor: sentence }).partial();

/** On what pack sizes rest: nobody publishes them. */
export const packsBasis = z.literal('common practice, no source, from memory');

/** Common pack sizes in US shops, in a US unit. */
export const usPacks = z.strictObject({
  unit: z.enum(['lb', 'fl oz', 'ft3']),
  sizes: z.array(z.number().positive()).min(1),
  basis: packsBasis,
});
