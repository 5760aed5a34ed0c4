import type { TakenBinder } from '#core/client/assessment/amountsTaken.ts';
import { type ClientFacts, takes } from '#core/client/assessment/clientFacts.ts';
import { type BinderName, binders, mealTimes } from '#core/client/assessment/vocabularies.ts';
import { binderCalciumMg, type CalciumBinder, calciumShare } from '#core/client/formulas/binderCalcium.ts';
import { add, exactly, type Interval, interval, zero } from '#core/quantity/interval.ts';

export function isCalciumBinder(name: BinderName): name is CalciumBinder {
  return name in calciumShare;
}

/** Binders that are taken, in the order of their list, whatever the order they were typed in. */
export function takenBinders({ assessment }: ClientFacts): readonly TakenBinder[] {
  const rank = ({ binder }: TakenBinder) => binders.keys.indexOf(binder);
  return (assessment.binders ?? []).toSorted((a, b) => rank(a) - rank(b) || doseWords(a).localeCompare(doseWords(b), 'en'));
}

export function takesBinder(facts: ClientFacts, ...names: readonly BinderName[]): boolean {
  return takenBinders(facts).some(({ binder }) => names.includes(binder));
}

/** What is taken, by name: "calcium acetate, sevelamer"; "phosphate binder" where the list of medicines alone says so; else undefined. */
export function binderWords(facts: ClientFacts, counts: (taken: TakenBinder) => boolean = () => true): string | undefined {
  const taken = takenBinders(facts);
  if (taken.length === 0) return takes(facts, 'phosphate-binder') ? 'phosphate binder' : undefined;
  return [...new Set(taken.filter(counts).map(nameOf))].join(', ') || undefined;
}

function nameOf({ binder, words }: TakenBinder): string {
  return binder === 'other' && words !== undefined ? words : binders.words(binder);
}

/** The number of a day: as told, else of its meals; a meal that is left out leaves the end open. */
function unitsADay({ unitsPerDay, unitsWith = {} }: TakenBinder): Interval {
  if (unitsPerDay !== undefined) return exactly(unitsPerDay);
  const told = mealTimes.keys.flatMap(meal => unitsWith[meal] ?? []);
  const sum = told.reduce((a, b) => a + b, 0);
  return told.length === mealTimes.keys.length ? exactly(sum) : interval(sum, Number.POSITIVE_INFINITY);
}

/** True where calcium may come with it: of a binder that is not named nobody knows. */
export function mayHoldCalcium({ binder }: TakenBinder): boolean {
  return binder === 'other' || isCalciumBinder(binder);
}

/** Calcium in mg a day from one binder. 667 mg calcium acetate, 6 a day: 1014; sevelamer: 0; without strength or number the end is open. */
export function calciumOf(taken: TakenBinder): Interval {
  const { binder, unitMg } = taken;
  if (!isCalciumBinder(binder)) return mayHoldCalcium(taken) ? interval(0, Number.POSITIVE_INFINITY) : zero;
  const { lo, hi } = unitsADay(taken);
  const mg = (units: number): number | undefined => {
    const result = unitMg === undefined ? undefined : binderCalciumMg(binder, unitMg, units);
    return result?.kind === 'computed' ? result.value : undefined;
  };
  return interval(mg(lo) ?? 0, mg(hi) ?? Number.POSITIVE_INFINITY);
}

/** Calcium in mg a day from all binders; undefined where none is on record. A binder that the medicine list alone tells is not known. */
export function binderCalcium(facts: ClientFacts): Interval | undefined {
  const taken = takenBinders(facts);
  if (taken.length > 0) return taken.map(calciumOf).reduce(add);
  return takes(facts, 'phosphate-binder') ? interval(0, Number.POSITIVE_INFINITY) : undefined;
}

/** A binder with its dose: "calcium acetate 667 mg, 6 a day (2 with breakfast, 4 with dinner)". */
export function doseWords(taken: TakenBinder): string {
  const { unitMg, unitsPerDay, unitsWith = {} } = taken;
  const meals = mealTimes.keys
    .flatMap(meal => (unitsWith[meal] === undefined ? [] : [`${unitsWith[meal]} with ${mealTimes.words(meal)}`]))
    .join(', ');
  const strength = unitMg === undefined ? 'strength not known' : `${unitMg} mg`;
  const number = unitsPerDay === undefined ? (meals === '' ? 'number not known' : meals) : `${unitsPerDay} a day`;
  return `${nameOf(taken)}, ${strength}, ${number}${unitsPerDay !== undefined && meals !== '' ? ` (${meals})` : ''}`;
}
