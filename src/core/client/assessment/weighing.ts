import { z } from 'zod';
import { weightUnits } from '#core/client/formulas/bodyUnits.ts';
import type { DeepReadonly } from '#core/json/deepReadonly.ts';
import { typedDay } from './typedDay.ts';
import { weightKinds } from './vocabularies.ts';

/** A weight as it was entered, with what it is of. */
export const weighingSchema = z.object({
  weight: z.object({ value: z.number(), unit: z.enum(weightUnits) }),
  kind: z.enum(weightKinds.keys),
  on: typedDay,
  /** The person has answered that the unit is right. */
  unitConfirmed: z.literal(true).exactOptional(),
});

export type Weighing = DeepReadonly<z.output<typeof weighingSchema>>;
