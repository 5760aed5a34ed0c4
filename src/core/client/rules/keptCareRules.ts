import { z } from 'zod';
import type { Reading } from '#core/errors.ts';
import type { DeepReadonly } from '#core/json/deepReadonly.ts';
import type { FormStep } from '#core/json/presentForm.ts';
import { readWhole } from '#core/json/readWhole.ts';
import type { CareRules } from './careRules.ts';
import { careRulesFromJson, careRulesToJson } from './careRulesJson.ts';
import { clinicFigureSchema } from './clinicFigure.ts';

/** Form 1 had no `format`, and is like form 2. */
const steps: readonly FormStep[] = [json => json];

/** The one record among the clients' that is no client: the figures that the clinic has set. */
export const keptCareRulesSchema = z.object({
  id: z.literal('clinic-figures'),
  /** Grows with each change; sent back with the next one. */
  version: z.number(),
  figures: z.array(clinicFigureSchema),
});

export type KeptCareRulesJson = DeepReadonly<z.input<typeof keptCareRulesSchema>> & { readonly format: number };

export interface KeptCareRules {
  readonly version: number;
  readonly rules: CareRules;
}

export function keptCareRulesFromJson(json: unknown): Reading<KeptCareRules | undefined> {
  const kept = readWhole(keptCareRulesSchema, json, steps);
  if (kept.value === undefined) return { value: undefined, issues: kept.issues };
  const { value: rules, issues } = careRulesFromJson(kept.value.figures);
  return { value: rules && { version: kept.value.version, rules }, issues };
}

export function keptCareRulesToJson({ version, rules }: KeptCareRules): KeptCareRulesJson {
  return { format: steps.length + 1, id: 'clinic-figures', version, figures: careRulesToJson(rules) };
}
