import type { AssessmentJson } from '#core/client/assessment/assessment.ts';
import { type TypedBag, type TypedLab, type TypedWeighing, typedBag, typedLab, typedWeighing } from './typedResults.ts';
import { type TypedTaken, typedTaken } from './typedTaken.ts';

/** What is typed or chosen, as it is typed; empty where it is not known. */
export const fieldNames = [
  'on',
  'sex',
  'bornOn',
  'years',
  'setting',
  'place',
  'method',
  'startedOn',
  'sessionsPerWeek',
  'sessionHours',
  'ultrafiltrationLimit',
  'absorbedShare',
  'transplantedOn',
  'stage',
  'stageOn',
  'heightUnit',
  'height',
  'inches',
  'urine',
  'urineOn',
  'appetite',
  'loss3',
  'loss6',
  'lossCause',
  'muscle3',
  'muscle6',
  'littleForDays',
  'energyKcal',
  'proteinG',
  'holdsAdded',
  'foodAccess',
  'goals',
  'allergies',
  'avoidedFoods',
  'raasChangedOn',
  'causesCheckedOn',
  'additivesCutOn',
  'lastScreenedOn',
  'lastFullAssessmentOn',
] as const;
export type FieldName = (typeof fieldNames)[number];

/** What is ticked or not. */
export const flagNames = ['diabetes', 'conservative', 'acuteKidneyInjury', 'pregnant', 'breastfeeding', 'icodextrin'] as const;
export type FlagName = (typeof flagNames)[number];

/** Lists of keys, each with its tick. */
const tickedNames = ['conditions', 'medicines', 'supplements', 'symptoms', 'missingParts'] as const;
type TickedName = (typeof tickedNames)[number];

/** The form of an assessment. */
export interface TypedAssessment extends TypedTaken {
  readonly fields: Readonly<Record<FieldName, string>>;
  readonly flags: Readonly<Record<FlagName, boolean>>;
  readonly ticked: { readonly [Name in TickedName]: NonNullable<AssessmentJson[Name]> };
  readonly weighings: readonly TypedWeighing[];
  readonly labs: readonly TypedLab[];
  readonly bags: readonly TypedBag[];
}

/** What the form begins with: what the assessment before has, on the day of today. */
export function typedAssessment(given: AssessmentJson | undefined, today: string): TypedAssessment {
  return {
    fields: fieldsOf(given, today),
    flags: {
      diabetes: given?.diabetes === true,
      conservative: treatmentIn(given, 'ckd-not-on-dialysis')?.conservative === true,
      acuteKidneyInjury: given?.acuteKidneyInjury === true,
      pregnant: given?.pregnant === true,
      breastfeeding: given?.breastfeeding === true,
      icodextrin: treatmentIn(given, 'peritoneal-dialysis')?.icodextrin === true,
    },
    ticked: {
      conditions: given?.conditions ?? [],
      medicines: given?.medicines ?? [],
      supplements: given?.supplements ?? [],
      symptoms: given?.symptoms ?? [],
      missingParts: given?.missingParts ?? [],
    },
    weighings: (given?.weighings ?? []).map(typedWeighing),
    labs: (given?.labs ?? []).map(typedLab),
    ...typedTaken(given),
    bags: (treatmentIn(given, 'peritoneal-dialysis')?.bags ?? []).map(typedBag),
  };
}

function fieldsOf(given: AssessmentJson | undefined, today: string): TypedAssessment['fields'] {
  const hemodialysis = treatmentIn(given, 'hemodialysis');
  const peritoneal = treatmentIn(given, 'peritoneal-dialysis');
  const { age, height, stage, urineMlPerDay, weightLoss, muscleLoss, intake, potassiumSteps } = given ?? {};
  return {
    on: today,
    sex: text(given?.sex),
    bornOn: age !== undefined && 'bornOn' in age ? age.bornOn : '',
    years: age !== undefined && 'years' in age ? text(age.years) : '',
    setting: text(given?.treatment.setting),
    place: hemodialysis?.place ?? 'in-center',
    method: peritoneal?.method ?? 'capd',
    startedOn: text(hemodialysis?.startedOn ?? peritoneal?.startedOn),
    sessionsPerWeek: text(hemodialysis?.sessionsPerWeek),
    sessionHours: text(hemodialysis?.sessionHours),
    ultrafiltrationLimit: text(hemodialysis?.ultrafiltrationLimitMlPerKgH),
    absorbedShare: text(peritoneal?.absorbedShare),
    transplantedOn: text(treatmentIn(given, 'transplant')?.transplantedOn),
    stage: text(stage?.value),
    stageOn: text(stage?.on),
    ...heightFields(height),
    urine: text(urineMlPerDay?.value),
    urineOn: text(urineMlPerDay?.on),
    appetite: text(given?.appetite),
    loss3: text(weightLoss?.percent3Months),
    loss6: text(weightLoss?.percent6Months),
    lossCause: text(weightLoss?.cause),
    muscle3: text(muscleLoss?.percent3Months),
    muscle6: text(muscleLoss?.percent6Months),
    littleForDays: text(intake?.littleForDays),
    energyKcal: text(intake?.energyKcal),
    proteinG: text(intake?.proteinG),
    holdsAdded: intake?.holdsAdded === undefined ? '' : intake.holdsAdded ? 'yes' : 'no',
    foodAccess: text(given?.foodAccess),
    goals: (given?.goals ?? []).join(', '),
    allergies: (given?.allergies ?? []).join(', '),
    avoidedFoods: (given?.avoidedFoods ?? []).join(', '),
    raasChangedOn: text(given?.raasChangedOn),
    causesCheckedOn: text(potassiumSteps?.causesCheckedOn),
    additivesCutOn: text(potassiumSteps?.additivesCutOn),
    lastScreenedOn: text(given?.lastScreenedOn),
    lastFullAssessmentOn: text(given?.lastFullAssessmentOn),
  };
}

function heightFields(height: AssessmentJson['height']): Pick<TypedAssessment['fields'], 'heightUnit' | 'height' | 'inches'> {
  if (height === undefined) return { heightUnit: 'cm', height: '', inches: '' };
  if ('feet' in height) return { heightUnit: 'ft', height: text(height.feet), inches: text(height.inches) };
  return { heightUnit: height.unit, height: text(height.value), inches: '' };
}

type Treatment = AssessmentJson['treatment'];

/** The treatment where it is of this setting. */
function treatmentIn<Name extends Treatment['setting']>(given: AssessmentJson | undefined, setting: Name) {
  const isOfIt = (treatment: Treatment): treatment is Extract<Treatment, { setting: Name }> => treatment.setting === setting;
  return given !== undefined && isOfIt(given.treatment) ? given.treatment : undefined;
}

function text(value: string | number | undefined): string {
  return value === undefined ? '' : String(value);
}
