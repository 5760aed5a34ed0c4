import type { EnteredWeight } from '#core/client/formulas/bodyUnits.ts';
import type { GfrCategory } from '#core/client/formulas/gfrCategory.ts';
import { type Analyte, analyteFacts } from '#core/client/labs/analytes.ts';
import type { CareRules } from '#core/client/rules/careRules.ts';
import { type Day, daysBetween } from '#core/quantity/calendarDay.ts';
import { roundHalfUp } from '#core/quantity/rounding.ts';
import type { Setting } from '../setting.ts';
import type { Assessment } from './assessment.ts';
import { type Condition, type DrawnTime, drawnTimes, type MedicineClass, type WeightKind } from './vocabularies.ts';

/** A laboratory result in its canonical unit, beside what was entered. */
export interface Lab {
  readonly analyte: Analyte;
  readonly value: number;
  readonly takenOn: Day;
  readonly takenAt?: string;
  /** As it was typed or sent: what is shown. */
  readonly entered: { readonly value: number; readonly unit: string };
  readonly lowerNormal?: number;
  readonly upperNormal?: number;
  readonly drawn?: DrawnTime;
  readonly hemolyzed: boolean;
  /** Its value or unit is asked about: one of the readings that it may have. */
  readonly inQuestion?: true;
}

export interface Weight {
  readonly kg: number;
  /** As it was typed: what is shown. */
  readonly entered: EnteredWeight;
  readonly kind: WeightKind;
  readonly on: Day;
}

/** An assessment that was checked: one unit for each thing, only possible values, newest results first, in an order that no file decides. */
export interface ClientFacts {
  readonly today: Day;
  readonly assessment: Assessment;
  readonly setting: Setting;
  readonly ageYears: number;
  readonly heightCm?: number;
  readonly weights: readonly Weight[];
  readonly labs: readonly Lab[];
  /** What a result in question would be in the unit typed or in the likely one: for alarms alone. */
  readonly questioned: readonly Lab[];
  readonly rules: CareRules;
}

export function has(facts: ClientFacts, ...conditions: readonly Condition[]): boolean {
  return conditions.some(condition => facts.assessment.conditions.includes(condition));
}

export function takes(facts: ClientFacts, ...medicines: readonly MedicineClass[]): boolean {
  return medicines.some(medicine => facts.assessment.medicines.includes(medicine));
}

export function ageWords(day: Day, today: Day): string {
  const days = daysBetween(day, today);
  return `on ${day}, ${days === 0 ? 'today' : days === 1 ? '1 day old' : `${days} days old`}`;
}

/** As it was entered: "potassium 5.8 mEq/L (on 2026-05-02, 12 days old, hemolyzed)". */
export function labWords(lab: Lab, today: Day): string {
  const { value, unit } = lab.entered;
  const marks = [
    ageWords(lab.takenOn, today),
    ...(lab.drawn === undefined ? [] : [drawnTimes.words(lab.drawn)]),
    ...(lab.hemolyzed ? ['hemolyzed'] : []),
    ...(lab.inQuestion ? ['in question'] : []),
  ];
  return `${analyteFacts(lab.analyte).name} ${Number(value.toPrecision(4))}${unit === '{ratio}' ? '' : ` ${unit}`} (${marks.join(', ')})`;
}

/** As it was entered, with kg beside pounds: "108 lb (49.0 kg)". */
export function weightWords({ kg, entered: { value, unit } }: Pick<Weight, 'kg' | 'entered'>): string {
  return unit === 'kg' ? `${roundHalfUp(value, 1)} kg` : `${roundHalfUp(value, 1)} lb (${roundHalfUp(kg, 1)} kg)`;
}

/** Transplanted at most 4 weeks ago, at most 8 weeks ago, or longer. */
export function transplantAge(facts: ClientFacts): 'first-4-weeks' | 'to-8-weeks' | 'stable' | undefined {
  const { treatment } = facts.assessment;
  if (treatment.setting !== 'transplant') return undefined;
  const days = daysBetween(treatment.transplantedOn, facts.today);
  return days <= 28 ? 'first-4-weeks' : days <= 56 ? 'to-8-weeks' : 'stable';
}

/** In the first 3 months after a transplant: results are taken often and are used for a short time. */
export function isNewTransplant(facts: ClientFacts): boolean {
  const { treatment } = facts.assessment;
  return treatment.setting === 'transplant' && daysBetween(treatment.transplantedOn, facts.today) <= 92;
}

/** Long or frequent hemodialysis by its schedule, not by its place: sessions of 6 hours and more, or 5 and more a week (own decision). */
export function isLongHemodialysis({ assessment: { treatment } }: ClientFacts): boolean {
  if (treatment.setting !== 'hemodialysis') return false;
  return (treatment.sessionHours ?? 0) >= 6 || (treatment.sessionsPerWeek ?? 0) >= 5;
}

export function isOnDialysis({ setting }: ClientFacts): boolean {
  return setting === 'hemodialysis' || setting === 'peritoneal-dialysis';
}

export function isConservative({ assessment: { treatment } }: ClientFacts): boolean {
  return treatment.setting === 'ckd-not-on-dialysis' && treatment.conservative === true;
}

/** Stage G3a to G5: where the statements on protein hold. */
export function isG3To5(stage: GfrCategory | undefined): boolean {
  return stage !== undefined && stage !== 'G1' && stage !== 'G2';
}
