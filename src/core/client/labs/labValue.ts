import { type Computed, computed, refuse } from '#core/client/formulas/computed.ts';
import { cleanFloat } from '#core/quantity/rounding.ts';
import type { Setting } from '../setting.ts';
import { type Analyte, type AnalyteFacts, analyteFacts } from './analytes.ts';

/** The line HbA1c % = 0.09148 × mmol/mol + 2.152 (IFCC to NGSP, from memory). The only analyte whose units differ by more than a factor. */
const hba1cPercentAtZero = 2.152;

/**
 * A result in the analyte's canonical unit. Binary dust is removed, so that the same result in two units is the same number.
 * A value without a unit, with a unit that the analyte doesn't come in, or that cannot be, is refused; where a known mix-up would make it
 * possible, the sentence names it. Creatinine 132.6 umol/L is 1.5 mg/dL; 132.6 mg/dL is refused: "was it umol/L?".
 */
export function labInCanonicalUnit(analyte: Analyte, value: number, unit: string): Computed {
  const facts = analyteFacts(analyte);
  if (unit.trim() === '') return refuse('no-unit', analyte, `${facts.name} ${value} has no unit: expected ${unitsOf(facts).join(' or ')}.`);
  const canonical = labConverted(analyte, value, unit);
  if (canonical === undefined) {
    return refuse('unit-not-known', analyte, `${facts.name} does not come in ${unit}: expected ${unitsOf(facts).join(' or ')}.`);
  }
  if (!Number.isFinite(value)) return refuse('not-a-number', analyte, `${facts.name} is not a number.`);
  if (isPossible(analyte, value, unit)) return computed(canonical);
  const cannotBe = `${facts.name} ${value} ${unit} cannot be`;
  const [mixUp] = mixUps(analyte, value, unit);
  if (mixUp !== undefined) return refuse('unit-in-question', analyte, `${cannotBe}: ${mixUp.asked}`);
  const [lo, hi] = possibleSpan(facts, unit) ?? facts.possible;
  return refuse('impossible', analyte, `${cannotBe}: expected ${lo} to ${hi} ${unit}.`);
}

/**
 * What is asked about a value that is possible and yet looks like a mix-up (care rules 5); undefined for an ordinary one.
 * Phosphate 1.4 mg/dL: "phosphate 1.4 mg/dL is unusual: was it mmol/L?". BUN 8 mg/dL is asked about on dialysis alone.
 */
export function labQuestion(analyte: Analyte, value: number, unit: string, setting: Setting): string | undefined {
  if (!isPossible(analyte, value, unit)) return undefined;
  const [mixUp] = asksOf(analyte, value, unit, setting);
  return mixUp && `${analyteFacts(analyte).name} ${value} ${unit} is unusual: ${mixUp.asked}`;
}

/**
 * What a value may have meant, in the canonical unit: as typed where that is possible, and by each mix-up that explains it. An ordinary
 * value has one reading, one that nothing explains none. Potassium 65 mmol/L has none, 58 mmol/L has 5.8; glucose 35 mg/dL has 35 and
 * 630.6 (35 mmol/L).
 */
export function possibleReadings(analyte: Analyte, value: number, unit: string, setting?: Setting): readonly number[] {
  const asTyped = isPossible(analyte, value, unit) ? [labConverted(analyte, value, unit)] : [];
  const meant = (asTyped.length > 0 ? asksOf(analyte, value, unit, setting) : mixUps(analyte, value, unit)).map(({ reading }) => reading);
  return [...new Set([...asTyped, ...meant].filter(one => one !== undefined))];
}

/** A canonical result in another unit of the analyte, for display. Phosphate 5.5 mg/dL: 1.78 mmol/L. HbA1c 7.0 %: 53 mmol/mol. */
export function labInUnit(analyte: Analyte, canonicalValue: number, unit: string): Computed {
  const facts = analyteFacts(analyte);
  if (unit === facts.unit) return computed(canonicalValue);
  const factor = ofUnit(facts.from, unit);
  if (factor === undefined) return refuse('unit-not-known', analyte, `${facts.name} does not come in ${unit}.`);
  return computed((canonicalValue - (analyte === 'hba1c' ? hba1cPercentAtZero : 0)) / factor);
}

/** A unit is words of somebody else: `constructor` names none. */
function ofUnit<Value>(byUnit: Readonly<Record<string, Value>>, unit: string): Value | undefined {
  return Object.hasOwn(byUnit, unit) ? byUnit[unit] : undefined;
}

export function unitsOf(facts: AnalyteFacts): readonly string[] {
  return [facts.unit, ...Object.keys(facts.from)];
}

/** In the canonical unit, possible or not; undefined for a unit that the analyte doesn't come in. 1.4 mmol/L of phosphate is 4.34 mg/dL. */
export function labConverted(analyte: Analyte, value: number, unit: string): number | undefined {
  const facts = analyteFacts(analyte);
  if (unit === facts.unit) return value;
  const factor = ofUnit(facts.from, unit);
  if (factor === undefined) return undefined;
  return cleanFloat(value * factor + (analyte === 'hba1c' ? hba1cPercentAtZero : 0));
}

/** Where the table has figures of the unit's own they are compared as typed; else in the canonical unit. */
function isPossible(analyte: Analyte, value: number, unit: string): boolean {
  const facts = analyteFacts(analyte);
  const own = possibleSpan(facts, unit);
  const [lo, hi] = own ?? facts.possible;
  const compared = own === undefined ? labConverted(analyte, value, unit) : value;
  return compared !== undefined && compared >= lo && compared <= hi;
}

function possibleSpan(facts: AnalyteFacts, unit: string): readonly [number, number] | undefined {
  return unit === facts.unit ? facts.possible : ofUnit(facts.possibleIn ?? {}, unit);
}

/** One thing that may have been meant. `reading` is missing where it would be another analyte: it is no value of this one. */
interface MixUp {
  readonly asked: string;
  readonly reading?: number;
}

/** Of a value that cannot be: a listed mix-up, else another unit in which it would be possible. */
function mixUps(analyte: Analyte, value: number, unit: string): readonly MixUp[] {
  const facts = analyteFacts(analyte);
  const listed = asksOf(analyte, value, unit);
  if (listed.length > 0) return listed;
  return unitsOf(facts)
    .filter(other => facts.from[other] !== facts.from[unit] && isPossible(analyte, value, other))
    .slice(0, 1)
    .map(other => unitMeant(analyte, value, other));
}

function asksOf(analyte: Analyte, value: number, unit: string, setting?: Setting): readonly MixUp[] {
  return (analyteFacts(analyte).ask ?? []).flatMap((ask): readonly MixUp[] => {
    const isInBand =
      ask.units.includes(unit) &&
      value >= (ask.from ?? Number.NEGATIVE_INFINITY) &&
      value <= (ask.to ?? Number.POSITIVE_INFINITY) &&
      value > (ask.over ?? Number.NEGATIVE_INFINITY) &&
      value < (ask.under ?? Number.POSITIVE_INFINITY);
    if (!isInBand || (setting !== undefined && ask.settings?.includes(setting) === false)) return [];
    if (ask.meant === 'decimal point') {
      const reading = cleanFloat(value / 10);
      return [{ asked: `was the decimal point left out (${reading} ${unit})?`, reading }];
    }
    if ('analyte' in ask.meant) {
      return [{ asked: `was ${ask.meant.analyte} meant?` }];
    }
    return isPossible(analyte, value, ask.meant.unit) ? [unitMeant(analyte, value, ask.meant.unit)] : [];
  });
}

function unitMeant(analyte: Analyte, value: number, unit: string): MixUp {
  const reading = labConverted(analyte, value, unit);
  return { asked: `was it ${unit}?`, ...(reading === undefined ? {} : { reading }) };
}
