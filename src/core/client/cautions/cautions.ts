import type { ClientFacts } from '#core/client/assessment/clientFacts.ts';
import { type Caution, cautionOf } from './caution.ts';
import { contactRules } from './contactValues.ts';
import { eatingRules } from './eatingRules.ts';
import { medicineRules } from './medicineRules.ts';
import { recordRules } from './recordRules.ts';
import { settingRules } from './settingRules.ts';

export type { Caution } from './caution.ts';

/** Cautions whose condition is met as of `facts.today`, emergencies first, then those for same-day contact, then in the order of the rules. Facts sections 8 and 4.3. */
export function cautionsFor(facts: ClientFacts): readonly Caution[] {
  const met = [...contactRules, ...recordRules, ...medicineRules, ...eatingRules, ...settingRules].flatMap(
    rule => cautionOf(rule, facts) ?? [],
  );
  const rank = ({ contact, sameDay }: Caution) => (contact === 'emergency-now' ? 0 : sameDay ? 1 : 2);
  return met.sort((a, b) => rank(a) - rank(b));
}
