import { z } from 'zod';
import { missingPartPercent } from '#core/client/formulas/amputation.ts';
import { analyteKeys } from '#core/client/labs/analytes.ts';
import type { Reading } from '#core/errors.ts';
import { checkJson } from '#core/json/checkJson.ts';
import type { Assessment, Condition, MedicineClass, SupplementClass, Symptom, WeightKind } from './assessment.ts';

const number = z.number();
/** Whether a day exists and is not after today is for `checkAssessment`, which says so in words. */
const day = z.string().max(10, 'a day, yyyy-mm-dd');
const words = z.string().max(500);
const gfrCategory = z.enum(['G1', 'G2', 'G3a', 'G3b', 'G4', 'G5']);
const oneOf = <Key extends string>(keys: Readonly<Record<Key, true>>) => z.enum(Object.keys(keys) as [Key, ...Key[]]);

const weightKind = oneOf<WeightKind>({
  actual: true,
  dry: true,
  'estimated-dry': true,
  'before-dialysis': true,
  'after-dialysis': true,
  'after-drain': true,
  usual: true,
  'before-admission': true,
  goal: true,
  standard: true,
});
const condition = oneOf<Condition>({
  edema: true,
  ascites: true,
  'nephrotic-syndrome': true,
  overload: true,
  hypertension: true,
  hypotension: true,
  'heart-failure': true,
  'salt-losing-kidney-disease': true,
  ileostomy: true,
  'calcium-oxalate-stones': true,
  frail: true,
  sarcopenia: true,
  'acute-illness': true,
  'critically-ill': true,
  'alcohol-misuse': true,
  'metabolically-unstable': true,
  peritonitis: true,
  'in-hospital': true,
  'new-feeding': true,
  'fasting-for-faith': true,
  'low-carbohydrate-diet': true,
});
const medicine = oneOf<MedicineClass>({
  'raas-inhibitor': true,
  'mineralocorticoid-antagonist': true,
  'potassium-sparing-diuretic': true,
  tacrolimus: true,
  ciclosporin: true,
  'sirolimus-or-everolimus': true,
  'other-immunosuppressant': true,
  'high-dose-steroid': true,
  'vitamin-k-antagonist': true,
  digoxin: true,
  trimethoprim: true,
  heparin: true,
  nsaid: true,
  'non-selective-beta-blocker': true,
  'phosphate-binder': true,
  'active-vitamin-d': true,
  calcimimetic: true,
  ketoanalogs: true,
  'sglt2-inhibitor': true,
  'insulin-or-sulfonylurea': true,
  insulin: true,
  diuretic: true,
  chemotherapy: true,
  'potassium-salt': true,
});
const supplement = oneOf<SupplementClass>({
  herbal: true,
  'salt-substitute': true,
  'high-dose-vitamin-c': true,
  'vitamin-a': true,
  'vitamin-k': true,
  'magnesium-or-aluminum-antacid': true,
  creatine: true,
  'sports-or-slimming-product': true,
  'protein-powder': true,
  calcium: true,
});
const symptom = oneOf<Symptom>({
  palpitations: true,
  weakness: true,
  'ecg-change': true,
  swelling: true,
  breathlessness: true,
  'missed-or-shortened-session': true,
  ketones: true,
  'cloudy-drain': true,
  'abdominal-pain': true,
  fever: true,
  vomiting: true,
  diarrhea: true,
  'missed-doses': true,
  constipation: true,
});

const treatment = z.discriminatedUnion('setting', [
  z.object({ setting: z.literal('ckd-not-on-dialysis'), conservative: z.literal(true).exactOptional() }),
  z.object({
    setting: z.literal('hemodialysis'),
    place: z.enum(['in-center', 'home']),
    startedOn: day.exactOptional(),
    sessionsPerWeek: number.exactOptional(),
    sessionHours: number.exactOptional(),
    ultrafiltrationLimitMlPerKgH: number.exactOptional(),
  }),
  z.object({
    setting: z.literal('peritoneal-dialysis'),
    method: z.enum(['capd', 'apd']),
    startedOn: day.exactOptional(),
    bags: z
      .array(z.object({ liters: number, percent: number, labeledAs: z.enum(['dextrose', 'glucose']) }))
      .max(20)
      .exactOptional(),
    icodextrin: z.literal(true).exactOptional(),
    absorbedShare: number.exactOptional(),
  }),
  z.object({ setting: z.literal('transplant'), transplantedOn: day }),
]);

const loss = z.object({ percent3Months: number.exactOptional(), percent6Months: number.exactOptional() });

const weighings = z
  .array(
    z.object({
      weight: z.object({ value: number, unit: z.enum(['kg', 'lb']) }),
      kind: weightKind,
      on: day,
      unitConfirmed: z.literal(true).exactOptional(),
    }),
  )
  .max(500);

const labs = z
  .array(
    z.object({
      analyte: z.enum(analyteKeys as unknown as [(typeof analyteKeys)[number], ...(typeof analyteKeys)[number][]]),
      value: number,
      unit: z.string().min(1, 'the unit of the result').max(40),
      takenOn: day,
      takenAt: z.string().max(5).exactOptional(),
      lowerNormal: number.exactOptional(),
      upperNormal: number.exactOptional(),
      drawn: z.enum(['before-dialysis', 'after-dialysis']).exactOptional(),
      confirmed: z.literal(true).exactOptional(),
      hemolyzed: z.literal(true).exactOptional(),
    }),
  )
  .max(2_000);

const assessmentSchema = z.object({
  on: day,
  sex: z.enum(['female', 'male']),
  age: z.union([z.object({ bornOn: day }), z.object({ years: number })], { error: 'one of { "bornOn": "1960-01-31" }, { "years": 64 }' }),
  treatment,
  diabetes: z.boolean(),
  acuteKidneyInjury: z.boolean().exactOptional(),
  pregnant: z.boolean().exactOptional(),
  breastfeeding: z.boolean().exactOptional(),
  stage: z.object({ value: gfrCategory, on: day }).exactOptional(),
  height: z
    .union([z.object({ value: number, unit: z.enum(['cm', 'in', 'm']) }), z.object({ feet: number, inches: number })], {
      error: 'one of { "value": 165, "unit": "cm" }, { "feet": 5, "inches": 5 }',
    })
    .exactOptional(),
  weighings,
  missingParts: z.array(oneOf(missingPartsTrue())).exactOptional(),
  urineMlPerDay: z.object({ value: number, on: day }).exactOptional(),
  labs,
  conditions: z.array(condition),
  medicines: z.array(medicine),
  raasChangedOn: day.exactOptional(),
  supplements: z.array(supplement),
  symptoms: z.array(symptom),
  allergies: z.array(words).max(50),
  avoidedFoods: z.array(words).max(50),
  appetite: z.enum(['good', 'fair', 'poor']).exactOptional(),
  weightLoss: loss.extend({ cause: z.enum(['unintended', 'wanted', 'fluid']).exactOptional() }).exactOptional(),
  muscleLoss: loss.exactOptional(),
  intake: z
    .object({ energyKcal: number.exactOptional(), proteinG: number.exactOptional(), littleForDays: number.exactOptional() })
    .exactOptional(),
  foodAccess: words.exactOptional(),
  goals: z.array(words).max(50),
  potassiumSteps: z.object({ causesCheckedOn: day.exactOptional(), additivesCutOn: day.exactOptional() }).exactOptional(),
  lastScreenedOn: day.exactOptional(),
  lastFullAssessmentOn: day.exactOptional(),
});

/**
 * Reads an assessment as docs/formats.md describes it. Without a value when it is not valid; the issues name each place. A key
 * that nobody reads is refused as well: "pregnent" left alone would be a pregnancy that nobody sees. What
 * a value can be (a potassium of 55, a day that does not exist) is for `checkAssessment`, which asks or refuses in words.
 */
export function assessmentFromJson(value: unknown): Reading<Assessment | undefined> {
  const checked = checkJson(assessmentSchema, value);
  if (!checked.ok || checked.issues.length > 0) return { value: undefined, issues: checked.issues };
  return { value: checked.value, issues: [] };
}

/** Results and weights that came in since an assessment, in the same shape as in one. Refused whole, with the place of each fault. */
export function resultsFromJson(value: unknown): Reading<Pick<Assessment, 'labs' | 'weighings'> | undefined> {
  const checked = checkJson(z.object({ labs, weighings }), value);
  if (!checked.ok || checked.issues.length > 0) return { value: undefined, issues: checked.issues };
  return { value: checked.value, issues: [] };
}

function missingPartsTrue(): Readonly<Record<keyof typeof missingPartPercent, true>> {
  return Object.fromEntries(Object.keys(missingPartPercent).map(key => [key, true])) as Record<keyof typeof missingPartPercent, true>;
}
