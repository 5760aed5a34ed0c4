import { type CareFigureId, careFigures } from './careFigures.ts';
import type { ClinicFigure } from './clinicFigure.ts';

/** What a clinic has set, oldest first; empty for the usual figures. The newest of an id counts. */
export type CareRules = readonly ClinicFigure[];

export const usualCareRules: CareRules = [];

/** The figure that holds: the clinic's newest, else the usual one. `careFigure([], 'age.dry-weight')` is 60. */
export function careFigure(rules: CareRules, id: CareFigureId): number {
  return rules.findLast(one => one.id === id)?.value ?? careFigures[id].usual;
}
