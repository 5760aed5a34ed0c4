import type { Source } from '#core/client/rules/source.ts';
import {
  asQuoted,
  commonPractice,
  fromMemory,
  kdigoCkd2024,
  kdigoDiabetes2022,
  kdigoMbd2017,
  kdoqi2000,
  kdoqi2003,
  kdoqi2006,
  kdoqi2020,
  wastingCriteria,
} from '#core/client/rules/sources.ts';
import { type Interval, interval } from '#core/quantity/interval.ts';
import type { Setting } from '../setting.ts';
import type { Analyte } from './analytes.ts';

/** Where a result is wished to be, in the analyte's canonical unit. An open upper end is Infinity, an open lower end 0. */
export interface TargetBand {
  readonly range: Interval;
  readonly says: string;
  readonly source: Source;
}

const open = Number.POSITIVE_INFINITY;
const potassiumAndSurvival: Source = { kind: 'paper', text: 'CJASN 2007;2:999 (observational)' };
const phosphorusSources: Source = { kind: 'paper', text: 'CJASN 2010;5:519' };
const band = (lo: number, hi: number, says: string, source: Source): TargetBand => ({ range: interval(lo, hi), says, source });

const normalPhosphate = band(2.5, 4.5, 'normal range', phosphorusSources);
const phosphateOnDialysis = [
  { ...normalPhosphate, says: 'toward normal; no fixed target', source: asQuoted(kdigoMbd2017()) },
  band(3.5, 5.5, 'older target on dialysis', fromMemory(kdoqi2003())),
];
const calciumOnDialysis = [band(8.4, 9.5, 'older target', fromMemory(kdoqi2003()))];
const hemoglobin = [band(10, 11.5, 'aim under an ESA', fromMemory({ kind: 'guideline', text: 'KDIGO 2012' }))];
const ureaNitrogen = [band(60, 80, 'older construct; a low one can mean poor intake', kdoqi2000('PD'))];
const ironOffHemodialysis = {
  ferritin: [band(100, open, 'over 100', fromMemory(commonPractice))],
  transferrinSaturation: [band(20, open, 'over 20 %', fromMemory(commonPractice))],
};

type Bands = Readonly<Partial<Record<Analyte, readonly TargetBand[]>>>;

/** Clinical facts, section 4.2; no fixed band stands there for potassium and calcium off dialysis, nor for anything after a transplant. */
const bands: Readonly<Record<Setting, Bands>> = {
  'ckd-not-on-dialysis': {
    ...ironOffHemodialysis,
    phosphate: [normalPhosphate, band(2.7, 4.6, 'older target', fromMemory(kdoqi2003()))],
    bicarbonate: [band(24, 26, 'target', fromMemory(kdoqi2020('OPINION'))), band(18, open, 'treated under 18', asQuoted(kdigoCkd2024()))],
    albumin: [band(3.8, open, 'over 3.8; inflammation and fluid lower it', wastingCriteria)],
    hba1c: [band(0, 8, 'under 6.5 to under 8.0 %, set for each person', asQuoted(kdigoDiabetes2022('1C')))],
    glucose: [band(80, 130, 'before meals', fromMemory(commonPractice))],
    hemoglobin,
  },
  hemodialysis: {
    potassium: [band(4.6, 5.3, 'best survival, before the session', potassiumAndSurvival)],
    phosphate: phosphateOnDialysis,
    correctedCalcium: calciumOnDialysis,
    bicarbonate: [
      band(22, open, 'at least 22 or 23', asQuoted(commonPractice)),
      band(18, 24, 'before the session', fromMemory({ kind: 'guideline', text: 'UK Kidney Association' })),
    ],
    albumin: [band(4, open, '4.0 or more wished; inflammation and fluid lower it', commonPractice)],
    ureaNitrogen,
    hba1c: [band(7, 8, 'common; unreliable on dialysis', commonPractice)],
    hemoglobin,
    ferritin: [band(200, 500, 'to 700 by some', fromMemory(commonPractice))],
    transferrinSaturation: [band(20, 40, '20-40 %', fromMemory(commonPractice))],
    spKtV: [band(1.2, open, 'at least 1.2', kdoqi2006('A')), band(1.4, open, 'aim 1.4', kdoqi2006('A'))],
    ureaReduction: [band(65, open, 'at least 65 %', kdoqi2006('A')), band(70, open, 'aim 70 %', kdoqi2006('A'))],
  },
  'peritoneal-dialysis': {
    ...ironOffHemodialysis,
    potassium: [band(3.5, 5, 'usual range', commonPractice)],
    phosphate: phosphateOnDialysis,
    correctedCalcium: calciumOnDialysis,
    bicarbonate: [band(24, 26, 'common', commonPractice)],
    albumin: [band(3.8, open, '3.8 or more; inflammation and fluid lower it', commonPractice)],
    ureaNitrogen,
    hemoglobin,
  },
  transplant: {},
};

/**
 * The target bands of an analyte in a setting; several where sources differ, none where no source gives one. PTH on dialysis is 2 to 9
 * times the laboratory's own upper normal (KDIGO CKD-MBD 2017, as quoted): 130 to 585 pg/mL where that is 65.
 */
export function targetBands(analyte: Analyte, setting: Setting, upperNormal?: number): readonly TargetBand[] {
  if (analyte !== 'pth') return bands[setting][analyte] ?? [];
  if (setting !== 'hemodialysis' && setting !== 'peritoneal-dialysis') return [];
  const older = band(150, 300, 'older target', fromMemory(kdoqi2003()));
  if (upperNormal === undefined) return [older];
  return [band(2 * upperNormal, 9 * upperNormal, '2 to 9 times the upper normal', asQuoted(kdigoMbd2017())), older];
}
