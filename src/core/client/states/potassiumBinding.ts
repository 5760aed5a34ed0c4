import type { TakenPotassiumBinder } from '#core/client/assessment/amountsTaken.ts';
import type { ClientFacts } from '#core/client/assessment/clientFacts.ts';
import { type PotassiumBinderName, potassiumBinders } from '#core/client/assessment/vocabularies.ts';
import { add, exactly, type Interval, interval, zero } from '#core/quantity/interval.ts';

/**
 * Sodium in mg per g. Cyclosilicate: about 400 mg in 5 g (its US label, as quoted). Polystyrene sulfonate: 1500 mg (65 mmol) in 15 g (its US
 * label, as quoted). Patiromer has calcium instead, about 1600 mg in 8.4 g (as quoted), of which nobody knows how much is absorbed.
 */
const sodiumMgPerG: Readonly<Record<PotassiumBinderName, number>> = {
  patiromer: 0,
  'sodium-zirconium-cyclosilicate': 80,
  'sodium-polystyrene-sulfonate': 100,
};

function takenPotassiumBinders({ assessment }: ClientFacts): readonly TakenPotassiumBinder[] {
  const rank = ({ binder }: TakenPotassiumBinder) => potassiumBinders.keys.indexOf(binder);
  return (assessment.potassiumBinders ?? []).toSorted((a, b) => rank(a) - rank(b) || sodiumOf(a).lo - sodiumOf(b).lo);
}

/** Names of what is taken; undefined where nothing is. */
export function potassiumBinderWords(facts: ClientFacts, ...names: readonly PotassiumBinderName[]): string | undefined {
  const taken = takenPotassiumBinders(facts).filter(({ binder }) => names.length === 0 || names.includes(binder));
  return [...new Set(taken.map(({ binder }) => potassiumBinders.words(binder)))].join(', ') || undefined;
}

/** Sodium in mg a day, the mean of a week. 10 g of cyclosilicate daily: 800; without a dose the end is open, without days it is up to that. */
export function potassiumBinderSodium(facts: ClientFacts): Interval {
  return takenPotassiumBinders(facts).map(sodiumOf).reduce(add, zero);
}

function sodiumOf({ binder, gPerDay, daysPerWeek }: TakenPotassiumBinder): Interval {
  if (sodiumMgPerG[binder] === 0) return zero;
  if (gPerDay === undefined) return interval(0, Number.POSITIVE_INFINITY);
  const mg = gPerDay * sodiumMgPerG[binder];
  return daysPerWeek === undefined ? interval(0, mg) : exactly((mg * daysPerWeek) / 7);
}
