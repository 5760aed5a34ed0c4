import { describe, expect, test } from 'vitest';
import { formulaCatalog, runFormula } from './formulaCatalog.ts';

// The clinical facts sheet, "Check values" and section 5: each result with the decimals that the sheet prints, and its unit.
const asPrinted: Readonly<Record<string, readonly string[]>> = {
  'egfr-ckd-epi-2021': ['40 mL/min/1.73 m²', 'G3b: 30 to 44'],
  'gfr-category': ['G4: 15 to 29'],
  'albuminuria-category': ['A2: 30 to 300 mg/g (3 to 30 mg/mmol)'],
  'body-mass-index': ['26.8 kg/m²'],
  'ideal-weight-hamwi': ['54.8 kg'],
  'ideal-weight-devine': ['73.0 kg'],
  'adjusted-weight-obesity': ['65.6 kg'],
  'adjusted-edema-free-weight': ['89.0 kg'],
  'weight-before-amputation': ['74.4 kg'],
  'weight-loss-percent': ['10.0%'],
  'protein-per-day': ['38.5 – 42.0 g/day'],
  'energy-per-day': ['1750 – 2450 kcal/day'],
  'protein-intake-from-urine': ['63.6 g/day', '0.91 g/kg/day'],
  'protein-intake-from-urea-generation': ['63.0 g/day'],
  'urea-nitrogen-from-urea': ['8.40 g'],
  'geriatric-nutritional-risk-index': ['89.6'],
  'potential-renal-acid-load': ['6.6 mEq/day'],
  'net-endogenous-acid-production': ['50.7 mEq/day'],
  'protein-energy-wasting': [
    'protein-energy wasting',
    '3',
    'albumin 3.4 g/dL; BMI 21 kg/m²; energy eaten 22 kcal/kg a day',
    ...['met', 'met', 'not known', 'met'],
  ],
  'corrected-calcium': ['9.36 mg/dL'],
  'corrected-calcium-si': ['2.34 mmol/L'],
  'anion-gap': ['18 mmol/L', '21 mmol/L'],
  'phosphorus-to-protein': ['17.1 mg/g', 'over 16'],
  'phosphorus-from-protein': ['963 – 1178 mg/day'],
  'absorbed-phosphorus': ['400 – 560 mg/day'],
  'phosphate-binder-load': ['3.6 g calcium carbonate a day'],
  'binder-calcium': ['1014 mg/day', '25.3%'],
  'potassium-after-cooking': ['210 mg'],
  'sodium-in-urine': ['3219 mg/day', '140.0 mmol/day', '8.2 g/day', '3576 mg/day'],
  'potassium-in-urine': ['2424 mg/day', '62.0 mmol/day', '2694 mg/day'],
  'kt-v-single-pool': ['1.49'],
  'urea-reduction-ratio': ['71.4%'],
  'npcr-between-sessions': ['1.39 g/kg/day'],
  'npcr-before-session': ['1.05 g/kg/day'],
  'ultrafiltration-rate': ['10.0 mL/kg/h'],
  'interdialytic-weight-gain': ['3.6 kg', '5.0%'],
  'dialysate-glucose-energy': ['398 kcal/day', '117 g/day', '195 g/day'],
  'dialysate-glucose-by-equilibration': ['117 g/day'],
  'dialysate-glucose-grodstein': ['16.64 g/L', '133.2 g/day'],
  'protein-equivalent-peritoneal': ['62.8 g/day'],
  'fluid-from-ultrafiltration-limit': ['1700 mL/day'],
  'fluid-from-urine': ['800 – 1300 mL/day'],
};

/** Inputs that another input of the same formula bounds as well, with what bounds them. */
const boundByOthers: Readonly<Record<string, string>> = {
  'ideal-weight-devine height': 'from 5 feet up',
  'adjusted-weight-obesity actual': 'not under the ideal weight',
  'adjusted-weight-obesity ideal': 'not over the actual weight',
  'protein-per-day from': 'not over the upper end',
  'protein-per-day to': 'not under the lower end',
  'energy-per-day from': 'not over the upper end',
  'energy-per-day to': 'not under the lower end',
  'phosphorus-to-protein protein': 'not 0',
  'kt-v-single-pool bunBefore': 'not under the one after',
  'kt-v-single-pool bunAfter': 'not over the one before',
  'urea-reduction-ratio bunBefore': 'not under the one after',
  'urea-reduction-ratio bunAfter': 'not over the one before',
  'npcr-between-sessions bunAfter': 'not over the one before the next session',
  'npcr-between-sessions bunBeforeNext': 'not under the one after',
  'interdialytic-weight-gain before': 'with the dry weight',
  'interdialytic-weight-gain dry': 'with the weight before',
};

describe('the catalog beside its formulas', () => {
  test.each(formulaCatalog.map(one => [one.name, one] as const))('[CALC-2] %s is shown as the sheet prints it', (name, { example }) => {
    expect(runFormula(name, example.inputs).value?.map(({ text }) => text)).toEqual(asPrinted[name]);
  });

  test('[CALC-4] the formula takes what the catalog says is possible, to both ends', () => {
    for (const { name, inputs, example } of formulaCatalog)
      for (const input of inputs) {
        if (input.kind !== 'figure' || boundByOthers[`${name} ${input.name}`] !== undefined) continue;
        const [unit] = input.units.find(([, factor]) => factor === 1)!;
        for (const value of [input.lo, input.hi])
          expect(runFormula(name, { ...example.inputs, [input.name]: { value, unit } }).issues, `${name} ${input.name} ${value}`).toEqual(
            [],
          );
      }
  });

  // The same figure in each unit: minutes, liters, milliliters, grams, mmol (facts 4.1), feet and inches.
  test.each([
    ['kt-v-single-pool', 'hours', '240 min'],
    ['kt-v-single-pool', 'ultrafiltration', '2800 mL'],
    ['kt-v-single-pool', 'bunBefore', '24.99 mmol/L'],
    ['ultrafiltration-rate', 'hours', '240 min'],
    ['ultrafiltration-rate', 'volume', '2.8 L'],
    ['fluid-from-urine', 'urine', '0.3 L'],
    ['fluid-from-ultrafiltration-limit', 'urine', '0.3 L'],
    ['phosphate-binder-load', 'tablet', '0.8 g'],
    ['binder-calcium', 'tablet', '0.667 g'],
    ['egfr-ckd-epi-2021', 'creatinine', '132.6 umol/L'],
    ['corrected-calcium', 'albumin', '28 g/L'],
    ['corrected-calcium-si', 'albumin', '2.8 g/dL'],
    ['geriatric-nutritional-risk-index', 'albumin', '3.4 g/dL'],
    ['anion-gap', 'sodium', '138 mEq/L'],
    ['sodium-in-urine', 'sodium', '140 mEq'],
    ['sodium-in-urine', 'sodium', '3218.6 mg'],
    ['potassium-in-urine', 'potassium', '2424.2 mg'],
    ['body-mass-index', 'height', '1.75 m'],
    ['ideal-weight-devine', 'height', '70 in'],
    ['ideal-weight-devine', 'height', '177.8 cm'],
  ])('[CALC-5] %s, %s of %s is the worked example', (name, input, value) => {
    const { inputs } = formulaCatalog.find(one => one.name === name)!.example;
    expect(runFormula(name, { ...inputs, [input]: value }).value?.map(({ text }) => text)).toEqual(asPrinted[name]);
  });

  // Own decision, wide on purpose: the least of what is a quotient's divisor, or a plan, is not 0.
  test.each([
    [20, ['body-mass-index weight', 'interdialytic-weight-gain dry', 'kt-v-single-pool weightAfter', 'protein-per-day weight']],
    [100, ['body-mass-index height', 'ideal-weight-hamwi height']],
    [0.5, ['kt-v-single-pool hours', 'ultrafiltration-rate hours', 'corrected-calcium albumin', 'dialysate-glucose-grodstein volume']],
    [
      1,
      [
        'urea-reduction-ratio bunAfter',
        'net-endogenous-acid-production potassium',
        'gfr-category gfr',
        'fluid-from-ultrafiltration-limit gapDays',
      ],
    ],
    [0.3, ['npcr-before-session ktv']],
    [12, ['npcr-between-sessions gapHours']],
    [18, ['egfr-ckd-epi-2021 age']],
    [10, ['dialysate-glucose-energy absorbed']],
    [3, ['corrected-calcium calcium']],
    [
      0,
      [
        'phosphorus-to-protein phosphorus',
        'fluid-from-urine urine',
        'protein-intake-from-urine ureaNitrogen',
        'dialysate-glucose-energy low',
      ],
    ],
  ])('[CALC-4] not under %d: %j', (lo, names) => {
    for (const name of names) {
      const [formula = '', input] = name.split(' ');
      const asked = formulaCatalog.find(one => one.name === formula)!.inputs.find(one => one.name === input);
      expect(asked, name).toMatchObject({ kind: 'figure', lo });
    }
  });
});
