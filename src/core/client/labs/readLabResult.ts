import type { LabResult } from '#core/client/assessment/assessment.ts';
import type { Issue, Place, Reading } from '#core/errors.ts';
import { isDay } from '#core/quantity/calendarDay.ts';
import { cleanFloat } from '#core/quantity/rounding.ts';
import { type Analyte, analyteFacts } from './analytes.ts';
import { labInCanonicalUnit, unitsOf } from './labValue.ts';

export type LabIssueCode =
  | 'lab-file-not-read'
  | 'lab-analyte-not-known'
  | 'lab-unit-missing'
  | 'lab-unit-not-known'
  | 'lab-value-not-a-number'
  | 'lab-value-in-question'
  | 'lab-value-impossible'
  | 'lab-day-not-read'
  | 'lab-time-not-read'
  | 'lab-upper-normal-not-read'
  | 'lab-drawn-in-conflict'
  | 'lab-not-final'
  | 'lab-more-than-one-client'
  | 'lab-twice'
  | 'lab-entry-not-read';

export type LabIssue = Issue<LabIssueCode>;

/** One result as a file gives it, before anything is made of it. */
export interface LabEntry {
  readonly analyte: Analyte;
  readonly value: number;
  readonly unit: string;
  readonly day: string;
  readonly time?: string;
  readonly lowerNormal?: number;
  readonly upperNormal?: number;
  readonly drawn?: LabResult['drawn'];
  readonly hemolyzed?: boolean;
  /** The units that the code of the entry stands for; all units of the analyte when missing. */
  readonly units?: readonly string[];
}

/**
 * A unit as laboratories write it, in this program's spelling where it is one of `units`: `MG/DL` is `mg/dL`, `µmol/L` is `umol/L`, `mcg/L` is `ug/L`, `mL/min/1.73m2` is
 * `mL/min/1.73 m²`. UCUM knows the liter as `l` and `L`, and the same letters in another case are no other unit among those that an analyte has. Anything else stays as it is.
 */
export function labUnit(words: string, units: readonly string[]): string {
  const printed = words.trim();
  return units.find(unit => unit === printed) ?? units.find(unit => letters(unit) === letters(printed)) ?? printed;
}

/** "mg/dL" and "MG/DL". */
export function isSameUnit(one: string, other: string): boolean {
  return letters(one) === letters(other);
}

function letters(unit: string): string {
  return unit
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[µμ]/gu, 'u')
    .replace(/^mcg\b/u, 'ug')
    .replace(/\/\(?24\s?\.?h(?:r|rs|ours?)?\)?$|\/d(?:ay)?$/u, '/24h')
    .replace(/\{1\.73_m2\}|1\.73[\s_]?m\^?2/u, '1.73m2')
    .replace(/\s/gu, '');
}

/**
 * A result from a file, with its unit as the workbench spells it, or the reason why there is none. Without a unit it is refused, and so is
 * one that cannot be; nothing is guessed. Potassium 5.2 without a unit: lab-unit-missing.
 */
export function readLabResult(entry: LabEntry, place: Place): LabResult | LabIssue {
  const { analyte, value, day, time, lowerNormal, upperNormal, drawn } = entry;
  const facts = analyteFacts(analyte);
  const units = entry.units ?? unitsOf(facts);
  const expected = units.join(' or ');
  const issue = (code: LabIssueCode, found: string, wanted: string): LabIssue => ({ code, place, found, expected: wanted });
  // A ratio has no unit to print.
  const unit = entry.unit.trim() === '' && units.includes('{ratio}') ? '{ratio}' : labUnit(entry.unit, units);
  if (unit === '') return issue('lab-unit-missing', `${facts.name} ${value} without a unit`, `${expected}; the result is left out`);
  if (!units.includes(unit)) return issue('lab-unit-not-known', `${facts.name} in ${unit}`, `${expected}; the result is left out`);
  if (!isDay(day)) return issue('lab-day-not-read', day === '' ? 'no day' : day, 'a day as YYYY-MM-DD; the result is left out');
  if (time !== undefined && !/^([01]\d|2[0-3]):[0-5]\d$/u.test(time))
    return issue('lab-time-not-read', time, 'a time as HH:MM; the result is left out');
  const read = labInCanonicalUnit(analyte, value, unit);
  if (read.kind === 'refused') {
    const code = read.why === 'unit-in-question' ? 'lab-value-in-question' : 'lab-value-impossible';
    return issue(code, `${facts.name} ${value} ${unit}`, `${read.told} The result is left out.`);
  }
  if (upperNormal !== undefined && labInCanonicalUnit(analyte, upperNormal, unit).kind === 'refused') {
    return issue(
      'lab-upper-normal-not-read',
      `upper normal ${upperNormal} ${unit}`,
      `a value that ${facts.name} can have; the result is left out`,
    );
  }
  if (lowerNormal !== undefined && (lowerNormal < 0 || (upperNormal !== undefined && lowerNormal >= upperNormal))) {
    const found = `limits ${lowerNormal} to ${upperNormal ?? 'none'} ${unit}`;
    return issue('lab-upper-normal-not-read', found, 'a lower limit under the upper one; the result is left out');
  }
  return {
    analyte,
    value,
    unit,
    takenOn: day,
    ...(time === undefined ? {} : { takenAt: time }),
    ...(lowerNormal === undefined ? {} : { lowerNormal }),
    ...(upperNormal === undefined ? {} : { upperNormal }),
    ...(drawn === undefined ? {} : { drawn }),
    ...(entry.hemolyzed === true ? { hemolyzed: true } : {}),
  };
}

/**
 * What words say about dialysis: "pre", "before HD", "post", "after dialysis" and the like; undefined for words that say neither or both, and for those of a meal.
 */
export function drawnFromWords(words: string): LabResult['drawn'] | undefined {
  const isBefore = /\b(pre|predialysis|before)\b/iu.test(words);
  const isAfter = /\b(post|postdialysis|after)\b/iu.test(words);
  if (isBefore === isAfter || /meal|prandial|breakfast|lunch|dinner|\bnot\b/iu.test(words)) return undefined;
  return isBefore ? 'before-dialysis' : 'after-dialysis';
}

/** True for the same result of the same sample, in whatever unit: it is no second result, and must not count as "high twice". */
export function isSameResult(a: LabResult, b: LabResult): boolean {
  return sampleKey(a) === sampleKey(b) && !Number.isNaN(canonical(a));
}

function sampleKey(lab: LabResult): string {
  return [lab.analyte, lab.takenOn, lab.takenAt ?? '', canonical(lab)].join(' ');
}

function canonical({ analyte, value, unit }: LabResult): number {
  const read = labInCanonicalUnit(analyte, value, unit);
  return read.kind === 'computed' ? cleanFloat(read.value) : Number.NaN;
}

/** What was read of a file, one entry after the other: each result once, and everything that was noticed. */
export function collectLabs(
  entries: readonly { readonly read: LabResult | LabIssue; readonly place: Place }[],
): Reading<LabResult[], LabIssueCode> {
  const value: LabResult[] = [];
  const issues: LabIssue[] = [];
  const known = new Set<string>();
  for (const { read, place } of entries) {
    if ('code' in read) issues.push(read);
    else if (known.has(sampleKey(read))) {
      const found = `${analyteFacts(read.analyte).name} ${read.value} ${read.unit} of ${read.takenOn}, twice`;
      issues.push({ code: 'lab-twice', place, found, expected: 'each result once; it is kept once' });
    } else {
      known.add(sampleKey(read));
      value.push(read);
    }
  }
  return { value, issues };
}
