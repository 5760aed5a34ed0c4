import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { analyteKeys, analytes } from '#core/client/labs/analytes.ts';
import { labInCanonicalUnit, labInUnit, unitsOf } from '#core/client/labs/labValue.ts';
import { sourceWords } from '#core/client/rules/source.ts';
import { netEndogenousAcidMeq, potentialRenalAcidLoadMeq } from './acidLoad.ts';
import { adjustedEdemaFreeWeightKg } from './adjustedEdemaFreeWeight.ts';
import { adjustedWeightKg } from './adjustedWeight.ts';
import { albuminuriaCategory } from './albuminuriaCategory.ts';
import { amputationFacts, weightKgBeforeAmputation } from './amputation.ts';
import { anionGapMmolPerL, anionGapMmolPerLForAlbumin } from './anionGap.ts';
import { bodyMassIndex } from './bodyMassIndex.ts';
import { heightCmFrom, weightKgFrom } from './bodyUnits.ts';
import type { Computed } from './computed.ts';
import { correctedCalciumMgPerDl, correctedCalciumMmolPerL } from './correctedCalcium.ts';
import { absorbedGlucose, absorbedGlucoseGByEquilibration, absorbedGlucoseGPerLiterGrodstein } from './dialysateGlucose.ts';
import { spKtV, ureaReductionPercent } from './dialysisDose.ts';
import { egfr } from './egfr.ts';
import { fluidAllowanceMlFromUltrafiltration, fluidAllowanceMlFromUrine } from './fluidAllowance.ts';
import { idealWeightKgDevine, idealWeightKgHamwi } from './idealWeight.ts';
import { interdialyticGain } from './interdialyticGain.ts';
import { geriatricNutritionalRiskIndex } from './nutritionalRiskIndex.ts';
import { peritonealProteinFacts, peritonealProteinG } from './peritonealProtein.ts';
import { perDayFromPerKg } from './perKilogram.ts';
import { phosphateBinderEquivalentG } from './phosphateBinder.ts';
import { absorbedPhosphorusMg, phosphorusMgFromProteinG, phosphorusToProtein } from './phosphorus.ts';
import { potassiumMgAfterCooking } from './potassiumAfterCooking.ts';
import { nPcrGPerKgFromRise, nPcrGPerKgFromSession } from './proteinCatabolicRate.ts';
import { proteinEnergyWasting } from './proteinEnergyWasting.ts';
import { proteinGFromUreaGeneration, proteinGFromUrine, ureaNitrogenGFromUreaG, ureaNitrogenGFromUreaMmol } from './proteinFromUrine.ts';
import { ultrafiltrationMlPerKgH } from './ultrafiltrationRate.ts';
import { intakeMgFromUrineMg, potassiumMgFromMmol, saltGFromSodiumMg, sodiumMmolFromMg } from './urineMinerals.ts';
import { weightLossPercent } from './weightLoss.ts';

const formulas: Record<string, (a: number, b: number, c: number, d: number) => Computed<unknown>> = {
  egfr: (a, b) => egfr({ sex: 'female', ageYears: a, creatinineMgPerDl: b }),
  albuminuriaCategory: a => albuminuriaCategory(a, 'mg/g'),
  bodyMassIndex: (a, b) => bodyMassIndex(a, b),
  idealWeightKgHamwi: a => idealWeightKgHamwi('male', a),
  idealWeightKgDevine: a => idealWeightKgDevine('male', a),
  adjustedWeightKg: (a, b) => adjustedWeightKg(a, b),
  adjustedEdemaFreeWeightKg: (a, b) => adjustedEdemaFreeWeightKg(a, b),
  weightKgBeforeAmputation: a => weightKgBeforeAmputation(a, ['foot']),
  weightLossPercent: (a, b) => weightLossPercent(a, b),
  perDayFromPerKg: (a, b) => perDayFromPerKg({ lo: a, hi: a }, b),
  absorbedGlucose: (a, b, c) => absorbedGlucose([{ liters: a, percent: b, labeledAs: 'dextrose' }], c),
  grodstein: a => absorbedGlucoseGPerLiterGrodstein(a),
  equilibration: (a, b) => absorbedGlucoseGByEquilibration(a, b),
  fluidFromUltrafiltration: (a, b, c, d) =>
    fluidAllowanceMlFromUltrafiltration({ ultrafiltrationMlPerKgH: a, sessionHours: b, targetWeightKg: c, gapDays: 2, urineMlPerDay: d }),
  fluidFromUrine: a => fluidAllowanceMlFromUrine(a),
  correctedCalciumMgPerDl: (a, b) => correctedCalciumMgPerDl(a, b),
  correctedCalciumMmolPerL: (a, b) => correctedCalciumMmolPerL(a, b),
  anionGap: (a, b, c) => anionGapMmolPerL(a, b, c),
  anionGapForAlbumin: (a, b) => anionGapMmolPerLForAlbumin(a, b),
  nPcrFromRise: (a, b, c, d) =>
    nPcrGPerKgFromRise({ bunAfterMgPerDl: a, bunBeforeNextMgPerDl: b, gapHours: c, urine: { ureaNitrogenG: d, weightKg: 70 } }),
  nPcrFromSession: (a, b) => nPcrGPerKgFromSession('midweek', a, b),
  maroni: (a, b, c) => proteinGFromUrine({ ureaNitrogenGPerDay: a, weightKg: b, urineProteinGPerDay: c }),
  ureaGeneration: a => proteinGFromUreaGeneration(a),
  ureaNitrogenFromMmol: a => ureaNitrogenGFromUreaMmol(a),
  ureaNitrogenFromG: a => ureaNitrogenGFromUreaG(a),
  peritonealProteinG: (a, b) => peritonealProteinG(a, b),
  potassiumMgFromMmol: a => potassiumMgFromMmol(a),
  sodiumMmolFromMg: a => sodiumMmolFromMg(a),
  saltGFromSodiumMg: a => saltGFromSodiumMg(a),
  intakeMgFromUrineMg: a => intakeMgFromUrineMg(a),
  interdialyticGain: (a, b) => interdialyticGain(a, b),
  ultrafiltration: (a, b, c) => ultrafiltrationMlPerKgH(a, b, c),
  spKtV: (a, b, c, d) => spKtV({ bunBeforeMgPerDl: a, bunAfterMgPerDl: b, hours: c, ultrafiltrationL: d, weightAfterKg: 70 }),
  ureaReductionPercent: (a, b) => ureaReductionPercent(a, b),
  pral: (a, b, c, d) => potentialRenalAcidLoadMeq({ proteinG: a, phosphorusMg: b, potassiumMg: c, magnesiumMg: d, calciumMg: a }),
  neap: (a, b) => netEndogenousAcidMeq(a, b),
  phosphorusToProtein: (a, b) => phosphorusToProtein(a, b),
  phosphorusMgFromProteinG: a => phosphorusMgFromProteinG(a),
  absorbedPhosphorusMg: (a, b, c) => absorbedPhosphorusMg({ additiveMg: a, animalMg: b, plantMg: c }),
  phosphateBinder: (a, b) => phosphateBinderEquivalentG('sevelamer', a, b),
  potassiumMgAfterCooking: a => potassiumMgAfterCooking(a, 'boiled-shredded'),
  gnri: (a, b, c) => geriatricNutritionalRiskIndex(a, b, c),
};

const numbersIn = (value: unknown): number[] =>
  typeof value === 'number' ? [value] : typeof value === 'object' && value !== null ? Object.values(value).flatMap(numbersIn) : [];

describe('formulas refuse what cannot be', () => {
  it.each(Object.entries(formulas))('[CLT-2] %s refuses what is no number, and never answers with one', (_, formula) => {
    for (const odd of [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]) {
      expect(formula(odd, odd, odd, odd)).toMatchObject({ kind: 'refused', why: 'not-a-number' });
    }
    const anything = fc.oneof(fc.double(), fc.double({ min: 0, max: 200, noNaN: true }), fc.integer({ min: -5, max: 400 }));
    fc.assert(
      fc.property(anything, anything, anything, anything, (a, b, c, d) => {
        const result = formula(a, b, c, d);
        if (result.kind === 'computed') for (const number of numbersIn(result.value)) expect(Number.isFinite(number)).toBe(true);
        else expect(result.told).toMatch(/[.?]$/);
      }),
    );
  });

  it('[CLT-2] a refusal names the field, what was found and what was expected', () => {
    expect(bodyMassIndex(700, 175)).toEqual({
      kind: 'refused',
      why: 'impossible',
      field: 'weightKg',
      told: 'weightKg 700 kg cannot be: expected 20 to 400 kg.',
      found: '700 kg',
      expected: '20 to 400 kg',
    });
    expect(egfr({ sex: 'male', ageYears: 16, creatinineMgPerDl: 1 })).toMatchObject({ kind: 'refused', why: 'under-18' });
    expect(adjustedWeightKg(50, 60)).toMatchObject({ kind: 'refused', field: 'actualKg' });
    expect(idealWeightKgHamwi('female', 95)).toMatchObject({ kind: 'refused', field: 'heightCm' });
    expect(spKtV({ bunBeforeMgPerDl: 20, bunAfterMgPerDl: 70, hours: 4, ultrafiltrationL: 2, weightAfterKg: 70 })).toMatchObject({
      kind: 'refused',
      field: 'bunAfterMgPerDl',
    });
    expect(absorbedGlucose([{ liters: 2, percent: 1.4, labeledAs: 'glucose' }], 0.6)).toMatchObject({
      kind: 'refused',
      why: 'outside-rule',
    });
  });
});

describe('units of results', () => {
  it('[CLT-3] a value without a unit, or with a foreign one, is refused', () => {
    expect(labInCanonicalUnit('potassium', 5, '')).toMatchObject({
      why: 'no-unit',
      told: 'potassium 5 has no unit: expected mmol/L or mEq/L.',
    });
    for (const unit of ['mg/dL', '__proto__', 'constructor'])
      expect(labInCanonicalUnit('potassium', 5, unit)).toMatchObject({ why: 'unit-not-known' });
  });

  it('[CLT-3] an impossible value that fits in another unit is asked about, never corrected', () => {
    expect(labInCanonicalUnit('creatinine', 132.6, 'mg/dL')).toMatchObject({
      kind: 'refused',
      told: 'creatinine 132.6 mg/dL cannot be: was it umol/L?',
    });
    expect(labInCanonicalUnit('creatinine', 1.5, 'umol/L')).toMatchObject({ told: 'creatinine 1.5 umol/L cannot be: was it mg/dL?' });
    expect(labInCanonicalUnit('potassium', 55, 'mmol/L')).toMatchObject({
      told: 'potassium 55 mmol/L cannot be: was the decimal point left out (5.5 mmol/L)?',
    });
  });

  it('[CLT-4] a result there and back is the same number in every unit of every analyte', () => {
    for (const analyte of analyteKeys) {
      // Well inside: each unit has round ends of its own.
      const [least, most] = analytes[analyte].possible;
      const [lo, hi] = [least + 0.2 * (most - least), least + 0.75 * (most - least)];
      for (const unit of unitsOf(analytes[analyte])) {
        fc.assert(
          fc.property(fc.integer({ min: Math.ceil(lo * 100), max: Math.floor(hi * 100) }), hundredths => {
            const there = labInUnit(analyte, hundredths / 100, unit);
            if (there.kind === 'refused') throw new Error(there.told);
            const back = labInCanonicalUnit(analyte, there.value, unit);
            expect(back).toEqual({ kind: 'computed', value: hundredths / 100 });
          }),
          { numRuns: 20 },
        );
      }
    }
  });

  it('[CLT-4] pounds, feet and inches are exact (NIST Handbook 44)', () => {
    expect(weightKgFrom({ value: 100, unit: 'lb' })).toBe(45.359237);
    expect(heightCmFrom({ feet: 5, inches: 9 })).toBe(175.26);
    expect(heightCmFrom({ value: 1.75, unit: 'm' })).toBe(175);
  });
});

describe('protein-energy wasting (ISRNM, Fouque 2008)', () => {
  it('[CLT-5] takes three of four groups, one test each', () => {
    const three = proteinEnergyWasting({ onDialysis: true, albuminGPerDl: 3.4, bodyMassIndex: 21, energyKcalPerKg: 22 });
    expect(three).toMatchObject({ met: 3, wasting: true });
    expect(proteinEnergyWasting({ onDialysis: true, albuminGPerDl: 3.4, prealbuminMgPerDl: 20, bodyMassIndex: 21 })).toMatchObject({
      met: 2,
      wasting: false,
    });
  });

  it('[CLT-5] bounds are strict for "under" and inclusive for losses', () => {
    expect(
      proteinEnergyWasting({
        onDialysis: false,
        albuminGPerDl: 3.8,
        bodyMassIndex: 23,
        muscleLossPercent3Months: 5,
        proteinGPerKg: 0.6,
        energyKcalPerKg: 25,
      }).groups,
    ).toEqual({
      blood: 'not met',
      'body mass': 'not met',
      muscle: 'met',
      intake: 'not met',
    });
  });

  it('[CLT-5] a group whose facts are missing is open, not passed (care rules 3)', () => {
    expect(proteinEnergyWasting({ onDialysis: false, bodyMassIndex: 21, energyKcalPerKg: 28 })).toMatchObject({
      groups: { blood: 'not known', 'body mass': 'met', muscle: 'not known', intake: 'not known' },
      met: 1,
      wasting: false,
    });
    const { groups } = proteinEnergyWasting({ onDialysis: false, bodyMassIndex: 25, lossPercent3Months: 6, lossIsOpen: true });
    expect(groups['body mass']).toBe('not known');
  });
});

describe('what is told beside a result', () => {
  it('[CLT-6] a source from memory says "to be confirmed", one read in a later text says "as quoted"', () => {
    expect(peritonealProteinFacts.sources.map(sourceWords)).toEqual(['Bergström 1998, to be confirmed']);
    expect(amputationFacts.sources.map(sourceWords)).toEqual(['Osterkamp 1995, as quoted']);
    expect(sourceWords({ kind: 'guideline', text: 'KDOQI 2020', grade: '1A' })).toBe('KDOQI 2020 (1A)');
  });
});

describe('worked results that no check value holds', () => {
  const result = (computed: Computed) => (computed.kind === 'computed' ? computed.value : computed.told);
  it.each([
    ['corrected anion gap (from memory)', anionGapMmolPerLForAlbumin(18, 2.8), 21, 9],
    ['Maroni with 5.5 g urine protein', proteinGFromUrine({ ureaNitrogenGPerDay: 8, weightKg: 70, urineProteinGPerDay: 5.5 }), 69.1, 1],
    ['dialysate protein measured (Bergström 1998)', peritonealProteinG(6, 6), 62.8, 1],
    ['intake from 62 mmol urine potassium', intakeMgFromUrineMg(2424.2), 2694, 0],
    ['ultrafiltration 2800 mL, 4 h, 70 kg', ultrafiltrationMlPerKgH(2800, 4, 70), 10, 9],
    ['lanthanum 3 × 1000 mg (Daugirdas 2011)', phosphateBinderEquivalentG('lanthanum', 1000, 3), 6, 9],
    ['calcium acetate 6 × 667 mg', phosphateBinderEquivalentG('calcium-acetate', 667, 6), 4, 1],
    ['peritoneal 1 − D/D0', absorbedGlucoseGByEquilibration(195, 0.4), 117, 9],
    ['weight loss 80 to 72 kg', weightLossPercent(80, 72), 10, 9],
  ])('[CLT-6] %s', (_, computed, expected, decimals) => expect(result(computed)).toBeCloseTo(expected, decimals));

  it('[CLT-6] an EU bag of 1.36 % glucose is the 1.5 % dextrose bag', () => {
    const of = (percent: number, labeledAs: 'dextrose' | 'glucose') => absorbedGlucose([{ liters: 2, percent, labeledAs }], 0.6);
    expect(of(1.36, 'glucose')).toEqual(of(1.5, 'dextrose'));
    expect(of(3.86, 'glucose')).toEqual(of(4.25, 'dextrose'));
  });

  it('[CLT-6] absorbed phosphorus is a band: 400 animal, 300 plant, 200 additive give 400-560 mg', () => {
    expect(absorbedPhosphorusMg({ additiveMg: 200, animalMg: 400, plantMg: 300 })).toEqual({
      kind: 'computed',
      value: { lo: 400, hi: 560 },
    });
  });
});
