import { describe, expect, test } from 'vitest';
import { netEndogenousAcidMeq, potentialRenalAcidLoadMeq } from './acidLoad.ts';
import { adjustedEdemaFreeWeightKg } from './adjustedEdemaFreeWeight.ts';
import { adjustedWeightKg } from './adjustedWeight.ts';
import { albuminuriaCategory } from './albuminuriaCategory.ts';
import { type missingPartPercent, weightKgBeforeAmputation } from './amputation.ts';
import { anionGapMmolPerL, anionGapMmolPerLForAlbumin } from './anionGap.ts';
import { bodyMassIndex } from './bodyMassIndex.ts';
import type { Computed } from './computed.ts';
import { correctedCalciumMgPerDl, correctedCalciumMmolPerL } from './correctedCalcium.ts';
import { absorbedGlucose, absorbedGlucoseGByEquilibration, absorbedGlucoseGPerLiterGrodstein } from './dialysateGlucose.ts';
import { spKtV, ureaReductionPercent } from './dialysisDose.ts';
import { egfr } from './egfr.ts';
import { fluidAllowanceMlFromUltrafiltration, fluidAllowanceMlFromUrine } from './fluidAllowance.ts';
import { gfrCategory } from './gfrCategory.ts';
import { idealWeightKgDevine, idealWeightKgHamwi, isShort } from './idealWeight.ts';
import { interdialyticGain } from './interdialyticGain.ts';
import { geriatricNutritionalRiskIndex } from './nutritionalRiskIndex.ts';
import { peritonealProteinG } from './peritonealProtein.ts';
import { perDayFromPerKg } from './perKilogram.ts';
import { phosphateBinderEquivalentG } from './phosphateBinder.ts';
import { phosphorusMgFromProteinG, phosphorusToProtein } from './phosphorus.ts';
import { potassiumMgAfterCooking } from './potassiumAfterCooking.ts';
import { nPcrGPerKgFromRise, nPcrGPerKgFromSession } from './proteinCatabolicRate.ts';
import { proteinGFromUreaGeneration, proteinGFromUrine, ureaNitrogenGFromUreaG, ureaNitrogenGFromUreaMmol } from './proteinFromUrine.ts';
import { ultrafiltrationMlPerKgH } from './ultrafiltrationRate.ts';
import { intakeMgFromUrineMg, potassiumMgFromMmol, saltGFromSodiumMg, sodiumMmolFromMg } from './urineMinerals.ts';

const bag = (liters: number, percent: number) => [{ liters, percent, labeledAs: 'dextrose' as const }];
const allowance = (more: object) =>
  fluidAllowanceMlFromUltrafiltration({
    ...{ ultrafiltrationMlPerKgH: 10, sessionHours: 4, targetWeightKg: 70, gapDays: 2, urineMlPerDay: 300 },
    ...more,
  });
const acidLoad = (more: object) =>
  potentialRenalAcidLoadMeq({ ...{ proteinG: 80, phosphorusMg: 1200, potassiumMg: 2800, magnesiumMg: 300, calciumMg: 800 }, ...more });
const dose = (more: object) =>
  spKtV({ ...{ bunBeforeMgPerDl: 70, bunAfterMgPerDl: 20, hours: 4, ultrafiltrationL: 2.8, weightAfterKg: 70 }, ...more });
const rise = (more: object) => nPcrGPerKgFromRise({ ...{ bunAfterMgPerDl: 18, bunBeforeNextMgPerDl: 70, gapHours: 44 }, ...more });

// What a living adult or a real plan can have, wide on purpose (own decision): the ends are taken, what lies beyond is refused.
describe('what an input can be', () => {
  test.each<[string, (value: number) => Computed<unknown>, lo: number, hi: number]>([
    ['weight', kg => bodyMassIndex(kg, 170), 20, 400],
    ['height', cm => bodyMassIndex(70, cm), 100, 250],
    ['albumin', gPerDl => correctedCalciumMgPerDl(9, gPerDl), 0.5, 7],
    ['albumin in g/L', gPerL => correctedCalciumMmolPerL(2.2, gPerL), 5, 70],
    ['calcium', mgPerDl => correctedCalciumMgPerDl(mgPerDl, 4), 3, 20],
    ['calcium in mmol/L', mmolPerL => correctedCalciumMmolPerL(mmolPerL, 40), 0.75, 5],
    ['protein', g => phosphorusMgFromProteinG(g), 0, 500],
    ['potassium', mg => potassiumMgAfterCooking(mg, 'boiled-shredded'), 0, 20_000],
    ['potassium under which an acid load is divided', mg => netEndogenousAcidMeq(80, mg), 1, 20_000],
    ['phosphorus', mg => phosphorusToProtein(mg, 70), 0, 10_000],
    ['magnesium', magnesiumMg => acidLoad({ magnesiumMg }), 0, 5000],
    ['calcium eaten', calciumMg => acidLoad({ calciumMg }), 0, 10_000],
    ['actual weight over the ideal one', kg => adjustedWeightKg(kg, 60), 60, 400],
    ['albumin to creatinine', acr => albuminuriaCategory(acr, 'mg/g'), 0, 30_000],
    ['sodium', value => anionGapMmolPerL(value, 102, 18), 90, 200],
    ['chloride', value => anionGapMmolPerL(138, value, 18), 50, 170],
    ['bicarbonate', value => anionGapMmolPerL(138, 102, value), 2, 60],
    ['anion gap', gap => anionGapMmolPerLForAlbumin(gap, 4), -50, 100],
    ['absorbed share', share => absorbedGlucose(bag(2, 2.5), share), 0.1, 1],
    ['liters of a bag', liters => absorbedGlucose(bag(liters, 1.5), 0.6), 0, 30],
    ['dextrose of a bag', percent => absorbedGlucose(bag(2, percent), 0.6), 0.5, 4.25],
    ['mean dextrose', gPerDl => absorbedGlucoseGPerLiterGrodstein(gPerDl), 1, 4.25],
    ['glucose infused', g => absorbedGlucoseGByEquilibration(g, 0.4), 0, 1500],
    ['D/D0', ratio => absorbedGlucoseGByEquilibration(195, ratio), 0, 1],
    ['hours of a session', hours => dose({ hours, bunAfterMgPerDl: 30 }), 0.5, 12],
    ['ultrafiltration in L', ultrafiltrationL => dose({ ultrafiltrationL }), 0, 12],
    ['BUN', mgPerDl => ureaReductionPercent(mgPerDl, 1), 1, 300],
    ['creatinine', creatinineMgPerDl => egfr({ sex: 'female', ageYears: 60, creatinineMgPerDl }), 0.1, 30],
    ['age', ageYears => egfr({ sex: 'female', ageYears, creatinineMgPerDl: 1 }), 18, 120],
    ['ultrafiltration limit', ultrafiltrationMlPerKgH => allowance({ ultrafiltrationMlPerKgH }), 1, 20],
    ['hours of the limit', sessionHours => allowance({ sessionHours }), 0.5, 12],
    ['days between', gapDays => allowance({ gapDays }), 1, 4],
    ['urine', urineMlPerDay => allowance({ urineMlPerDay }), 0, 15_000],
    ['urine alone', urine => fluidAllowanceMlFromUrine(urine), 0, 15_000],
    ['height of Devine', cm => idealWeightKgDevine('female', cm), 152.4, 250],
    ['gain in kg', kg => interdialyticGain(100 + kg, 100), -15, 25],
    ['albumin of the risk index', gPerL => geriatricNutritionalRiskIndex(gPerL, 60, 60), 5, 70],
    ['amount per kg', perKg => perDayFromPerKg({ lo: perKg, hi: perKg }, 70), 0, 100],
    ['urea nitrogen appearance', g => peritonealProteinG(g), 0, 60],
    ['protein in dialysate', g => peritonealProteinG(6, g), 0, 60],
    ['mg of a tablet', mg => phosphateBinderEquivalentG('sevelamer', mg, 3), 1, 3000],
    ['tablets a day', count => phosphateBinderEquivalentG('sevelamer', 800, count), 0, 40],
    ['BUN before the next session', bunBeforeNextMgPerDl => rise({ bunBeforeNextMgPerDl }), 18, 300],
    ['hours between', gapHours => rise({ gapHours }), 12, 120],
    ['urea nitrogen between', ureaNitrogenG => rise({ urine: { ureaNitrogenG, weightKg: 70 } }), 0, 60],
    ['spKt/V', value => nPcrGPerKgFromSession('midweek', 60, value), 0.3, 4],
    ['urine urea nitrogen', g => proteinGFromUreaGeneration(g), 0, 60],
    ['protein in urine', urineProteinGPerDay => proteinGFromUrine({ ureaNitrogenGPerDay: 8, weightKg: 70, urineProteinGPerDay }), 0, 60],
    ['urea in mmol', mmol => ureaNitrogenGFromUreaMmol(mmol), 0, 2200],
    ['urea in g', g => ureaNitrogenGFromUreaG(g), 0, 130],
    ['ultrafiltration in mL', mL => ultrafiltrationMlPerKgH(mL, 4, 70), 0, 12_000],
    ['hours of ultrafiltration', hours => ultrafiltrationMlPerKgH(2800, hours, 70), 0.5, 12],
    ['urine mineral in mmol', mmol => potassiumMgFromMmol(mmol), 0, 2000],
    ['sodium in mg', mg => sodiumMmolFromMg(mg), 0, 50_000],
    ['sodium of salt', mg => saltGFromSodiumMg(mg), 0, 50_000],
    ['urine mineral in mg', mg => intakeMgFromUrineMg(mg), 0, 50_000],
  ])('[CLT-2] %s', (_, formula, lo, hi) => {
    expect([formula(lo).kind, formula(hi).kind]).toEqual(['computed', 'computed']);
    expect([formula(lo - 0.001).kind, formula(hi + 0.001).kind]).toEqual(['refused', 'refused']);
  });

  test('[CLT-2] a refusal is told with five digits of what was converted', () => {
    expect(bodyMassIndex(700.123456, 170)).toMatchObject({ told: 'weightKg 700.12 kg cannot be: expected 20 to 400 kg.' });
    expect(bodyMassIndex(1_234_567, 170)).toMatchObject({ found: '1234567 kg' });
    expect(netEndogenousAcidMeq(80, 0)).toMatchObject({ kind: 'refused' });
  });

  test('[CLT-2] 1500 g of dextrose a day can be, more cannot; half a body and no more can be missing', () => {
    // 30 L of 4.25 % are 1275 g, 22.5 L more of 1 % are 225 g.
    const bags = [...bag(30, 4.25), ...bag(22.5, 1)];
    expect(absorbedGlucose(bags, 0.6)).toMatchObject({ value: { infusedG: 1500 } });
    expect(absorbedGlucose([...bags, ...bag(0.05, 1)], 0.6)).toMatchObject({
      kind: 'refused',
      told: '1500.5 g of dextrose a day cannot be: check liters and percent.',
    });
    expect(weightKgBeforeAmputation(50, ['whole-leg', 'whole-leg', 'whole-arm', 'whole-arm', 'forearm-with-hand']).kind).toBe('computed');
    const over: (keyof typeof missingPartPercent)[] = ['whole-leg', 'whole-leg', 'whole-leg', 'forearm-with-hand', 'hand'];
    // 48 + 2.3 + 0.7 = 51 %.
    expect(weightKgBeforeAmputation(50, over).kind).toBe('refused');
  });

  test('[CLT-2] BUN has not risen over the session; a range per kg has its low end first', () => {
    expect(ureaReductionPercent(70, 70)).toEqual({ kind: 'computed', value: 0 });
    expect(ureaReductionPercent(70, 70.1).kind).toBe('refused');
    expect(perDayFromPerKg({ lo: 1, hi: 1 }, 70)).toEqual({ kind: 'computed', value: { lo: 70, hi: 70 } });
    expect(perDayFromPerKg({ lo: 1.2, hi: 1 }, 70).kind).toBe('refused');
  });
});

const resultOf = <Value>(result: Computed<Value>): Value => {
  if (result.kind === 'refused') throw new Error(result.told);
  return result.value;
};

describe('at the bounds of the sheet', () => {
  // Facts 1.1: the rows under kappa, where alpha decides. A man of 0.6: 142 × (0.6 / 0.9)^−0.302 × 0.9938^40 = 125.15.
  test('[CLT-1] eGFR of a low creatinine', () => {
    const of = (sex: 'female' | 'male', ageYears: number, creatinineMgPerDl: number) =>
      resultOf(egfr({ sex, ageYears, creatinineMgPerDl })).egfrMlPerMin173;
    expect(of('female', 30, 0.6)).toBeCloseTo(123.7579, 3);
    expect(of('male', 40, 0.9)).toBeCloseTo(110.7256, 3);
    expect(of('male', 40, 0.6)).toBeCloseTo(125.15, 2);
  });

  // Facts 1.2, on the displayed whole number.
  test.each([
    [90, 'G1'],
    [89.5, 'G1'],
    [89.4, 'G2'],
    [60, 'G2'],
    [59.4, 'G3a'],
    [45, 'G3a'],
    [44.4, 'G3b'],
    [30, 'G3b'],
    [29.4, 'G4'],
    [15, 'G4'],
    [14.4, 'G5'],
  ] as const)('[CLT-1] eGFR %d is %s', (rate, category) => {
    expect(gfrCategory(rate)).toBe(category);
  });

  test.each([
    [29.9, 'mg/g', 'A1'],
    [30, 'mg/g', 'A2'],
    [300, 'mg/g', 'A2'],
    [300.1, 'mg/g', 'A3'],
    [2.9, 'mg/mmol', 'A1'],
    [3, 'mg/mmol', 'A2'],
    [30, 'mg/mmol', 'A2'],
    [30.1, 'mg/mmol', 'A3'],
  ] as const)('[CLT-1] albumin to creatinine of %d %s is %s', (acr, unit, category) => {
    expect(albuminuriaCategory(acr, unit)).toEqual({ kind: 'computed', value: category });
  });

  // Facts 6.2: under 10; 10 to 12; over 16 linked to higher mortality.
  test.each([
    [999, 'under 10'],
    [1000, '10 to 12'],
    [1200, '10 to 12'],
    [1201, 'over 12, to 16'],
    [1600, 'over 12, to 16'],
    [1601, 'over 16'],
  ] as const)('[CLT-1] %d mg of phosphorus with 100 g of protein: %s', (mg, band) => {
    expect(resultOf(phosphorusToProtein(mg, 100)).band).toBe(band);
  });

  test('[CLT-1] the adjusted edema-free weight from 95 to 115 % is the weight itself (facts 2, W4)', () => {
    const of = (kg: number) => resultOf(adjustedEdemaFreeWeightKg(kg, 100));
    expect([of(95), of(115)]).toEqual([95, 115]);
    // 94 + 0.25 × 6; 116 − 0.25 × 16.
    expect([of(94), of(116)]).toEqual([95.5, 112]);
  });

  test('[CLT-1] urine protein counts over 5 g a day (facts 5, F5)', () => {
    const of = (urineProteinGPerDay: number) => resultOf(proteinGFromUrine({ ureaNitrogenGPerDay: 8, weightKg: 70, urineProteinGPerDay }));
    // 6.25 × (8 + 0.031 × 70) = 63.5625.
    expect(of(5)).toBeCloseTo(63.5625, 4);
    expect(of(5.5)).toBeCloseTo(69.0625, 4);
  });

  test('[CLT-1] urea in g by 2.14, urea generation in mg a minute (facts 5, F5b, F6)', () => {
    expect(resultOf(ureaNitrogenGFromUreaG(21.4))).toBeCloseTo(10, 9);
    // 9.35 × 8000 / 1440 + 11.04.
    expect(resultOf(proteinGFromUreaGeneration(8))).toBeCloseTo(62.9844, 3);
  });

  test('[CLT-1] ideal weights: Devine of women, Hamwi under 5 feet, and what is short (facts 2, care rules 4)', () => {
    // 45.5 + 2.3 × 4 at 64 in; 50 + 2.3 × 10 at 70 in; 100 − 5 × 2 lb at 58 in; 106 − 6 × 2 lb.
    expect(resultOf(idealWeightKgDevine('female', 162.56))).toBeCloseTo(54.7, 9);
    expect(resultOf(idealWeightKgDevine('male', 177.8))).toBeCloseTo(73, 9);
    expect(resultOf(idealWeightKgHamwi('female', 147.32))).toBeCloseTo(90 * 0.45359237, 6);
    expect(resultOf(idealWeightKgHamwi('male', 147.32))).toBeCloseTo(94 * 0.45359237, 6);
    expect([isShort(152.3), isShort(152.4)]).toEqual([true, false]);
  });

  test('[CLT-1] each bag by its US and its EU label (facts 3.8)', () => {
    const energy = (percent: number, labeledAs: 'dextrose' | 'glucose') =>
      resultOf(absorbedGlucose([{ liters: 1, percent, labeledAs }], 1)).energyKcal;
    const labels = [
      [1.5, 1.36, 51],
      [2.5, 2.27, 85],
      [4.25, 3.86, 144.5],
    ] as const;
    for (const [dextrose, glucose, kcal] of labels) {
      expect(energy(dextrose, 'dextrose')).toBeCloseTo(kcal, 9);
      expect(energy(glucose, 'glucose')).toBeCloseTo(kcal, 9);
    }
  });

  test('[CLT-1] salt, acid load and the risk index off their worked rows', () => {
    expect(resultOf(saltGFromSodiumMg(1000))).toBeCloseTo(2.542, 9);
    // 0.49 × 10 alone; 54.5 × 40 / (391 / 39.1) − 10.2.
    expect(resultOf(acidLoad({ proteinG: 10, phosphorusMg: 0, potassiumMg: 0, magnesiumMg: 0, calciumMg: 0 }))).toBeCloseTo(4.9, 9);
    expect(resultOf(netEndogenousAcidMeq(40, 391))).toBeCloseTo(207.8, 6);
    expect(resultOf(phosphateBinderEquivalentG('sevelamer', 800, 6))).toBeCloseTo(3.6, 9);
  });
});
