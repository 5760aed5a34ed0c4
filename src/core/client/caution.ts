import type { ClientFacts } from './clientFacts.ts';
import type { Source } from './source.ts';

/** How soon somebody must be told. */
export type Contact = 'emergency-now' | 'same-day' | 'urgent' | 'within-days';

/** A line that is shown while its condition is met. */
export interface Caution {
  readonly id: string;
  /** What to know or do, for the dietitian: never a change of a drug. */
  readonly told: string;
  /** The client's own facts that raise it. */
  readonly because: string;
  readonly source: Source;
  /** True where somebody must be told today: it cannot be missed, and who was told and when is kept. */
  readonly sameDay: boolean;
  readonly contact?: Contact;
}

/** One rule: the client's facts that meet its condition, in words; undefined when it is not met. */
export interface CautionRule {
  readonly id: string;
  readonly told: string;
  readonly source: Source;
  readonly contact?: Contact;
  readonly when: (facts: ClientFacts) => string | undefined;
}

export function cautionOf({ id, told, source, contact, when }: CautionRule, facts: ClientFacts): Caution | undefined {
  const because = when(facts);
  if (because === undefined) return undefined;
  const sameDay = contact === 'same-day' || contact === 'emergency-now' || contact === 'urgent';
  return { id, told, because, source, sameDay, ...(contact === undefined ? {} : { contact }) };
}
