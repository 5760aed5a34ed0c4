import { type AddedNutrient, addedNutrients, type TakenFood } from '#core/client/assessment/amountsTaken.ts';
import type { ClientFacts } from '#core/client/assessment/clientFacts.ts';
import { type AddedFood, addedFoods } from '#core/client/assessment/vocabularies.ts';
import { add, exactly, type Interval, interval, zero } from '#core/quantity/interval.ts';
import { roundHalfUp } from '#core/quantity/rounding.ts';

/** What an added food brings a day, the mean of a week. 300 kcal on 3 days a week: 128.6. Not known: no end; on days not known: up to it. */
function meanOf(food: TakenFood, nutrient: AddedNutrient): Interval {
  const onItsDays = food[nutrient];
  if (onItsDays === undefined) return interval(0, Number.POSITIVE_INFINITY);
  return food.daysPerWeek === undefined ? interval(0, onItsDays) : exactly((onItsDays * food.daysPerWeek) / 7);
}

/** What supplements, feeds and meals on dialysis bring a day; undefined where there are none. */
export function addedADay({ assessment }: ClientFacts, nutrient: AddedNutrient): Interval | undefined {
  const foods = assessment.addedFoods ?? [];
  // The order in which rows were typed must not move a last digit.
  const means = foods.map(food => meanOf(food, nutrient)).toSorted((a, b) => a.lo - b.lo || a.hi - b.hi);
  return foods.length === 0 ? undefined : means.reduce(add, zero);
}

/**
 * A day's energy or protein from all that is eaten, drunk and fed; undefined where nothing is told. What was told as eaten may have the
 * added foods in it (`holdsAdded`): nothing is counted twice, and while nobody was asked the end lies between both. 1400 kcal told and
 * 300 added: 1700; not asked: 1400 to 1700; nothing told: at least 300.
 */
export function eatenADay(facts: ClientFacts, nutrient: 'energyKcal' | 'proteinG'): Interval | undefined {
  const told = facts.assessment.intake?.[nutrient];
  const added = addedADay(facts, nutrient);
  if (added === undefined) return told === undefined ? undefined : exactly(told);
  if (told === undefined) return interval(added.lo, Number.POSITIVE_INFINITY);
  const { holdsAdded } = facts.assessment.intake ?? {};
  if (holdsAdded === true) return exactly(told);
  return holdsAdded === false ? add(exactly(told), added) : interval(told, told + added.hi);
}

/** Whether nobody has said if the energy or protein that was told has the added foods in it. */
export function isAddedOpen({ assessment: { intake, addedFoods: foods = [] } }: ClientFacts): boolean {
  const isTold = intake?.energyKcal !== undefined || intake?.proteinG !== undefined;
  return isTold && foods.length > 0 && intake.holdsAdded === undefined;
}

export function hasAdded({ assessment }: ClientFacts, ...foods: readonly AddedFood[]): boolean {
  return (assessment.addedFoods ?? []).some(({ food }) => foods.includes(food));
}

/** "protein powder", "tube feeding (standard formula)". */
export function foodWords({ food, words }: TakenFood): string {
  if (words === undefined) return addedFoods.words(food);
  return food === 'other' ? words : `${addedFoods.words(food)} (${words})`;
}

/** An amount as a sentence has it: "300 mg", "at least 300 mg", "up to 300 mg", "200 to 300 mg", "an amount of mg that is not known". */
export function amountWords({ lo, hi }: Interval, unit: string): string {
  const [low, high] = [roundHalfUp(lo, 0), roundHalfUp(hi, 0)];
  if (hi === Number.POSITIVE_INFINITY) return low > 0 ? `at least ${low} ${unit}` : `${unit === 'kcal' ? 'energy' : unit} not known`;
  return low === high ? `${low} ${unit}` : low === 0 ? `up to ${high} ${unit}` : `${low} to ${high} ${unit}`;
}

const nutrientWords: Readonly<Record<AddedNutrient, readonly [unit: string, words: string]>> = {
  energyKcal: ['kcal', ''],
  proteinG: ['g', 'protein'],
  sodiumMg: ['mg', 'sodium'],
  potassiumMg: ['mg', 'potassium'],
  phosphorusMg: ['mg', 'phosphorus'],
  calciumMg: ['mg', 'calcium'],
  fluidMl: ['mL', 'fluid'],
};

/** What was told of a food, on a day of its own: "300 kcal", "20 g protein". */
export function addedWords(food: TakenFood): readonly string[] {
  return addedNutrients.flatMap(nutrient => {
    const [unit, words] = nutrientWords[nutrient];
    return food[nutrient] === undefined ? [] : [`${food[nutrient]} ${unit} ${words}`.trim()];
  });
}
