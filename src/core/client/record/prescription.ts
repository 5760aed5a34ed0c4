import { z } from 'zod';
import { weightBasisIds } from '#core/client/states/weightBasis.ts';
import type { Reading } from '#core/errors.ts';
import type { DeepReadonly } from '#core/json/deepReadonly.ts';
import { readWhole } from '#core/json/readWhole.ts';
import { type DecidedTarget, decidedTargetFromJson, decidedTargetSchema, decidedTargetToJson } from './decidedTarget.ts';

const words = z.string();

/** A signed prescription as it is kept. */
export const prescriptionSchema = z.object({
  id: words,
  assessmentId: words,
  /** The weight that the dietitian had picked when she signed; the proposal's own when missing. */
  weightBasis: z.enum(weightBasisIds).exactOptional(),
  targets: z.array(decidedTargetSchema),
  signed: z.object({ by: words, credentials: words, at: words }),
  /** The prescription that this one takes the place of. */
  supersedes: words.exactOptional(),
});
export type PrescriptionJson = DeepReadonly<z.input<typeof prescriptionSchema>>;

export type Prescription = Omit<PrescriptionJson, 'targets'> & { readonly targets: readonly DecidedTarget[] };

/** A prescription by itself, or the places of what is wrong with it. @internal */
export function prescriptionFromJson(json: unknown): Reading<Prescription | undefined> {
  const { value, issues } = readWhole(prescriptionSchema, json);
  return { value: value && prescriptionOf(value), issues };
}

export function prescriptionToJson(prescription: Prescription): PrescriptionJson {
  return { ...prescription, targets: prescription.targets.map(decidedTargetToJson) };
}

/** With its ranges as intervals. */
export function prescriptionOf(json: PrescriptionJson): Prescription {
  return { ...json, targets: json.targets.map(decidedTargetFromJson) };
}
