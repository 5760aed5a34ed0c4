import { expect, test } from 'vitest';
import { clientWith } from '#core/client/assessment/clientFixture.ts';
import { personWords } from './noteAssessment.ts';
import { takenWords } from './noteTaken.ts';

test('[CLT-83] a note tells what is taken row by row, and what of it is not known', () => {
  const taken = clientWith({
    binders: [{ binder: 'sevelamer', unitMg: 800, unitsWith: { lunch: 1, dinner: 2, snack: 1 } }],
    potassiumBinders: [{ binder: 'patiromer', gPerDay: 8.4, daysPerWeek: 7 }, { binder: 'sodium-polystyrene-sulfonate' }],
    addedFoods: [{ food: 'other', words: 'a broth', sodiumMg: 400, fluidMl: 240, daysPerWeek: 3 }, { food: 'tube-feeding' }],
    intake: { energyKcal: 1200, holdsAdded: false },
  });
  expect(takenWords(taken)).toEqual([
    'Phosphate binders: sevelamer, 800 mg, 1 with lunch, 2 with dinner, 1 with a snack.',
    'Potassium binders: patiromer, 8.4 g, 7 days a week; sodium polystyrene sulfonate, dose not known, days not known.',
    'Beside meals: a broth, 400 mg sodium, 240 mL fluid, 3 days a week; tube feeding, days not known. On top of the intake as told.',
  ]);
  for (const sentence of takenWords(taken)) expect(personWords(taken, taken.on)).toContain(sentence);
  expect(takenWords(clientWith())).toEqual([]);
});
