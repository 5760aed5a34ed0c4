import { z } from 'zod';
import { missingParts } from '#core/client/formulas/amputation.ts';
import { heightUnits } from '#core/client/formulas/bodyUnits.ts';
import { sexes } from '#core/client/formulas/egfr.ts';
import { gfrCategories } from '#core/client/formulas/gfrCategory.ts';
import type { AsJson } from '#core/json/asJson.ts';
import type { DeepReadonly } from '#core/json/deepReadonly.ts';
import { addedFoodSchema, takenBinderSchema, takenPotassiumBinderSchema } from './amountsTaken.ts';
import { labResultSchema } from './labResult.ts';
import { treatmentSchema } from './treatment.ts';
import { typedDay } from './typedDay.ts';
import { appetites, conditions, lossCauses, medicines, supplements, symptoms } from './vocabularies.ts';
import { weighingSchema } from './weighing.ts';

export type { LabResult } from './labResult.ts';
export type { WeightKind } from './vocabularies.ts';
export type { Weighing } from './weighing.ts';

const number = z.number();
const words = z.string().max(500);
const lost = { percent3Months: number.exactOptional(), percent6Months: number.exactOptional() };

/** What comes in between two assessments, too. */
const lists = { weighings: z.array(weighingSchema).max(500), labs: z.array(labResultSchema).max(2_000) };

/** Results and weights that came in since an assessment, in the same shape as in one. */
export const resultsSchema = z.object(lists);
export type Results = DeepReadonly<z.output<typeof resultsSchema>>;

/** A dated set of facts about a client. What is not known is left out, never filled in. */
export const assessmentSchema = z.object({
  on: typedDay,
  sex: z.enum(sexes),
  age: z.union([z.object({ bornOn: typedDay }), z.object({ years: number })], {
    error: 'one of { "bornOn": "1960-01-31" }, { "years": 64 }',
  }),
  treatment: treatmentSchema,
  diabetes: z.boolean(),
  acuteKidneyInjury: z.boolean().exactOptional(),
  pregnant: z.boolean().exactOptional(),
  breastfeeding: z.boolean().exactOptional(),
  /** The stage that the kidney team has set, for CKD not on dialysis and transplants. */
  stage: z.object({ value: z.enum(gfrCategories), on: typedDay }).exactOptional(),
  height: z
    .union([z.object({ value: number, unit: z.enum(heightUnits) }), z.object({ feet: number, inches: number })], {
      error: 'one of { "value": 165, "unit": "cm" }, { "feet": 5, "inches": 5 }',
    })
    .exactOptional(),
  weighings: lists.weighings,
  missingParts: z.array(z.enum(missingParts.keys)).exactOptional(),
  urineMlPerDay: z.object({ value: number, on: typedDay }).exactOptional(),
  labs: lists.labs,
  conditions: z.array(z.enum(conditions.keys)),
  medicines: z.array(z.enum(medicines.keys)),
  /** When a RAAS inhibitor was begun or changed. */
  raasChangedOn: typedDay.exactOptional(),
  supplements: z.array(z.enum(supplements.keys)),
  symptoms: z.array(z.enum(symptoms.keys)),
  allergies: z.array(words).max(50),
  avoidedFoods: z.array(words).max(50),
  appetite: z.enum(appetites.keys).exactOptional(),
  /**
   * Loss of weight in percent, 0 to 50; a gain is left out. `cause` says whether it was wanted or fluid, typed or computed from recorded weights:
   * without it that is asked.
   */
  weightLoss: z.object({ ...lost, cause: z.enum(lossCauses.keys).exactOptional() }).exactOptional(),
  muscleLoss: z.object(lost).exactOptional(),
  /** What is eaten, as told or from urine: a day's energy and protein, and for how many days next to nothing. */
  intake: z
    .object({
      energyKcal: number.exactOptional(),
      proteinG: number.exactOptional(),
      littleForDays: number.exactOptional(),
      /** Whether what was told has `addedFoods` in it already; asked while it is left out. */
      holdsAdded: z.boolean().exactOptional(),
    })
    .exactOptional(),
  addedFoods: z.array(addedFoodSchema).max(30).exactOptional(),
  binders: z.array(takenBinderSchema).max(20).exactOptional(),
  potassiumBinders: z.array(takenPotassiumBinderSchema).max(10).exactOptional(),
  foodAccess: words.exactOptional(),
  goals: z.array(words).max(50),
  /** High potassium: when the other causes were gone through, and when additives, salt substitutes, juices and portions were. */
  potassiumSteps: z.object({ causesCheckedOn: typedDay.exactOptional(), additivesCutOn: typedDay.exactOptional() }).exactOptional(),
  lastScreenedOn: typedDay.exactOptional(),
  lastFullAssessmentOn: typedDay.exactOptional(),
});

export type Assessment = DeepReadonly<z.output<typeof assessmentSchema>>;

/** As it is typed, sent and kept. */
export type AssessmentJson = AsJson<z.input<typeof assessmentSchema>>;
export type ResultsJson = AsJson<z.input<typeof resultsSchema>>;
