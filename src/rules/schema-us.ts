/** The sentences of a question that name a unit, as whoever reads US units is asked; the answer is kept metric. */
import { z } from 'zod';

const sentence = z.string().min(1);

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
