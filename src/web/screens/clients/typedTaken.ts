import type { AssessmentJson } from '#core/client/assessment/assessment.ts';
import {
  type AddedFood,
  addedFoods,
  type BinderName,
  binders,
  mealTimes,
  type PotassiumBinderName,
  potassiumBinders,
} from '#core/client/assessment/vocabularies.ts';

type TakenBinder = NonNullable<AssessmentJson['binders']>[number];
type TakenPotassiumBinder = NonNullable<AssessmentJson['potassiumBinders']>[number];
type TakenFood = NonNullable<AssessmentJson['addedFoods']>[number];
type Session = NonNullable<Extract<AssessmentJson['treatment'], { setting: 'hemodialysis' }>['sessions']>[number];

/** A row as it is typed: its name, empty while none is chosen, and figures as texts. */
type Typed<Key extends string, Names extends string> = { readonly name: Key | '' } & Readonly<Record<Names, string>>;

const binderFields = ['words', 'unitMg', 'unitsPerDay', ...mealTimes.keys] as const;
export type TypedBinder = Typed<BinderName, (typeof binderFields)[number]>;

const potassiumFields = ['gPerDay', 'daysPerWeek'] as const;
export type TypedPotassiumBinder = Typed<PotassiumBinderName, (typeof potassiumFields)[number]>;

const foodFigures = [
  'energyKcal',
  'proteinG',
  'sodiumMg',
  'potassiumMg',
  'phosphorusMg',
  'calciumMg',
  'fluidMl',
  'daysPerWeek',
] as const satisfies readonly (keyof TakenFood)[];
export type TypedFood = Typed<AddedFood, (typeof foodFigures)[number] | 'words'>;

export interface TypedSession {
  readonly on: string;
  readonly gainKg: string;
  readonly removedL: string;
  readonly hours: string;
}

/** The lists that stand beside meals and medicines of the form. */
export interface TypedTaken {
  readonly binders: readonly TypedBinder[];
  readonly potassiumBinders: readonly TypedPotassiumBinder[];
  readonly addedFoods: readonly TypedFood[];
  readonly sessions: readonly TypedSession[];
}

export const blankBinder: TypedBinder = { name: '', ...blanks(binderFields) };
export const blankPotassiumBinder: TypedPotassiumBinder = { name: '', ...blanks(potassiumFields) };
export const blankFood: TypedFood = { name: '', words: '', ...blanks(foodFigures) };

export function blankSession(today: string): TypedSession {
  return { on: today, gainKg: '', removedL: '', hours: '' };
}

/** What the assessment before has of these lists. */
export function typedTaken(given: AssessmentJson | undefined): TypedTaken {
  const treatment = given?.treatment;
  const sessions = treatment?.setting === 'hemodialysis' ? (treatment.sessions ?? []) : [];
  return {
    binders: (given?.binders ?? []).map(({ binder, words = '', unitMg, unitsPerDay, unitsWith = {} }) => ({
      ...{ name: binder, words, unitMg: text(unitMg), unitsPerDay: text(unitsPerDay) },
      ...{ breakfast: text(unitsWith.breakfast), lunch: text(unitsWith.lunch) },
      ...{ dinner: text(unitsWith.dinner), snack: text(unitsWith.snack) },
    })),
    potassiumBinders: (given?.potassiumBinders ?? []).map(({ binder, gPerDay, daysPerWeek }) => ({
      ...{ name: binder, gPerDay: text(gPerDay), daysPerWeek: text(daysPerWeek) },
    })),
    addedFoods: (given?.addedFoods ?? []).map(({ food, words = '', ...figures }) => ({
      ...{ name: food, words, ...blanks(foodFigures) },
      ...Object.fromEntries(foodFigures.map(figure => [figure, text(figures[figure])])),
    })),
    sessions: sessions.map(({ on, gainKg, removedL, hours }) => ({
      on,
      gainKg: text(gainKg),
      removedL: text(removedL),
      hours: text(hours),
    })),
  };
}

/** The lists as assessment JSON; one without a row is left out, and so is what is empty in a row: not known. */
export function takenOf(typed: TypedTaken): Pick<AssessmentJson, 'binders' | 'potassiumBinders' | 'addedFoods'> {
  return {
    ...listed('binders', typed.binders.flatMap(binderOf)),
    ...listed('potassiumBinders', typed.potassiumBinders.flatMap(potassiumBinderOf)),
    ...listed('addedFoods', typed.addedFoods.flatMap(foodOf)),
  };
}

/** Treatments of which something is typed; undefined where there are none. */
export function sessionsOf({ sessions }: TypedTaken): readonly Session[] | undefined {
  const filled = sessions.filter(({ gainKg, removedL, hours }) => `${gainKg}${removedL}${hours}`.trim() !== '');
  if (filled.length === 0) return undefined;
  return filled.map(({ on, ...figures }) => ({ on, ...figuresOf(figures, ['gainKg', 'removedL', 'hours']) }));
}

/** Rows in which something is typed and nothing says of what. */
export function namesMissing({ binders: phosphate, potassiumBinders: potassium, addedFoods: foods }: TypedTaken): readonly string[] {
  const isNameless = (row: { readonly name: string }): boolean => row.name === '' && Object.values(row).join('').trim() !== '';
  return [
    ...(phosphate.some(isNameless) ? ['choose which phosphate binder it is'] : []),
    ...(potassium.some(isNameless) ? ['choose which potassium binder it is'] : []),
    ...(foods.some(isNameless) ? ['choose what is taken beside meals'] : []),
  ];
}

function binderOf(typed: TypedBinder): readonly TakenBinder[] {
  const binder = binders.keys.find(key => key === typed.name);
  if (binder === undefined) return [];
  const unitsWith = figuresOf(typed, mealTimes.keys);
  return [
    {
      binder,
      ...wordsOf(typed),
      ...figuresOf(typed, ['unitMg', 'unitsPerDay']),
      ...(Object.keys(unitsWith).length === 0 ? {} : { unitsWith }),
    },
  ];
}

function potassiumBinderOf(typed: TypedPotassiumBinder): readonly TakenPotassiumBinder[] {
  const binder = potassiumBinders.keys.find(key => key === typed.name);
  return binder === undefined ? [] : [{ binder, ...figuresOf(typed, potassiumFields) }];
}

function foodOf(typed: TypedFood): readonly TakenFood[] {
  const food = addedFoods.keys.find(key => key === typed.name);
  return food === undefined ? [] : [{ food, ...wordsOf(typed), ...figuresOf(typed, foodFigures) }];
}

function wordsOf({ words }: { readonly words: string }): { readonly words?: string } {
  return words.trim() === '' ? {} : { words: words.trim() };
}

/** Those that are typed, as numbers. */
function figuresOf<Name extends string>(row: Readonly<Record<Name, string>>, names: readonly Name[]): { [Key in Name]?: number } {
  const figures: { [Key in Name]?: number } = {};
  for (const name of names) if (row[name].trim() !== '') figures[name] = Number(row[name]);
  return figures;
}

function listed<Name extends string, Row>(name: Name, rows: readonly Row[]): { readonly [Key in Name]?: readonly Row[] } {
  const kept: { [Key in Name]?: readonly Row[] } = {};
  if (rows.length > 0) kept[name] = rows;
  return kept;
}

function blanks<Name extends string>(names: readonly Name[]): Readonly<Record<Name, string>> {
  return Object.fromEntries(names.map(name => [name, ''])) as Record<Name, string>;
}

function text(value: number | undefined): string {
  return value === undefined ? '' : String(value);
}
