import type { Assessment } from '#core/client/assessment/assessment.ts';
import { standingCaution } from '#core/client/prescription/proposePrescription.ts';
import { decidedWords, targetNames } from '#core/client/prescription/targetWords.ts';
import type { DecidedTarget, Prescription } from '#core/client/record/record.ts';
import { type Concept, type Quantity, quantity, type Reference } from './observations.ts';

/** The parts of an R4 NutritionOrder that are written here. hl7.org/fhir/R4/nutritionorder.html */
export interface NutritionOrder {
  readonly resourceType: 'NutritionOrder';
  readonly id: string;
  readonly status: 'active';
  readonly intent: 'plan';
  readonly patient: Reference;
  readonly dateTime: string;
  readonly orderer: Reference;
  readonly excludeFoodModifier?: readonly Concept[];
  readonly oralDiet: {
    readonly nutrient?: readonly { readonly modifier: Concept; readonly amount: Quantity }[];
    readonly instruction: string;
  };
  readonly note: readonly { readonly text: string }[];
}

/**
 * A signed prescription as a NutritionOrder. Its `amount` is one figure without "less than", so only a target of one figure stands there;
 * every range and bound stands in the instruction, in words. Nutrients and foods stand as text: their usual code system takes a
 * licence. A plan and no order: what a dietitian may order is for the clinic to say.
 */
export function nutritionOrder(prescription: Prescription, assessment: Assessment, patient: Reference): NutritionOrder {
  const { targets, signed } = prescription;
  const named = (foods: readonly string[]) => foods.filter(food => food.trim() !== '');
  const excluded = [...named(assessment.allergies).map(food => `${food} (allergy)`), ...named(assessment.avoidedFoods)];
  const nutrient = targets.flatMap(target => {
    const amount = singleAmount(target);
    return amount === undefined ? [] : [{ modifier: { text: targetNames[target.item] }, amount }];
  });
  return {
    resourceType: 'NutritionOrder',
    id: prescription.id,
    status: 'active',
    intent: 'plan',
    patient,
    dateTime: fhirDateTime(signed.at),
    orderer: { display: [signed.by, signed.credentials].filter(Boolean).join(', ') },
    ...(excluded.length === 0 ? {} : { excludeFoodModifier: excluded.map(text => ({ text })) }),
    oralDiet: {
      ...(nutrient.length === 0 ? {} : { nutrient }),
      instruction: `Targets for a day. ${targets.map(target => `${targetNames[target.item]}: ${decidedWords(target)}.`).join(' ')}`,
    },
    note: [{ text: standingCaution }],
  };
}

function singleAmount({ item, unit, range, limit }: DecidedTarget): Quantity | undefined {
  // Energy is no nutrient of the resource, and additives are no amount.
  if (item === 'energy' || unit === 'named on the label' || unit === 'kcal') return undefined;
  const isOne = range !== undefined && range.lo === range.hi && (limit === undefined || limit === 'within');
  return isOne ? quantity(range.lo, unit) : undefined;
}

/** A FHIR dateTime has a zone when it has a time; without one only the day is told. */
function fhirDateTime(at: string): string {
  return /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}(\.\d+)?(Z|[+-]\d{2}:\d{2})$/u.test(at) ? at : at.slice(0, 10);
}
