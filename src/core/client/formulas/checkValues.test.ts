import { describe, expect, it } from 'vitest';
import { labInCanonicalUnit, labInUnit } from '#core/client/labs/labValue.ts';
import { contrastRatio, leastTextContrast } from '#core/guide/contrast.fixture.ts';
import { fleschKincaidGrade } from '#core/handout/readability.ts';
import { builtInPlates } from '#core/plate/builtInPlates.ts';
import { foodWith } from '#core/plate/plateFixture.ts';
import { sodiumMgFromSaltG } from '#core/quantity/convert.ts';
import { floorTo, roundHalfUp } from '#core/quantity/rounding.ts';
import { builtInYardsticks } from '#core/yardstick/builtInYardsticks.ts';
import { judgePlate } from '#core/yardstick/judgePlate.ts';
import type { Measure, Test } from '#core/yardstick/yardstick.ts';
import { netEndogenousAcidMeq, potentialRenalAcidLoadMeq } from './acidLoad.ts';
import { adjustedEdemaFreeWeightKg } from './adjustedEdemaFreeWeight.ts';
import { adjustedWeightKg } from './adjustedWeight.ts';
import { albuminuriaCategory } from './albuminuriaCategory.ts';
import { weightKgBeforeAmputation } from './amputation.ts';
import { anionGapMmolPerL } from './anionGap.ts';
import { bodyMassIndex } from './bodyMassIndex.ts';
import type { Computed } from './computed.ts';
import { correctedCalciumMgPerDl, correctedCalciumMmolPerL } from './correctedCalcium.ts';
import { absorbedGlucose, absorbedGlucoseGPerLiterGrodstein, type DialysateBag } from './dialysateGlucose.ts';
import { spKtV, ureaReductionPercent } from './dialysisDose.ts';
import { egfr, type Sex } from './egfr.ts';
import { fluidAllowanceMlFromUltrafiltration } from './fluidAllowance.ts';
import { idealWeightKgHamwi } from './idealWeight.ts';
import { interdialyticGain } from './interdialyticGain.ts';
import { geriatricNutritionalRiskIndex } from './nutritionalRiskIndex.ts';
import { peritonealProteinG } from './peritonealProtein.ts';
import { perDayFromPerKg } from './perKilogram.ts';
import { phosphateBinderEquivalentG } from './phosphateBinder.ts';
import { phosphorusMgFromProteinG, phosphorusToProtein } from './phosphorus.ts';
import { potassiumMgAfterCooking } from './potassiumAfterCooking.ts';
import { nPcrGPerKgFromRise, nPcrGPerKgFromSession } from './proteinCatabolicRate.ts';
import { proteinGFromUrine, ureaNitrogenGFromUreaMmol } from './proteinFromUrine.ts';
import { potassiumMgFromMmol, potassiumMmolFromMg, saltGFromSodiumMg, sodiumMgFromMmol, sodiumMmolFromMg } from './urineMinerals.ts';

// The 63 check values of the clinical facts sheet, each with its source. Shown half up; the sheet accepts ± 1 in the last digit,
// these are held exactly.

function resultOf<Value>(result: Computed<Value>): Value {
  if (result.kind === 'refused') throw new Error(result.told);
  return result.value;
}

const shown = (result: Computed, decimals: number) => roundHalfUp(resultOf(result), decimals);

const checked = new Set<number>();

/** One check value: its number is in the title, and kept so that none can be forgotten. */
function check(numbers: number | readonly number[], title: string, assert: () => void): void {
  for (const number of [numbers].flat()) {
    checked.add(number);
    it(`[CLT-1] check value ${number}: ${title}`, assert);
  }
}

const egfrOf = (sex: Sex, ageYears: number, creatinineMgPerDl: number) => {
  const { egfrMlPerMin173, shownMlPerMin173, category } = resultOf(egfr({ sex, ageYears, creatinineMgPerDl }));
  return [roundHalfUp(egfrMlPerMin173, 2), shownMlPerMin173, category];
};

const bag = (liters: number, percent: number): DialysateBag => ({ liters, percent, labeledAs: 'dextrose' });
const glucose = (bags: DialysateBag[], share: number) => {
  const { absorbedG, energyKcal } = resultOf(absorbedGlucose(bags, share));
  return [roundHalfUp(absorbedG, 1), roundHalfUp(energyKcal, 0)];
};

describe('staging', () => {
  // Inker, N Engl J Med 2021;385:1737.
  check(1, 'eGFR of a woman of 45 with 0.70 mg/dL', () => expect(egfrOf('female', 45, 0.7)).toEqual([108.62, 109, 'G1']));
  check(2, 'eGFR of a woman of 60 with 1.50 mg/dL', () => expect(egfrOf('female', 60, 1.5)).toEqual([39.65, 40, 'G3b']));
  check(3, 'eGFR of a man of 60 with 1.50 mg/dL', () => expect(egfrOf('male', 60, 1.5)).toEqual([52.97, 53, 'G3a']));
  check(4, 'eGFR of a man of 75 with 4.00 mg/dL is classed as shown', () => expect(egfrOf('male', 75, 4)).toEqual([14.87, 15, 'G4']));
  check(5, 'eGFR from 132.6 umol/L', () =>
    expect(egfrOf('female', 60, resultOf(labInCanonicalUnit('creatinine', 132.6, 'umol/L')))).toEqual([39.65, 40, 'G3b']),
  );
  // KDIGO CKD 2024.
  check(6, 'ACR 30 mg/g is A2', () => expect(resultOf(albuminuriaCategory(30, 'mg/g'))).toBe('A2'));
  check(7, 'ACR 3.0 mg/mmol is A2 by its own cut-off', () => expect(resultOf(albuminuriaCategory(3, 'mg/mmol'))).toBe('A2'));
});

describe('weight', () => {
  check(8, 'BMI of 82 kg at 175 cm', () => expect(shown(bodyMassIndex(82, 175), 1)).toBe(26.8));
  // Hamwi 1964 (from memory).
  check(9, 'ideal weight of a woman of 163 cm', () => expect(shown(idealWeightKgHamwi('female', 163), 1)).toBe(54.8));
  check(10, 'ideal weight of a man of 178 cm', () => expect(shown(idealWeightKgHamwi('male', 178), 1)).toBe(75.5));
  check(11, 'adjusted weight of a woman of 163 cm and 98 kg', () =>
    expect(shown(adjustedWeightKg(98, resultOf(idealWeightKgHamwi('female', 163))), 1)).toBe(65.6),
  );
  // KDOQI Nutrition 2000, Guideline 12.
  check(12, 'adjusted edema-free weight of 98 kg, standard 62', () => expect(shown(adjustedEdemaFreeWeightKg(98, 62), 1)).toBe(89.0));
  check(13, 'adjusted edema-free weight of 48 kg, standard 62', () => expect(shown(adjustedEdemaFreeWeightKg(48, 62), 1)).toBe(51.5));
  check(14, 'adjusted edema-free weight of 66 kg stays', () => expect(shown(adjustedEdemaFreeWeightKg(66, 62), 1)).toBe(66.0));
  // Osterkamp 1995 (as quoted).
  check(15, '70.0 kg without a lower leg', () => expect(shown(weightKgBeforeAmputation(70, ['lower-leg-with-foot']), 1)).toBe(74.4));
});

describe('energy and protein', () => {
  // KDOQI 2020 (1A) and (HD, 1C).
  check(16, 'protein at 0.55-0.60 g/kg and 70 kg', () =>
    expect(resultOf(perDayFromPerKg({ lo: 0.55, hi: 0.6 }, 70))).toEqual({ lo: 38.5, hi: 42 }),
  );
  check(17, 'protein at 1.0-1.2 g/kg and 70 kg', () =>
    expect(resultOf(perDayFromPerKg({ lo: 1, hi: 1.2 }, 70))).toEqual({ lo: 70, hi: 84 }),
  );
  // Hospital clinical nutrition manual 2013.
  check(18, 'glucose of a CAPD day at 60 %', () =>
    expect(glucose([bag(2, 1.5), bag(2, 1.5), bag(2, 2.5), bag(2, 4.25)], 0.6)).toEqual([117, 398]),
  );
  check(19, 'glucose of an APD day at 40 %', () => expect(glucose([bag(10, 2.5)], 0.4)).toEqual([100, 340]));
  check(20, 'glucose of 4 L 1.5 % and 4 L 4.25 % at 60 %', () => expect(glucose([bag(4, 1.5), bag(4, 4.25)], 0.6)).toEqual([138, 469]));
  check(21, 'glucose by Grodstein 1981 (from memory)', () => {
    expect(shown(absorbedGlucoseGPerLiterGrodstein(2.4375), 2)).toBe(16.64);
    expect(roundHalfUp(8 * resultOf(absorbedGlucoseGPerLiterGrodstein(2.4375)), 1)).toBe(133.2);
  });
});

describe('blood', () => {
  // Dialysis laboratory manual; its SI form from memory.
  check(22, 'corrected calcium 8.4 with albumin 2.8', () => expect(shown(correctedCalciumMgPerDl(8.4, 2.8), 2)).toBe(9.36));
  check(23, 'corrected calcium 2.10 mmol/L with 28 g/L', () => expect(shown(correctedCalciumMmolPerL(2.1, 28), 2)).toBe(2.34));
  check(24, 'no correction at albumin 4.2', () => expect(shown(correctedCalciumMgPerDl(9.6, 4.2), 2)).toBe(9.6));
  check(25, 'anion gap 138 − 102 − 18', () => expect(shown(anionGapMmolPerL(138, 102, 18), 0)).toBe(18));
});

describe('protein equivalents', () => {
  const rise = { bunAfterMgPerDl: 18, bunBeforeNextMgPerDl: 70, gapHours: 44 };
  // Nephrology teaching note 2009; formula page.
  check(26, 'nPCR from 18 to 70 mg/dL in 44 h', () => expect(shown(nPcrGPerKgFromRise(rise), 2)).toBe(1.24));
  check(27, 'nPCR with 3 g urea nitrogen in urine', () =>
    expect(shown(nPcrGPerKgFromRise({ ...rise, urine: { ureaNitrogenG: 3, weightKg: 70 } }), 2)).toBe(1.39),
  );
  // Depner, Daugirdas, J Am Soc Nephrol 1996;7:780.
  check(28, 'nPCR midweek', () => expect(shown(nPcrGPerKgFromSession('midweek', 60, 1.4), 2)).toBe(1.05));
  // By hand, to four places, so that no coefficient can be another one: 60 / (25.8 + 1.61 + 56.4 / 1.4) + 0.168 and so on.
  check(28, 'nPCR of each day, four places', () =>
    expect(
      [nPcrGPerKgFromSession('midweek', 60, 1.4), nPcrGPerKgFromSession('first', 70, 1.4), nPcrGPerKgFromSession('last', 60, 1.4)].map(
        one => shown(one, 4),
      ),
    ).toEqual([1.0543, 1.0197, 1.1242]),
  );
  check(29, 'nPCR at the first session of the week', () => expect(shown(nPcrGPerKgFromSession('first', 70, 1.4), 2)).toBe(1.02));
  check(30, 'nPCR at the last session of the week', () => expect(shown(nPcrGPerKgFromSession('last', 60, 1.4), 2)).toBe(1.12));
  // Maroni 1985; BMC Nephrol 2016, Table 5.
  check(31, 'Maroni, 8 g/d at 70 kg', () => {
    const protein = resultOf(proteinGFromUrine({ ureaNitrogenGPerDay: 8, weightKg: 70 }));
    expect([roundHalfUp(protein, 1), roundHalfUp(protein / 70, 2)]).toEqual([63.6, 0.91]);
  });
  check(32, 'Maroni, 10 g/d at 80 kg', () => {
    const protein = resultOf(proteinGFromUrine({ ureaNitrogenGPerDay: 10, weightKg: 80 }));
    expect([roundHalfUp(protein, 1), roundHalfUp(protein / 80, 2)]).toEqual([78, 0.98]);
  });
  check(33, 'urea 300 mmol to urea nitrogen', () => expect(shown(ureaNitrogenGFromUreaMmol(300), 2)).toBe(8.4));
  // Bergström 1998 (from memory).
  check(34, 'protein equivalent on peritoneal dialysis', () => expect(shown(peritonealProteinG(6), 1)).toBe(65.1));
});

describe('urine and salt', () => {
  check(35, 'sodium and salt of 140 mmol', () => {
    expect(shown(sodiumMgFromMmol(140), 0)).toBe(3219);
    expect(shown(saltGFromSodiumMg(resultOf(sodiumMgFromMmol(140))), 1)).toBe(8.2);
  });
  check(36, 'potassium of 62 mmol', () => expect(shown(potassiumMgFromMmol(62), 0)).toBe(2424));
  check(37, 'mmol of 2300 mg sodium and 3000 mg potassium', () => {
    expect(shown(sodiumMmolFromMg(2300), 0)).toBe(100);
    expect(shown(potassiumMmolFromMg(3000), 1)).toBe(76.7);
  });
  // Regulation (EU) 1169/2011, Annex I.
  check(38, 'label salt 1.25 g', () => expect(roundHalfUp(sodiumMgFromSaltG(1.25), 0)).toBe(500));
});

describe('dialysis', () => {
  check(39, 'interdialytic gain 75.6 over dry 72.0', () => {
    const { gainKg, gainPercent } = resultOf(interdialyticGain(75.6, 72));
    expect([roundHalfUp(gainKg, 1), roundHalfUp(gainPercent, 1)]).toEqual([3.6, 5]);
  });
  // Conference abstract, Australian and New Zealand Society of Nephrology.
  const uf = { ultrafiltrationMlPerKgH: 10, sessionHours: 4, targetWeightKg: 70, urineMlPerDay: 300 };
  check(40, 'fluid allowance with a gap of 2 days', () =>
    expect(shown(fluidAllowanceMlFromUltrafiltration({ ...uf, gapDays: 2 }), 0)).toBe(1700),
  );
  check(41, 'fluid allowance with a gap of 3 days', () =>
    expect(shown(fluidAllowanceMlFromUltrafiltration({ ...uf, gapDays: 3 }), 0)).toBe(1233),
  );
  // Daugirdas, J Am Soc Nephrol 1993;4:1205.
  const dose = (before: number, after: number, hours: number, liters: number, kg: number) => [
    shown(spKtV({ bunBeforeMgPerDl: before, bunAfterMgPerDl: after, hours, ultrafiltrationL: liters, weightAfterKg: kg }), 2),
    shown(ureaReductionPercent(before, after), 1),
  ];
  check(42, 'spKt/V and URR, 70 to 20 in 4 h', () => expect(dose(70, 20, 4, 2.8, 70)).toEqual([1.49, 71.4]));
  check(43, 'spKt/V and URR, 80 to 28 in 3.5 h', () => expect(dose(80, 28, 3.5, 2, 62)).toEqual([1.22, 65]));
});

describe('diet', () => {
  // Remer, Manz 1995 (as quoted); Frassetto 1998 (from memory).
  const pral = (proteinG: number, phosphorusMg: number, potassiumMg: number, magnesiumMg: number, calciumMg: number) =>
    shown(potentialRenalAcidLoadMeq({ proteinG, phosphorusMg, potassiumMg, magnesiumMg, calciumMg }), 1);
  check(44, 'PRAL of an acid day', () => expect(pral(80, 1200, 2800, 300, 800)).toBe(6.6));
  check(45, 'PRAL of an alkaline day', () => expect(pral(50, 800, 3500, 350, 900)).toBe(-40.2));
  check(46, 'NEAP of 80 g protein and 2800 mg potassium', () => expect(shown(netEndogenousAcidMeq(80, 2800), 1)).toBe(50.7));
  check(47, 'phosphorus to protein 1200 mg to 70 g', () => {
    const { mgPerG, band } = resultOf(phosphorusToProtein(1200, 70));
    expect([roundHalfUp(mgPerG, 1), band]).toEqual([17.1, 'over 16']);
  });
  check(48, 'phosphorus to no protein is not defined', () => {
    expect(phosphorusToProtein(40, 0)).toMatchObject({ kind: 'refused', why: 'not-defined' });
    expect(ratioOf({ phosphorusMg: 40, proteinG: 0 }, { kind: 'ratio', nutrient: 'phosphorusMg', per: 'proteinG' }).verdict).toBe(
      "can't tell",
    );
  });
  // Boaz, Smetana 1996; Kalantar-Zadeh 2010 (both from memory).
  check(49, 'phosphorus of 75 g protein', () => expect(resultOf(phosphorusMgFromProteinG(75))).toEqual({ lo: 963, hi: 1178 }));
  // Common practice, no source: the existing tests of the yardstick.
  check(50, '480 mg sodium in 300 kcal is 1.60 mg/kcal and over', () => {
    const verdict = ratioOf({ sodiumMg: 480, energyKcal: 300 }, { kind: 'ratio', nutrient: 'sodiumMg', per: 'energyKcal' });
    expect(roundHalfUp(verdict.judged!.hi, 2)).toBe(1.6);
    expect(verdict.verdict).toBe('over');
    const asEaten = builtInYardsticks.find(({ id }) => id === 'low-in-sodium-as-eaten')!;
    const food = foodWith('Soup', { panel: { sodiumMg: 480, energyKcal: 300 } });
    expect(judgePlate({ food, plate: alone, yardstick: asEaten }).verdict).toBe('over');
  });
  // Daugirdas, Semin Dial 2011.
  check(51, '6 × 800 mg sevelamer', () => expect(shown(phosphateBinderEquivalentG('sevelamer', 800, 6), 1)).toBe(3.6));
  // Bethke, Jansky, J Food Sci 2008;73:H80.
  check(52, 'potassium in boiled cubes', () => expect(shown(potassiumMgAfterCooking(420, 'boiled-cubes-1-cm'), 0)).toBe(210));
  check(53, 'soaking earns no credit', () => expect(shown(potassiumMgAfterCooking(420, 'soaked-only'), 0)).toBe(420));
});

describe('units', () => {
  check(54, 'BUN 70 mg/dL', () => expect(shown(labInUnit('ureaNitrogen', 70, 'mmol/L'), 1)).toBe(25));
  check(55, 'phosphate 5.5 mg/dL', () => expect(shown(labInUnit('phosphate', 5.5, 'mmol/L'), 2)).toBe(1.78));
  check(56, 'PTH 300 pg/mL', () => expect(shown(labInUnit('pth', 300, 'pmol/L'), 1)).toBe(31.8));
  check(57, 'HbA1c 7.0 % (from memory)', () => expect(shown(labInUnit('hba1c', 7, 'mmol/mol'), 0)).toBe(53));
});

describe('risk', () => {
  // Bouillanne 2005.
  check(58, 'GNRI of 34 g/L, 58 of 62 kg', () => expect(shown(geriatricNutritionalRiskIndex(34, 58, 62), 1)).toBe(89.6));
  check(59, 'GNRI with the ratio capped', () => expect(shown(geriatricNutritionalRiskIndex(40, 80, 62), 1)).toBe(101.3));
});

describe('what is printed', () => {
  // Kincaid 1975.
  check(60, 'grade of 120 words', () =>
    expect(roundHalfUp(fleschKincaidGrade({ words: 120, sentences: 12, syllables: 156 })!, 2)).toBe(3.65),
  );
  check(61, 'grade of 100 words', () =>
    expect(roundHalfUp(fleschKincaidGrade({ words: 100, sentences: 5, syllables: 150 })!, 2)).toBe(9.91),
  );
  // WCAG 2.2 SC 1.4.3; truncated for display.
  check(62, '#767676 on #FFFFFF passes', () => {
    expect(floorTo(contrastRatio('#767676', '#FFFFFF')!, 2)).toBe(4.54);
    expect(contrastRatio('#767676', '#FFFFFF')!).toBeGreaterThanOrEqual(leastTextContrast);
  });
  check(63, '#777777 on #FFFFFF fails', () => {
    expect(floorTo(contrastRatio('#777777', '#FFFFFF')!, 2)).toBe(4.47);
    expect(contrastRatio('#777777', '#FFFFFF')!).toBeLessThan(leastTextContrast);
  });
});

it('[CLT-1] no check value from 1 to 63 lacks a test', () => {
  expect([...checked].sort((a, b) => a - b)).toEqual(Array.from({ length: 63 }, (_, at) => at + 1));
});

const alone = builtInPlates.find(({ id }) => id === 'on-its-own')!;

function ratioOf(panel: Record<string, number>, measure: Measure) {
  const test: Test = { id: 'ratio', measure, basis: 'as-eaten', atMost: 1, source: { kind: 'common-practice', text: 'common practice' } };
  const yardstick = { id: 'own', title: 'own', purpose: '', tests: [test], classScales: [], settings: 'any' as const, cautions: [] };
  return judgePlate({ food: foodWith('Food', { panel }), plate: alone, yardstick }).tests[0]!;
}
