import { cleanFloat } from '#core/quantity/rounding.ts';
import { type Analyte, type AnalyteFacts, analyteFacts } from './analytes.ts';
import { type Computed, computed, refuse } from './formulas/computed.ts';

/** The line HbA1c % = 0.09148 × mmol/mol + 2.152 (IFCC to NGSP, from memory). The only analyte whose units differ by more than a factor. */
const hba1cPercentAtZero = 2.152;

/**
 * A result in the analyte's canonical unit. Binary dust is removed, so that the same result in two units is the same number.
 * A value without a unit, with a unit that the analyte doesn't come in, or that cannot be, is refused; where another unit would make it
 * possible, the sentence asks for it. Creatinine 132.6 umol/L is 1.5 mg/dL; 132.6 mg/dL is refused: "was it umol/L?".
 */
export function labInCanonicalUnit(analyte: Analyte, value: number, unit: string): Computed {
  const facts = analyteFacts(analyte);
  if (unit.trim() === '') return refuse('no-unit', analyte, `${facts.name} ${value} has no unit: expected ${unitsOf(facts).join(' or ')}.`);
  const canonical = convert(analyte, facts, value, unit);
  if (canonical === undefined) {
    return refuse('unit-not-known', analyte, `${facts.name} does not come in ${unit}: expected ${unitsOf(facts).join(' or ')}.`);
  }
  if (!Number.isFinite(value)) return refuse('not-a-number', analyte, `${facts.name} is not a number.`);
  const [lo, hi] = facts.possible;
  if (canonical >= lo && canonical <= hi) return computed(canonical);
  const meant = unitsOf(facts).find(other => other !== unit && isPossible(convert(analyte, facts, value, other), facts));
  const cannotBe = `${facts.name} ${value} ${unit} cannot be`;
  if (meant !== undefined) return refuse('unit-in-question', analyte, `${cannotBe}: was it ${meant}?`);
  return refuse('impossible', analyte, `${cannotBe}: expected ${lo} to ${hi} ${facts.unit}.`);
}

/** A canonical result in another unit of the analyte, for display. Phosphate 5.5 mg/dL: 1.78 mmol/L. HbA1c 7.0 %: 53 mmol/mol. */
export function labInUnit(analyte: Analyte, canonicalValue: number, unit: string): Computed {
  const facts = analyteFacts(analyte);
  if (unit === facts.unit) return computed(canonicalValue);
  const factor = facts.from[unit];
  if (factor === undefined) return refuse('unit-not-known', analyte, `${facts.name} does not come in ${unit}.`);
  return computed((canonicalValue - (analyte === 'hba1c' ? hba1cPercentAtZero : 0)) / factor);
}

export function unitsOf(facts: AnalyteFacts): readonly string[] {
  return [facts.unit, ...Object.keys(facts.from)];
}

function convert(analyte: Analyte, facts: AnalyteFacts, value: number, unit: string): number | undefined {
  if (unit === facts.unit) return value;
  const factor = facts.from[unit];
  if (factor === undefined) return undefined;
  return cleanFloat(value * factor + (analyte === 'hba1c' ? hba1cPercentAtZero : 0));
}

function isPossible(value: number | undefined, { possible: [lo, hi] }: AnalyteFacts): boolean {
  return value !== undefined && value >= lo && value <= hi;
}
