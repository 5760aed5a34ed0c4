import { allergiesOf, type ClientRecord, currentAssessment, foodsToAvoid, standingOf } from '#core/client/record/record.ts';
import { type NutritionOrder, nutritionOrder } from './nutritionOrder.ts';
import { labObservation, type Observation, weightObservation } from './observations.ts';

/** hl7.org/fhir/R4/bundle.html */
export interface CareBundle {
  readonly resourceType: 'Bundle';
  readonly type: 'collection';
  readonly entry: readonly { readonly fullUrl: string; readonly resource: NutritionOrder | Observation }[];
}

/** An address that answers nowhere (RFC 2606): entries need one, and this program has no server that could be asked. */
const base = 'https://platewright.invalid/fhir';

/** What R4 takes as the id of a resource. */
const fhirId = /^[A-Za-z0-9\-.]{1,64}$/u;

/**
 * The prescription that stands and the results and weights of its assessment, as one collection Bundle; undefined while nothing is signed.
 * The person is an opaque id alone: no name, no day of birth. The same record always gives the same bundle.
 *
 * @throws RangeError when an id is none that FHIR takes: a programming mistake.
 */
export function careBundle(record: ClientRecord): CareBundle | undefined {
  const [prescription] = record.prescriptions;
  const kept = prescription && standingOf(record, prescription.assessmentId);
  if (prescription === undefined || kept === undefined) return undefined;
  for (const id of [record.id, prescription.id, kept.id]) if (!fhirId.test(id)) throw new RangeError(`no FHIR id: ${id}`);
  const { assessment } = kept;
  // Results that were added since belong to it while no newer assessment stands.
  const current = currentAssessment(record);
  const { labs, weighings } = current?.id === kept.id ? current.assessment : assessment;
  // Of the newest assessment and of the one that was signed for: what forbids a food in either forbids it.
  const allergies = allergiesOf(record);
  const person = { reference: `Patient/${record.id}` };
  const resources = [
    nutritionOrder(
      prescription,
      { ...assessment, allergies, avoidedFoods: foodsToAvoid(record).filter(one => !allergies.includes(one)) },
      person,
    ),
    ...labs.map((lab, at) => labObservation(lab, resourceId(kept.id, `lab-${at + 1}`), person)),
    ...weighings.map((weighing, at) => weightObservation(weighing, resourceId(kept.id, `weight-${at + 1}`), person)),
  ];
  return {
    resourceType: 'Bundle',
    type: 'collection',
    entry: resources.map(resource => ({ fullUrl: `${base}/${resource.resourceType}/${resource.id}`, resource })),
  };
}

/** At most 64 characters, with the part that tells them apart kept whole. */
function resourceId(assessmentId: string, part: string): string {
  return `${assessmentId.slice(0, 63 - part.length)}-${part}`;
}
