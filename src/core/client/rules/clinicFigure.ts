import { z } from 'zod';
import type { DeepReadonly } from '#core/json/deepReadonly.ts';
import { isDay } from '#core/quantity/calendarDay.ts';
import { careFigureIds } from './careFigures.ts';

/** A figure that the clinic set, with who set it and when. */
export const clinicFigureSchema = z.object({
  id: z.enum(careFigureIds),
  value: z.number(),
  by: z.string().trim().min(1, 'who set it').max(200),
  on: z.string().refine(isDay, 'a day, yyyy-mm-dd'),
});

export type ClinicFigure = DeepReadonly<z.output<typeof clinicFigureSchema>>;
