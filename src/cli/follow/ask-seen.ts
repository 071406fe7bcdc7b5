/** Whether something is to be seen: never taken for granted, and seen in part is an answer of its own. */
import type { Asker } from '../../terminal/asker.js';

export type Seen = 'yes' | 'partly' | 'no' | 'unseen';

const CHOICES = [
  { value: 'yes', label: 'yes' },
  { value: 'partly', label: 'partly' },
  { value: 'no', label: 'no' },
  { value: 'unseen', label: 'have not looked', isUnknown: true },
] as const satisfies readonly { readonly value: Seen; readonly label: string; readonly isUnknown?: true }[];

/** Undefined when they leave. */
export const askSeen = async (asker: Asker, message: string): Promise<Seen | undefined> =>
  (await asker.pick(message, CHOICES)) as Seen | undefined;
