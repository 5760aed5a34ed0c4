import { proposePrescription } from '#core/client/prescription/proposePrescription.ts';
import { type ClientRecord, type ContactMade, currentAssessment } from '#core/client/record/record.ts';
import type { CareRules } from '#core/client/rules/careRules.ts';
import type { Day } from '#core/quantity/calendarDay.ts';

/** Notes who was told, with the value that it was about: the value may be lifted later, the contact stays on record. */
export function withContact(record: ClientRecord, contact: ContactMade, today: Day, rules: CareRules): ClientRecord {
  const current = currentAssessment(record);
  const caution =
    current && proposePrescription(current.assessment, today, undefined, rules).cautions.find(({ id }) => id === contact.cautionId);
  return { ...record, contacts: [{ ...contact, ...(caution === undefined ? {} : { about: caution.because }) }, ...record.contacts] };
}
