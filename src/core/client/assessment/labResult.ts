import { z } from 'zod';
import { analyteKeys } from '#core/client/labs/analytes.ts';
import type { DeepReadonly } from '#core/json/deepReadonly.ts';
import { typedDay } from './typedDay.ts';
import { drawnTimes } from './vocabularies.ts';

/** A laboratory result as it came. The unit stays with it. */
export const labResultSchema = z.object({
  analyte: z.enum(analyteKeys),
  value: z.number(),
  unit: z.string().min(1, 'the unit of the result').max(40),
  takenOn: typedDay,
  /** Time of day "HH:MM", for a rise within hours. */
  takenAt: z.string().max(5).exactOptional(),
  /** Ends of the laboratory's own range, in the same unit. They beat every table of ours. */
  lowerNormal: z.number().exactOptional(),
  upperNormal: z.number().exactOptional(),
  /** On dialysis: before or after the treatment; not known when missing, which on hemodialysis counts as before. */
  drawn: z.enum(drawnTimes.keys).exactOptional(),
  /** The person has answered that value and unit are right, where the program asked. */
  confirmed: z.literal(true).exactOptional(),
  /** The laboratory marked the sample: a potassium from it is an upper bound and never in range. */
  hemolyzed: z.literal(true).exactOptional(),
});

export type LabResult = DeepReadonly<z.output<typeof labResultSchema>>;
