import type { Assessment } from '#core/client/assessment/assessment.ts';
import { potassiumBinders } from '#core/client/assessment/vocabularies.ts';
import { addedWords, foodWords } from '#core/client/states/eaten.ts';
import { doseWords } from '#core/client/states/takenBinders.ts';

type Taken = Pick<Assessment, 'binders' | 'potassiumBinders' | 'addedFoods' | 'intake'>;

/** What is taken beside meals, row by row as it was entered. */
export function takenWords({ binders = [], potassiumBinders: potassium = [], addedFoods = [], intake }: Taken): string[] {
  const days = (daysPerWeek: number | undefined) => (daysPerWeek === undefined ? ', days not known' : `, ${daysPerWeek} days a week`);
  const holds = intake?.holdsAdded === undefined ? '' : intake.holdsAdded ? ' In the intake as told.' : ' On top of the intake as told.';
  return [
    ...(binders.length === 0 ? [] : [`Phosphate binders: ${binders.map(doseWords).join('; ')}.`]),
    ...(potassium.length === 0
      ? []
      : [
          `Potassium binders: ${potassium.map(({ binder, gPerDay, daysPerWeek }) => `${potassiumBinders.words(binder)}, ${gPerDay === undefined ? 'dose not known' : `${gPerDay} g`}${days(daysPerWeek)}`).join('; ')}.`,
        ]),
    ...(addedFoods.length === 0
      ? []
      : [
          `Beside meals: ${addedFoods.map(food => `${foodWords(food)}${[...addedWords(food)].map(one => `, ${one}`).join('')}${days(food.daysPerWeek)}`).join('; ')}.${holds}`,
        ]),
  ];
}
