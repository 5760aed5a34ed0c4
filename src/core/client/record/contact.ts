import { z } from 'zod';
import type { DeepReadonly } from '#core/json/deepReadonly.ts';

const words = z.string();

/** That somebody was told of a value that needs contact. */
export const contactSchema = z.object({
  cautionId: words,
  /** The value that raised it, in words; missing in older records. */
  about: words.exactOptional(),
  told: words,
  /** The day, and the moment as the clock had it. */
  on: words,
  at: words,
  note: words.exactOptional(),
});

export type ContactMade = DeepReadonly<z.output<typeof contactSchema>>;
