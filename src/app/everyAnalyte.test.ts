import { describe, expect, it } from 'vitest';
import { readTable } from '#adapters/files/readTable.ts';
import { checkAssessment } from '#core/client/assessment/checkAssessment.ts';
import { clientWith, today } from '#core/client/assessment/clientFixture.ts';
import type { AnalyteFacts } from '#core/client/labs/analyteFacts.ts';
import { analyteFacts, analyteKeys } from '#core/client/labs/analytes.ts';
import { labInCanonicalUnit, labInUnit } from '#core/client/labs/labValue.ts';
import { labsFromTable } from './labs/labsFromTable.ts';

// What holds for every laboratory result, those among them that are added later: it is asked of the list itself.

const unitsOf = ({ unit, from }: AnalyteFacts): readonly string[] => [unit, ...Object.keys(from)];
const csv = (...lines: readonly string[]) => labsFromTable(readTable(new TextEncoder().encode(lines.join('\n'))), today);

describe.each(analyteKeys)('%s', analyte => {
  const facts: AnalyteFacts = analyteFacts(analyte);
  /** What an adult can have, told in a unit. */
  const inUnit = (unit: string): number => {
    const told = labInUnit(analyte, (facts.possible[0] + facts.possible[1]) / 2, unit);
    return told.kind === 'computed' ? told.value : Number.NaN;
  };

  it('[FHR-6] comes from a table by its name, in every unit that it may come in', () => {
    for (const unit of unitsOf(facts)) {
      const { value, issues } = csv('analyte;value;unit;date', `${facts.name};${inUnit(unit).toFixed(8)};${unit};2026-06-05`);
      expect([unit, issues]).toEqual([unit, []]);
      expect(value).toMatchObject([{ analyte, unit, value: expect.closeTo(inUnit(unit), 6) }]);
    }
  });

  it('[FHR-6] comes from a table by each of its LOINC codes, in the units of that code alone', () => {
    for (const { code, units } of facts.loinc ?? []) {
      for (const unit of unitsOf(facts)) {
        const { value, issues } = csv('loinc;value;unit;date', `${code};${inUnit(unit).toFixed(8)};${unit};2026-06-05`);
        if (units.includes(unit)) expect([code, unit, issues, value[0]?.analyte]).toEqual([code, unit, [], analyte]);
        else expect([code, unit, value]).toEqual([code, unit, []]);
      }
    }
  });

  it('[CLT-7] far outside what a living adult can have is never taken: refused, or asked about', () => {
    const lab = { analyte, value: facts.possible[1] * 1_000, unit: facts.unit, takenOn: today };
    const { issues } = checkAssessment(clientWith({ labs: [lab] }), today);
    expect(issues.map(({ code }) => code)).toEqual([expect.stringMatching(/^(?:impossible-value|unit-in-question|value-in-question)$/)]);
  });

  it('[CLT-7] converts to its own unit from every other, and a unit that is none is refused', () => {
    for (const unit of unitsOf(facts)) {
      const back = labInCanonicalUnit(analyte, inUnit(unit), unit);
      expect([unit, back]).toEqual([unit, { kind: 'computed', value: expect.closeTo((facts.possible[0] + facts.possible[1]) / 2, 6) }]);
    }
    expect(labInCanonicalUnit(analyte, inUnit(facts.unit), 'furlong')).toMatchObject({ kind: 'refused', why: 'unit-not-known' });
  });
});
