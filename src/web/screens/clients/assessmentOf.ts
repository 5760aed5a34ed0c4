import type { AssessmentJson } from '#core/client/assessment/assessment.ts';
import { appetites, dialysisPlaces, lossCauses, peritonealMethods } from '#core/client/assessment/vocabularies.ts';
import { heightUnits } from '#core/client/formulas/bodyUnits.ts';
import { sexes } from '#core/client/formulas/egfr.ts';
import { gfrCategories } from '#core/client/formulas/gfrCategory.ts';
import { settings } from '#core/client/setting.ts';
import type { FieldName, TypedAssessment } from './typedAssessment.ts';
import { bagsOf, isTyped, labsOf, weighingsOf } from './typedResults.ts';
import { namesMissing, sessionsOf, takenOf } from './typedTaken.ts';
import { oneOf } from './vocabulary.ts';

/**
 * What is typed as assessment JSON. What is empty is left out: not known, never filled in. Undefined while something is missing that has no
 * usual value (`stillMissing`).
 */
export function assessmentOf(typed: TypedAssessment): AssessmentJson | undefined {
  const { flags, ticked } = typed;
  const [sex, age, treatment] = [sexOf(typed), ageOf(typed), treatmentOf(typed)];
  if (sex === undefined || age === undefined || treatment === undefined) return undefined;
  const f = (name: FieldName): string => typed.fields[name].trim();
  const number = (name: FieldName): number | undefined => (f(name) === '' ? undefined : Number(f(name)));
  const words = (name: FieldName): string | undefined => f(name) || undefined;
  const list = (name: FieldName): readonly string[] =>
    f(name)
      .split(',')
      .map(word => word.trim())
      .filter(Boolean);
  const stage = oneOf(gfrCategories, f('stage'));
  const urine = number('urine');
  return {
    on: f('on'),
    sex,
    age,
    treatment,
    diabetes: flags.diabetes,
    ...ticked,
    weighings: weighingsOf(typed.weighings),
    labs: labsOf(typed.labs),
    ...takenOf(typed),
    allergies: list('allergies'),
    avoidedFoods: list('avoidedFoods'),
    goals: list('goals'),
    ...known({
      pregnant: flags.pregnant || undefined,
      breastfeeding: flags.breastfeeding || undefined,
      acuteKidneyInjury: flags.acuteKidneyInjury || undefined,
      stage: stage && { value: stage, on: f('stageOn') },
      height: heightOf(typed),
      urineMlPerDay: urine === undefined ? undefined : { value: urine, on: f('urineOn') },
      raasChangedOn: words('raasChangedOn'),
      appetite: oneOf(appetites.keys, f('appetite')),
      muscleLoss: some(known({ percent3Months: number('muscle3'), percent6Months: number('muscle6') })),
      weightLoss: some(
        known({ percent3Months: number('loss3'), percent6Months: number('loss6'), cause: oneOf(lossCauses.keys, f('lossCause')) }),
      ),
      intake: some(
        known({
          ...{ littleForDays: number('littleForDays'), energyKcal: number('energyKcal'), proteinG: number('proteinG') },
          holdsAdded: f('holdsAdded') === '' ? undefined : f('holdsAdded') === 'yes',
        }),
      ),
      foodAccess: words('foodAccess'),
      potassiumSteps: some(known({ causesCheckedOn: words('causesCheckedOn'), additivesCutOn: words('additivesCutOn') })),
      lastScreenedOn: words('lastScreenedOn'),
      lastFullAssessmentOn: words('lastFullAssessmentOn'),
    }),
  };
}

/** What has no usual value: neither sex nor age is filled in for anybody. */
export function stillMissing(typed: TypedAssessment): readonly string[] {
  return [
    ...(treatmentOf(typed) === undefined ? ['choose the setting'] : []),
    ...(sexOf(typed) === undefined ? ['choose the sex that formulas go by'] : []),
    ...(ageOf(typed) === undefined ? ['type the day of birth or the age'] : []),
    ...(typed.labs.some(lab => isTyped(lab) && lab.takenOn.trim() === '') ? ['give each result the day on which it was taken'] : []),
    ...namesMissing(typed),
  ];
}

function sexOf({ fields }: TypedAssessment): AssessmentJson['sex'] | undefined {
  return oneOf(sexes, fields.sex.trim());
}

function ageOf({ fields }: TypedAssessment): AssessmentJson['age'] | undefined {
  const [bornOn, years] = [fields.bornOn.trim(), fields.years.trim()];
  if (bornOn !== '') return { bornOn };
  return years === '' ? undefined : { years: Number(years) };
}

/** What another setting would have of its own is left out. */
function treatmentOf(typed: TypedAssessment): AssessmentJson['treatment'] | undefined {
  const { fields, flags, bags } = typed;
  const f = (name: FieldName): string => fields[name].trim();
  const number = (name: FieldName): number | undefined => (f(name) === '' ? undefined : Number(f(name)));
  const setting = oneOf(settings, f('setting'));
  switch (setting) {
    case undefined:
      return undefined;
    case 'hemodialysis':
      return {
        setting,
        place: oneOf(dialysisPlaces.keys, f('place')) ?? 'in-center',
        ...known({
          startedOn: f('startedOn') || undefined,
          sessionsPerWeek: number('sessionsPerWeek'),
          sessionHours: number('sessionHours'),
          ultrafiltrationLimitMlPerKgH: number('ultrafiltrationLimit'),
          sessions: sessionsOf(typed),
        }),
      };
    case 'peritoneal-dialysis':
      return {
        setting,
        method: oneOf(peritonealMethods.keys, f('method')) ?? 'capd',
        ...known({
          startedOn: f('startedOn') || undefined,
          bags: bagsOf(bags),
          icodextrin: flags.icodextrin ? (true as const) : undefined,
          absorbedShare: number('absorbedShare'),
        }),
      };
    case 'transplant':
      return { setting, transplantedOn: f('transplantedOn') };
    case 'ckd-not-on-dialysis':
      return { setting, ...(flags.conservative ? { conservative: true } : {}) };
  }
}

function heightOf({ fields: { height, heightUnit, inches } }: TypedAssessment): AssessmentJson['height'] {
  if (height.trim() === '') return undefined;
  const unit = oneOf(heightUnits, heightUnit);
  return unit === undefined ? { feet: Number(height), inches: Number(inches) } : { value: Number(height), unit };
}

type Known<Facts> = { readonly [Key in keyof Facts]?: Exclude<Facts[Key], undefined> };

/** Without what is not known. */
function known<Facts extends object>(facts: Facts): Known<Facts> {
  const kept: { [Key in keyof Facts]?: Exclude<Facts[Key], undefined> } = {};
  for (const key in facts) {
    const fact = facts[key];
    if (isKnown(fact)) kept[key] = fact;
  }
  return kept;
}

function isKnown<Fact>(fact: Fact): fact is Exclude<Fact, undefined> {
  return fact !== undefined;
}

/** Undefined for an object without any fact. */
function some<Facts extends object>(facts: Facts): Facts | undefined {
  return Object.keys(facts).length === 0 ? undefined : facts;
}
