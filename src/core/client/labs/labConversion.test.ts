import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import { ucumFromUnit } from '#core/client/fhir/ucum.ts';
import { type Analyte, analyteFacts, analyteKeys } from './analytes.ts';
import { labInCanonicalUnit, unitsOf } from './labValue.ts';

/** The part of the library that is used here; it comes without types. */
interface UcumUnits {
  validateUnitString(code: string): { status: 'valid' | 'invalid' | 'error' };
  convertUnitTo(
    from: string,
    value: number,
    to: string,
    of?: { molecularWeight?: number; charge?: number },
  ): { status: string; toVal: number | null };
}
const units: UcumUnits = createRequire(import.meta.url)('@lhncbc/ucum-lhc').UcumLhcUtils.getInstance();

/** g/mol. Sums of IUPAC 2021 standard atomic weights; PTH(1-84) 9425 and the rest from handbooks (from memory). */
const molecularWeight: Partial<Record<Analyte, number>> = {
  phosphate: 30.973762,
  calcium: 40.078,
  correctedCalcium: 40.078,
  // One mole of urea carries two of nitrogen: BUN in mg/dL beside urea in mmol/L.
  ureaNitrogen: 2 * 14.007,
  creatinine: 113.12,
  glucose: 180.156,
  magnesium: 24.305,
  urate: 168.11,
  cholesterol: 386.65,
  vitaminD25: 400.64,
  pth: 9425,
};

const perEquivalent: readonly Analyte[] = ['potassium', 'sodium', 'chloride', 'bicarbonate'];

describe('conversions against a UCUM library', () => {
  it('[FHR-11] every unit is a UCUM code', () => {
    for (const analyte of analyteKeys) {
      for (const unit of unitsOf(analyteFacts(analyte))) expect(units.validateUnitString(ucumFromUnit(unit)).status, unit).toBe('valid');
    }
    expect(units.validateUnitString(ucumFromUnit('lb')).status).toBe('valid');
  });

  const pairs = analyteKeys.flatMap(analyte => {
    const facts = analyteFacts(analyte);
    return Object.keys(facts.from).map((unit): [Analyte, string, string] => [analyte, unit, facts.unit]);
  });

  it('[FHR-11] urine albumin to creatinine: moles of creatinine stand below the line, so they are converted alone', () => {
    const { toVal: mmolPerGram } = units.convertUnitTo('g', 1, 'mmol', { molecularWeight: molecularWeight.creatinine! });
    const own = labInCanonicalUnit('urineAcr', 1, 'mg/mmol');
    expect(own).toMatchObject({ kind: 'computed' });
    expect((own.kind === 'computed' ? own.value : 0) / mmolPerGram!).toBeCloseTo(1, 2);
  });

  // HbA1c is a line between two calibrations (IFCC, NGSP) and no conversion of units: UCUM has none.
  it.each(pairs.filter(([analyte]) => analyte !== 'hba1c' && analyte !== 'urineAcr'))(
    '[FHR-11] %s from %s to %s',
    (analyte, unit, canonical) => {
      const { possible, from } = analyteFacts(analyte);
      const value = (possible[0] + possible[1]) / 2 / from[unit]!;
      const weight = molecularWeight[analyte];
      const charge = perEquivalent.includes(analyte) ? 1 : undefined;
      const { status, toVal } = units.convertUnitTo(ucumFromUnit(unit), value, ucumFromUnit(canonical), {
        ...(weight === undefined ? {} : { molecularWeight: weight }),
        ...(charge === undefined ? {} : { charge }),
      });
      const own = labInCanonicalUnit(analyte, value, unit);
      expect([status, own.kind]).toEqual(['succeeded', 'computed']);
      // The published factors carry three or four digits.
      if (own.kind === 'computed' && toVal !== null) expect(Math.abs(own.value / toVal - 1)).toBeLessThan(0.002);
      else expect.fail('no value');
    },
  );
});
