import { z } from 'zod';

/**
 * A range as it is stored, sent and typed, wherever it stands: `[lo, hi]`, an open end as null. Not below 0: no amount is.
 * `intervalToJson` writes it, `intervalFromJson` reads it once this has looked.
 */
export const intervalSchema = z
  .tuple([z.number().nonnegative('not below 0'), z.number().nonnegative('not below 0').nullable()], {
    error: 'a range as [lo, hi]; null has no upper end',
  })
  .refine(([lo, hi]) => hi === null || lo <= hi, 'a range whose low end is not above its high end');
