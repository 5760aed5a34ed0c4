import type { ClientFacts } from '#core/client/assessment/clientFacts.ts';
import { careFigure } from '#core/client/rules/careRules.ts';
import type { Source } from '#core/client/rules/source.ts';
import { type Day, daysBetween } from '#core/quantity/calendarDay.ts';

/** How soon somebody must be told. */
export const contactKinds = ['emergency-now', 'same-day', 'urgent', 'within-days'] as const;
export type Contact = (typeof contactKinds)[number];

/** A line that is shown while its condition is met. */
export interface Caution {
  readonly id: string;
  /** What to know or do, for the dietitian: never a change of a drug. */
  readonly told: string;
  /** The client's own facts that raise it. */
  readonly because: string;
  readonly source: Source;
  /** Raised by this client's own values or record; the others hold for everybody in the setting and can be folded away. */
  readonly isOwn: boolean;
  /** True where somebody must be told today: it cannot be missed, and who was told and when is kept. */
  readonly sameDay: boolean;
  readonly contact?: Contact;
  /** The day of the value or the assessment that raises it: who was told before that was told of another one. */
  readonly since?: Day;
}

/** What meets a condition, and of which day it is; without a day it stands for as long as the assessment. */
export interface Met {
  readonly because: string;
  readonly on: Day;
  /** A glucose is of now for a shorter time. */
  readonly isGlucose?: true;
  /** Put in the place of the rule's own words: a sample that may be falsely high. */
  readonly told?: string;
}

/** One rule: the client's facts that meet its condition, in words; undefined when it is not met. */
export interface CautionRule {
  readonly id: string;
  readonly told: string;
  readonly source: Source;
  readonly contact?: Contact;
  readonly isOwn?: true;
  readonly when: (facts: ClientFacts) => string | Met | undefined;
}

export const actedOn = 'Was this acted on? A new result is needed.';

/**
 * A rule's caution as of today. One that needs contact is told as of now while its value is young, later it is asked whether it was
 * acted on, then it is history and silent (care rules 2, own decision, set by the clinic).
 */
export function cautionOf(rule: CautionRule, facts: ClientFacts): Caution | undefined {
  const { id, source, contact } = rule;
  const isOwn = rule.isOwn === true || contact !== undefined;
  const met = rule.when(facts);
  if (met === undefined) return undefined;
  if (typeof met === 'string' || contact === undefined) {
    const because = typeof met === 'string' ? met : met.because;
    const told = typeof met === 'string' ? rule.told : (met.told ?? rule.told);
    return { id, told, because, source, isOwn, sameDay: isSameDay(contact), ...(contact === undefined ? {} : { contact }) };
  }
  const days = daysBetween(met.on, facts.today);
  if (days > careFigure(facts.rules, 'alarm.asked')) return undefined;
  const isNow = days <= careFigure(facts.rules, met.isGlucose ? 'alarm.glucose-now' : 'alarm.now');
  const shown = { id, because: met.because, source, isOwn, since: met.on };
  if (isNow) return { ...shown, told: met.told ?? rule.told, sameDay: isSameDay(contact), contact };
  return { ...shown, told: actedOn, sameDay: false, contact: 'within-days' };
}

function isSameDay(contact: Contact | undefined): boolean {
  return contact === 'same-day' || contact === 'emergency-now' || contact === 'urgent';
}
