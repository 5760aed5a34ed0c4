import type { ClientRecord, DecidedTarget, Prescription } from './record.ts';
import { targetItems } from './target.ts';

/** Why a draft cannot be signed, in words; empty when it can. */
export function missingToSign(targets: readonly DecidedTarget[], by: string): readonly string[] {
  const missing: string[] = [];
  if (by.trim() === '') missing.push('the name of who signs');
  for (const item of targetItems) {
    const own = targets.filter(target => target.item === item);
    if (own.length !== 1) missing.push(own.length === 0 ? `a decision on ${item}` : `one decision on ${item}, not ${own.length}`);
  }
  for (const { item, from, reason, range } of targets) {
    if (from !== 'proposal' && (reason ?? '').trim() === '') missing.push(`a reason for the ${item} target, which is not as proposed`);
    if (range !== undefined && !(range.lo >= 0 && range.hi >= range.lo))
      missing.push(`a ${item} range whose low end is not above its high end`);
  }
  return missing;
}

/** Adds a signed prescription, which takes the place of the one before it. What was signed is never changed. */
export function withSigned(record: ClientRecord, prescription: Omit<Prescription, 'supersedes'>): ClientRecord {
  const [before] = record.prescriptions;
  const signed: Prescription = { ...prescription, ...(before === undefined ? {} : { supersedes: before.id }) };
  return { ...record, prescriptions: [signed, ...record.prescriptions] };
}
