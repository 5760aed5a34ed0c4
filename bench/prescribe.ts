import { demoClients } from '#app/clients/demoClients.ts';
import { proposePrescription } from '#core/client/prescription/proposePrescription.ts';
import { figure } from './measure.ts';

/** A whole prescription of each demo client: the first call of the process, and warm. */
export function benchPrescribe(): void {
  const today = '2026-06-15';
  const assessments = demoClients(today).flatMap(client => client.assessments.map(({ assessment }) => assessment));
  const first = performance.now();
  proposePrescription(assessments[0]!, today);
  figure('a prescription, first call, milliseconds', performance.now() - first, 'under 20');
  const start = performance.now();
  const rounds = 200;
  for (let round = 0; round < rounds; round++) for (const assessment of assessments) proposePrescription(assessment, today);
  figure('a prescription, warm, milliseconds', (performance.now() - start) / rounds / assessments.length, 'under 20');
}
