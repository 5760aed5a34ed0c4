import type { Session, TakenBinder, TakenFood, TakenPotassiumBinder } from './amountsTaken.ts';
import type { Assessment } from './assessment.ts';
import type { AssessmentIssue } from './assessmentIssue.ts';
import { addedFoods, binders, mealTimes, potassiumBinders } from './vocabularies.ts';

/** Treatments on record; none off hemodialysis. */
export function sessionsOf({ treatment }: Assessment): readonly Session[] {
  return treatment.setting === 'hemodialysis' ? (treatment.sessions ?? []) : [];
}

/**
 * What is asked or refused about binders, added foods and treatments. What an adult can take or a machine can do, wide on purpose (own
 * decision); a dose of 0 is none: the row is taken out. A figure that another unit explains is asked about by that unit.
 */
export function checkAmounts(assessment: Assessment): readonly AssessmentIssue[] {
  return [
    ...(assessment.binders ?? []).flatMap(binderIssues),
    ...(assessment.potassiumBinders ?? []).flatMap(potassiumBinderIssues),
    ...(assessment.addedFoods ?? []).flatMap(foodIssues),
    ...sessionsOf(assessment).flatMap(sessionIssues),
  ];
}

/** `meant`: figures that another unit explains, and the question that they get. */
interface Bounds {
  readonly lo: number;
  readonly hi: number;
  readonly unit: string;
  readonly meant?: { readonly lo: number; readonly hi: number; readonly asked: string };
}

function issueOf(field: string, value: number | undefined, { lo, hi, unit, meant }: Bounds): readonly AssessmentIssue[] {
  if (value === undefined || (value >= lo && value <= hi)) return [];
  if (meant !== undefined && value >= meant.lo && value <= meant.hi)
    return [{ kind: 'question', code: 'unit-in-question', field, told: `${field} ${value} ${unit}: ${meant.asked}` }];
  const told = `${field} ${value} ${unit} cannot be: expected ${lo} to ${hi} ${unit}.`;
  return [{ kind: 'refusal', code: 'impossible-value', field, told }];
}

function binderIssues(taken: TakenBinder): readonly AssessmentIssue[] {
  const { binder, unitMg, unitsPerDay, unitsWith = {} } = taken;
  const name = binders.words(binder);
  const meals = mealTimes.keys.flatMap(meal => unitsWith[meal] ?? []);
  const sum = meals.reduce((a, b) => a + b, 0);
  const contradicts = unitsPerDay !== undefined && (meals.length === mealTimes.keys.length ? sum !== unitsPerDay : sum > unitsPerDay);
  const isNone = meals.length === mealTimes.keys.length && sum === 0;
  return [
    ...issueOf(`${name}, in one`, unitMg, {
      ...{ lo: 50, hi: 3000, unit: 'mg' },
      meant: { lo: 0.05, hi: 3, asked: 'were grams meant? Type it in mg.' },
    }),
    ...issueOf(`${name}, number`, unitsPerDay, { lo: 0.5, hi: 40, unit: 'a day' }),
    ...mealTimes.keys.flatMap(meal =>
      issueOf(`${name} with ${mealTimes.words(meal)}`, unitsWith[meal], { lo: 0, hi: 15, unit: 'at once' }),
    ),
    ...(contradicts
      ? [question('contradiction', name, `${name}: ${unitsPerDay} a day, and ${sum} with the meals: which of the two is right?`)]
      : []),
    ...(isNone ? [question('value-in-question', name, `${name}: 0 with every meal: is it not taken? Then take it out.`)] : []),
  ];
}

function potassiumBinderIssues({ binder, gPerDay, daysPerWeek }: TakenPotassiumBinder): readonly AssessmentIssue[] {
  const name = potassiumBinders.words(binder);
  return [
    ...issueOf(name, gPerDay, { lo: 1, hi: 60, unit: 'g a day', meant: { lo: 1000, hi: 60_000, asked: 'was it mg? Type it in g.' } }),
    ...issueOf(`${name}, days`, daysPerWeek, daysAWeek),
  ];
}

const daysAWeek: Bounds = { lo: 0.5, hi: 7, unit: 'a week' };

const kilojoules = { lo: 6001, hi: 17_000, asked: 'was it kilojoules? 1 kcal is 4.184 kJ.' };

function foodIssues(taken: TakenFood): readonly AssessmentIssue[] {
  const { food, energyKcal, proteinG } = taken;
  const name = addedFoods.words(food);
  const of = (words: string, value: number | undefined, hi: number, unit: string, meant?: Bounds['meant']) =>
    issueOf(`${name}, ${words}`, value, { lo: 0, hi, unit, ...(meant === undefined ? {} : { meant }) });
  // 4 kcal in each gram of protein; a label rounds, so a tenth is let pass.
  const contradicts = energyKcal !== undefined && proteinG !== undefined && proteinG * 4 > energyKcal * 1.1 + 10;
  return [
    ...of('energy', energyKcal, 6000, 'kcal a day', kilojoules),
    ...of('protein', proteinG, 300, 'g a day'),
    ...of('sodium', taken.sodiumMg, 10_000, 'mg a day'),
    ...of('potassium', taken.potassiumMg, 10_000, 'mg a day'),
    ...of('phosphorus', taken.phosphorusMg, 5000, 'mg a day'),
    ...of('calcium', taken.calciumMg, 5000, 'mg a day'),
    ...of('fluid', taken.fluidMl, 6000, 'mL a day'),
    ...issueOf(`${name}, days`, taken.daysPerWeek, daysAWeek),
    ...(contradicts
      ? [
          question(
            'contradiction',
            name,
            `${name}: ${proteinG} g protein alone are ${proteinG * 4} kcal, more than the ${energyKcal} kcal typed: which is right?`,
          ),
        ]
      : []),
  ];
}

function sessionIssues({ on, gainKg, removedL, hours }: Session): readonly AssessmentIssue[] {
  const name = `dialysis treatment of ${on}`;
  return [
    ...issueOf(`${name}, gain`, gainKg, {
      ...{ lo: -5, hi: 15, unit: 'kg' },
      meant: { lo: 100, hi: 15_000, asked: 'were grams meant? Type it in kg.' },
    }),
    ...issueOf(`${name}, fluid taken off`, removedL, {
      ...{ lo: 0, hi: 12, unit: 'L' },
      meant: { lo: 100, hi: 12_000, asked: 'was it mL? Type it in L.' },
    }),
    ...issueOf(`${name}, length`, hours, {
      ...{ lo: 0.5, hi: 12, unit: 'h' },
      meant: { lo: 30, hi: 720, asked: 'was it minutes? Type it in hours.' },
    }),
  ];
}

function question(code: AssessmentIssue['code'], field: string, told: string): AssessmentIssue {
  return { kind: 'question', code, field, told };
}
