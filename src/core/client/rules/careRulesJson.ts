import { z } from 'zod';
import type { Issue, Reading } from '#core/errors.ts';
import type { DeepReadonly } from '#core/json/deepReadonly.ts';
import { readWhole } from '#core/json/readWhole.ts';
import { careFigures } from './careFigures.ts';
import type { CareRules } from './careRules.ts';
import { clinicFigureSchema } from './clinicFigure.ts';

const schema = z.array(clinicFigureSchema);
export type CareRulesJson = DeepReadonly<z.input<typeof schema>>;

/**
 * Reads the figures that a clinic has set, oldest first. Refused whole, with the place of each fault: an id that is not known, a value
 * outside what a clinic may set, nobody named, no day.
 */
export function careRulesFromJson(json: unknown): Reading<CareRules | undefined> {
  const read = readWhole(schema, json);
  if (read.value === undefined) return read;
  const issues = read.value.flatMap(({ id, value: set }, at): Issue[] => {
    const { lo, hi, unit } = careFigures[id];
    if (set >= lo && set <= hi) return [];
    return [{ code: 'figure-outside', place: { heading: `[${at}].value` }, found: String(set), expected: `${lo} to ${hi} ${unit}` }];
  });
  return issues.length > 0 ? { value: undefined, issues } : { value: read.value, issues: [] };
}

export function careRulesToJson(rules: CareRules): CareRulesJson {
  return rules;
}
