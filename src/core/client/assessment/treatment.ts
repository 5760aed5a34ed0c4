import { z } from 'zod';
import { dialysateLabels } from '#core/client/formulas/dialysateGlucose.ts';
import type { Setting } from '../setting.ts';
import { sessionSchema } from './amountsTaken.ts';
import { typedDay } from './typedDay.ts';
import { dialysisPlaces, peritonealMethods } from './vocabularies.ts';

/** A setting without a schema does not compile. */
const bySetting = {
  'ckd-not-on-dialysis': z.object({ setting: z.literal('ckd-not-on-dialysis'), conservative: z.literal(true).exactOptional() }),
  hemodialysis: z.object({
    setting: z.literal('hemodialysis'),
    place: z.enum(dialysisPlaces.keys),
    startedOn: typedDay.exactOptional(),
    sessionsPerWeek: z.number().exactOptional(),
    sessionHours: z.number().exactOptional(),
    /** Agreed by the team; with hours and gap it gives another fluid allowance. */
    ultrafiltrationLimitMlPerKgH: z.number().exactOptional(),
    /** Gain and fluid, treatment by treatment. */
    sessions: z.array(sessionSchema).max(100).exactOptional(),
  }),
  'peritoneal-dialysis': z.object({
    setting: z.literal('peritoneal-dialysis'),
    method: z.enum(peritonealMethods.keys),
    startedOn: typedDay.exactOptional(),
    bags: z
      .array(z.object({ liters: z.number(), percent: z.number(), labeledAs: z.enum(dialysateLabels) }))
      .max(20)
      .exactOptional(),
    icodextrin: z.literal(true).exactOptional(),
    /** Absorbed share of the glucose where it is known, else the method's. */
    absorbedShare: z.number().exactOptional(),
  }),
  transplant: z.object({ setting: z.literal('transplant'), transplantedOn: typedDay }),
} satisfies Readonly<Record<Setting, z.ZodObject>>;

/** How kidney disease is treated, with what each setting has of its own. */
export const treatmentSchema = z.discriminatedUnion('setting', [
  bySetting['ckd-not-on-dialysis'],
  bySetting.hemodialysis,
  bySetting['peritoneal-dialysis'],
  bySetting.transplant,
]);
