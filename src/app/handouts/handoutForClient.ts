import { whatIsForbidden } from '#app/clients/whatIsForbidden.ts';
import { aimStates } from '#core/client/aims/aimStates.ts';
import { checkAssessment } from '#core/client/assessment/checkAssessment.ts';
import { type ClientRecord, currentAssessment } from '#core/client/record/record.ts';
import type { CareRules } from '#core/client/rules/careRules.ts';
import { weightGainToCall } from '#core/client/states/weightGain.ts';
import { Fault } from '#core/errors.ts';
import type { ClientHandoutDraft, HandoutDraft, HandoutInput } from '#core/handout/handout.ts';
import type { Plate, PlateFood } from '#core/plate/plate.ts';
import { isDay } from '#core/quantity/calendarDay.ts';
import type { ShelfFood } from '../shelf.ts';
import { surveysForHandout } from './surveysForHandout.ts';

export interface ClientHandout {
  readonly record: ClientRecord;
  readonly draft: ClientHandoutDraft;
  /** The foods of the shelf; each is in the category of its row. */
  readonly foods: readonly ShelfFood[];
  /** By the id that a category of the draft names. */
  readonly plates: ReadonlyMap<string, Plate>;
  /** Minerals estimated for the shelf may be used, at their safe end. */
  readonly useEstimates: boolean;
  /** What the clinic has set. */
  readonly rules: CareRules;
}

/**
 * A handout's input from what is kept of a client: the prescription that stands, the setting of the assessment it was signed
 * for, the foods to avoid, the meal pattern. The client's name is not taken: a reader's name stands there if it was typed.
 *
 * @throws Fault handout-not-signed when no prescription is signed; plate-not-found; handout-not-valid.
 */
export function handoutForClient({ record, draft, foods, plates, useEstimates, rules }: ClientHandout): HandoutInput {
  const [prescription] = record.prescriptions;
  const assessment = record.assessments.find(({ id }) => id === prescription?.assessmentId)?.assessment;
  if (prescription === undefined || assessment === undefined) {
    throw new Fault('handout-not-signed', 'The numbers of a handout come from a signed prescription, and this client has none.');
  }
  const { by, credentials, at } = prescription.signed;
  const current = currentAssessment(record)?.assessment ?? assessment;
  const weightGain = weightGainToCall(checkAssessment(current, draft.writtenOn, rules).facts);
  const forbidden = whatIsForbidden(record, draft.writtenOn);
  const on = at.slice(0, 10);
  const whole: HandoutDraft = {
    ...draft,
    setting: assessment.treatment.setting,
    meals: record.mealPattern ?? [],
    avoidedFoods: forbidden.avoidedFoods,
    ...(forbidden.isSuppressed ? { immuneSuppressed: true } : {}),
    ...(weightGain === undefined ? {} : { weightGain }),
    prescription: {
      targets: prescription.targets.map(({ item, unit, range, limit }) => ({
        item,
        unit,
        ...(range === undefined ? {} : { range }),
        ...(limit === undefined ? {} : { limit }),
      })),
      signed: { by, ...(credentials.trim() === '' ? {} : { credentials }), on: isDay(on) ? on : at },
    },
  };
  const categories = draft.categories.map(category => {
    const plate = plates.get(category.plateId);
    if (plate === undefined) throw new Fault('plate-not-found', `There is no plate "${category.plateId}".`);
    return { category, plate, foods: foodsIn(foods, category.category) };
  });
  return surveysForHandout({ draft: whole, categories, useEstimates, states: aimStates(record, draft.writtenOn, rules) });
}

function foodsIn(foods: readonly ShelfFood[], category: string): readonly PlateFood[] {
  const wanted = category.trim().toLowerCase();
  return foods.filter(({ row }) => row.category?.trim().toLowerCase() === wanted).map(({ food }) => food);
}
