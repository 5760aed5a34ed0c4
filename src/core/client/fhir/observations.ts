import type { LabResult, Weighing } from '#core/client/assessment/assessment.ts';
import { drawnTimes, type WeightKind, weightKinds } from '#core/client/assessment/vocabularies.ts';
import { type Analyte, analyteFacts } from '#core/client/labs/analytes.ts';
import { bodyWeightLoinc, loincFor } from './loinc.ts';
import { ucumFromUnit, ucumSystem } from './ucum.ts';

/** The parts of an R4 Observation that are written here. hl7.org/fhir/R4/observation.html */
export interface Observation {
  readonly resourceType: 'Observation';
  readonly id: string;
  readonly contained?: readonly Specimen[];
  readonly status: 'final';
  readonly category: readonly Concept[];
  readonly code: Concept;
  readonly subject: Reference;
  readonly effectiveDateTime: string;
  readonly valueQuantity: Quantity;
  /** Of a result: before or after dialysis, in words; R4 has no code for it. */
  readonly method?: Concept;
  readonly note?: readonly { readonly text: string }[];
  readonly specimen?: Reference;
  readonly referenceRange?: readonly { readonly low?: Quantity; readonly high?: Quantity }[];
}

export interface Concept {
  readonly coding?: readonly { readonly system: string; readonly code: string }[];
  readonly text?: string;
}

export interface Quantity {
  readonly value: number;
  readonly unit: string;
  readonly system: string;
  readonly code: string;
}

export interface Reference {
  readonly reference?: string;
  readonly display?: string;
}

interface Specimen {
  readonly resourceType: 'Specimen';
  readonly id: string;
  readonly condition: readonly Concept[];
}

/** HL7 Version 2 table 0493, specimen condition. */
const hemolyzed: Concept = { coding: [{ system: 'http://terminology.hl7.org/CodeSystem/v2-0493', code: 'HEM' }], text: 'Hemolyzed' };

const category = (code: 'laboratory' | 'vital-signs'): Concept => ({
  coding: [{ system: 'http://terminology.hl7.org/CodeSystem/observation-category', code }],
});

/**
 * A result as an Observation, with the value and unit as entered, by the LOINC code of that unit; what has none stands as text. The time of
 * day goes into a note, since FHIR takes a time only with its zone, which is not known.
 */
export function labObservation(lab: LabResult, id: string, subject: Reference): Observation {
  const { name } = analyteFacts(lab.analyte);
  return {
    resourceType: 'Observation',
    id,
    ...(lab.hemolyzed ? { contained: [{ resourceType: 'Specimen', id: 'sample', condition: [hemolyzed] }] } : {}),
    status: 'final',
    category: [category('laboratory')],
    code: { ...loincConcept(lab.analyte, lab.unit), text: name },
    subject,
    effectiveDateTime: lab.takenOn,
    valueQuantity: quantity(lab.value, lab.unit),
    ...(lab.takenAt === undefined ? {} : { note: [{ text: `Taken at ${lab.takenAt}.` }] }),
    ...(lab.hemolyzed ? { specimen: { reference: '#sample' } } : {}),
    ...(lab.drawn === undefined ? {} : { method: { text: `drawn ${drawnTimes.words(lab.drawn)}` } }),
    ...(lab.lowerNormal === undefined && lab.upperNormal === undefined
      ? {}
      : {
          referenceRange: [
            {
              ...(lab.lowerNormal === undefined ? {} : { low: quantity(lab.lowerNormal, lab.unit) }),
              ...(lab.upperNormal === undefined ? {} : { high: quantity(lab.upperNormal, lab.unit) }),
            },
          ],
        }),
  };
}

const measured: readonly WeightKind[] = ['actual', 'before-dialysis', 'after-dialysis', 'after-drain'];

/** A weight in the unit it was entered in. Only a measured one is a vital sign with a code: dry, goal or usual weight is none. */
export function weightObservation({ weight, kind, on }: Weighing, id: string, subject: Reference): Observation {
  const isMeasured = measured.includes(kind);
  return {
    resourceType: 'Observation',
    id,
    status: 'final',
    category: isMeasured ? [category('vital-signs')] : [{ text: 'nutrition assessment' }],
    code: {
      ...(isMeasured ? { coding: [{ system: 'http://loinc.org', code: bodyWeightLoinc }] } : {}),
      text: `body weight, ${weightKinds.words(kind)}`,
    },
    subject,
    effectiveDateTime: on,
    valueQuantity: quantity(weight.value, weight.unit),
  };
}

function loincConcept(analyte: Analyte, unit: string): Concept {
  const found = loincFor(analyte, unit);
  return found === undefined ? {} : { coding: [{ system: 'http://loinc.org', code: found.code }] };
}

export function quantity(value: number, unit: string): Quantity {
  return { value, unit, system: ucumSystem, code: ucumFromUnit(unit) };
}
