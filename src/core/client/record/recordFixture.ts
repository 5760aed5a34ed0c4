import type { Assessment } from '#core/client/assessment/assessment.ts';
import { clientWith, lab, today, weighing } from '#core/client/assessment/clientFixture.ts';
import { proposePrescription } from '#core/client/prescription/proposePrescription.ts';
import { withSigned } from '#core/client/prescription/signPrescription.ts';
import { targetItems, targetUnits } from '#core/client/prescription/target.ts';
import type { ClientRecord, DecidedTarget } from './record.ts';

/** An invented client on hemodialysis with high potassium and phosphate, seen twice. */
export const hemodialysisClient: Assessment = clientWith({
  treatment: { setting: 'hemodialysis', place: 'in-center', sessionsPerWeek: 3, sessionHours: 4 },
  weighings: [weighing('dry', 72), weighing('before-dialysis', 75.6, '2026-06-12')],
  urineMlPerDay: { value: 300, on: '2026-06-01' },
  labs: [
    lab('potassium', 5.8, 'mmol/L'),
    lab('phosphate', 2.1, 'mmol/L', '2026-06-05', { upperNormal: 1.45 }),
    lab('albumin', 3.9, 'g/dL'),
    lab('potassium', 6.1, 'mmol/L', '2026-05-20', { takenAt: '07:30', hemolyzed: true }),
    lab('ureaReduction', 68, '%'),
  ],
  medicines: ['phosphate-binder'],
  allergies: ['sesame'],
  avoidedFoods: ['pork'],
  appetite: 'good',
  goals: ['eat with the family'],
});

/** The record of a client whose newest assessment has a signed prescription, taken over as proposed but for what `more` decides. */
export function recordOf(assessment: Assessment, more: readonly DecidedTarget[] = []): ClientRecord {
  const earlier = {
    ...assessment,
    on: '2026-03-02',
    labs: [lab('potassium', 5.1, 'mmol/L', '2026-03-01')],
    weighings: [weighing('dry', 73, '2026-03-01')],
  };
  const record: ClientRecord = {
    id: '7c1f0c2e-0f3b-4a55-9d0e-6d1b8a2f4e10',
    version: 3,
    name: 'A.B.',
    isDemo: false,
    assessments: [
      { id: 'assessment-2', assessment },
      { id: 'assessment-1', assessment: earlier },
    ],
    prescriptions: [],
    contacts: [],
  };
  const proposal = proposePrescription(assessment, today);
  if (proposal.kind === 'barred') return record;
  const targets = targetItems.map((item): DecidedTarget => {
    const own = more.find(one => one.item === item);
    const target = proposal.targets[item];
    if (own !== undefined) return own;
    if (target.kind === 'proposed') {
      // Fluid is signed as one figure: here the most of what is proposed.
      const figure = item === 'fluid' ? { range: { lo: 0, hi: target.range.hi }, limit: 'at-most' as const } : target;
      return { item, unit: target.unit, kind: 'bounded', range: figure.range, limit: figure.limit, from: 'proposal', says: target.says };
    }
    return {
      item,
      unit: targetUnits[item],
      kind: target.kind,
      from: 'proposal',
      says: target.kind === 'withheld' ? target.why : target.reasons.join(' '),
    };
  });
  const signed = { by: 'Ada Example', credentials: 'RDN', at: '2026-06-15T09:30:00Z' };
  return withSigned(record, { id: 'prescription-1', assessmentId: 'assessment-2', targets, signed });
}
