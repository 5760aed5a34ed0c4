import { type Analyte, analyteFacts } from './analytes.ts';
import { type Day, daysBetween } from './calendarDay.ts';
import type { Assessment, Condition, MedicineClass, WeightKind } from './client.ts';
import type { GfrCategory } from './formulas/gfrCategory.ts';
import { gfrCategory } from './formulas/gfrCategory.ts';
import type { Setting } from './setting.ts';

/** A laboratory result in its canonical unit, beside what was entered. */
export interface Lab {
  readonly analyte: Analyte;
  readonly value: number;
  readonly takenOn: Day;
  readonly takenAt?: string;
  readonly upperNormal?: number;
  readonly hemolyzed: boolean;
}

/** An assessment that was checked: one unit for each thing, only possible values, newest results first. */
export interface ClientFacts {
  readonly today: Day;
  readonly assessment: Assessment;
  readonly setting: Setting;
  readonly ageYears: number;
  readonly heightCm?: number;
  readonly weights: readonly { readonly kg: number; readonly kind: WeightKind; readonly on: Day }[];
  readonly labs: readonly Lab[];
}

export function has(facts: ClientFacts, ...conditions: readonly Condition[]): boolean {
  return conditions.some(condition => facts.assessment.conditions.includes(condition));
}

export function takes(facts: ClientFacts, ...medicines: readonly MedicineClass[]): boolean {
  return medicines.some(medicine => facts.assessment.medicines.includes(medicine));
}

/** The newest result, at most so many days old. */
export function latest(facts: ClientFacts, analyte: Analyte, atMostDays = Number.POSITIVE_INFINITY): Lab | undefined {
  return facts.labs.find(lab => lab.analyte === analyte && daysBetween(lab.takenOn, facts.today) <= atMostDays);
}

export function latestWeightKg(facts: ClientFacts, ...kinds: readonly WeightKind[]): { kg: number; kind: WeightKind; on: Day } | undefined {
  return facts.weights.find(({ kind }) => kinds.includes(kind));
}

export function ageWords(day: Day, today: Day): string {
  const days = daysBetween(day, today);
  return `on ${day}, ${days === 0 ? 'today' : days === 1 ? '1 day old' : `${days} days old`}`;
}

/** "potassium 5.8 mmol/L (on 2026-05-02, 12 days old)". */
export function labWords(lab: Lab, today: Day): string {
  const { name, unit } = analyteFacts(lab.analyte);
  return `${name} ${Number(lab.value.toPrecision(4))} ${unit} (${ageWords(lab.takenOn, today)})`;
}

/** Transplanted at most 4 weeks ago, at most 8 weeks ago, or longer. */
export function transplantAge(facts: ClientFacts): 'first-4-weeks' | 'to-8-weeks' | 'stable' | undefined {
  const { treatment } = facts.assessment;
  if (treatment.setting !== 'transplant') return undefined;
  const days = daysBetween(treatment.transplantedOn, facts.today);
  return days <= 28 ? 'first-4-weeks' : days <= 56 ? 'to-8-weeks' : 'stable';
}

/**
 * The GFR stage: what the kidney team has set, else what two laboratory eGFRs at least 90 days apart agree on at the least (the milder of
 * the two). One result, or an eGFR that this program computed, never makes a stage. KDIGO CKD 2024 (as quoted).
 */
export function stageOf(facts: ClientFacts): GfrCategory | undefined {
  if (facts.setting === 'hemodialysis' || facts.setting === 'peritoneal-dialysis') return undefined;
  if (facts.assessment.stage !== undefined) return facts.assessment.stage.value;
  const results = facts.labs.filter(({ analyte }) => analyte === 'egfr');
  const [newest] = results;
  const earlier = newest && results.find(({ takenOn }) => daysBetween(takenOn, newest.takenOn) >= 90);
  return newest && earlier && gfrCategory(Math.max(newest.value, earlier.value));
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
