import { asQuoted, kdigoCkd2024 } from '#core/client/rules/sources.ts';
import { type AlbuminuriaCategory, albuminuriaCategory } from '../albuminuriaCategory.ts';
import { computed } from '../computed.ts';
import { egfr, egfrFacts } from '../egfr.ts';
import { type GfrCategory, gfrCategory } from '../gfrCategory.ts';
import { describeFormula } from './formula.ts';
import { choice, figure, figureAsEntered } from './formulaInput.ts';
import { labUnits } from './units.ts';

export const sexes = [
  ['female', 'female'],
  ['male', 'male'],
] as const;

const gfrWords: Readonly<Record<GfrCategory, string>> = {
  G1: 'G1: 90 or more',
  G2: 'G2: 60 to 89',
  G3a: 'G3a: 45 to 59',
  G3b: 'G3b: 30 to 44',
  G4: 'G4: 15 to 29',
  G5: 'G5: under 15',
};

const albuminuriaWords: Readonly<Record<AlbuminuriaCategory, string>> = {
  A1: 'A1: under 30 mg/g (3 mg/mmol)',
  A2: 'A2: 30 to 300 mg/g (3 to 30 mg/mmol)',
  A3: 'A3: over 300 mg/g (30 mg/mmol)',
};

const oneResult = 'One result makes no stage: chronic means for at least 3 months, and G1 and G2 are CKD only with a marker of damage.';

export const kidneyFunctionFormulas = [
  describeFormula({
    ...egfrFacts,
    name: 'egfr-ckd-epi-2021',
    subject: 'kidney function',
    purpose: 'Estimates the filtration rate of an adult from creatinine in blood, age and sex, without race.',
    inputs: {
      sex: choice('Sex that the formula goes by', sexes),
      age: figure('Age', [['years', 1]], 18, 120, 'adults alone'),
      creatinine: figure('Creatinine in serum (IDMS-traceable)', labUnits('creatinine'), 0.1, 30),
    },
    formula: [
      'eGFR = 142 × min(creatinine / k, 1)^a × max(creatinine / k, 1)^−1.200 × 0.9938^age × s',
      'Women: k 0.7, a −0.241, s 1.012. Men: k 0.9, a −0.302, s 1. Creatinine in mg/dL (umol/L / 88.4), age in years.',
    ],
    results: {
      egfr: { label: 'eGFR', unit: egfrFacts.unit, decimals: 0 },
      category: { label: 'Category of the number shown' },
    },
    example: {
      inputs: { sex: 'female', age: '60', creatinine: '1.50 mg/dL' },
      results: { egfr: 40, category: gfrWords.G3b },
      source: 'coefficients of Inker 2021; 39.65 before rounding',
    },
    cautions: [...egfrFacts.cautions, oneResult],
    compute({ sex, age, creatinine }) {
      const outcome = egfr({ sex, ageYears: age, creatinineMgPerDl: creatinine });
      if (outcome.kind === 'refused') return outcome;
      return computed({ egfr: outcome.value.egfrMlPerMin173, category: gfrWords[outcome.value.category] });
    },
  }),
  describeFormula({
    name: 'gfr-category',
    title: 'GFR category',
    subject: 'kidney function',
    purpose: 'Puts a reported GFR into its category, by the whole number that is shown.',
    inputs: { gfr: figure('eGFR or measured GFR', [['mL/min/1.73 m²', 1]], 1, 200) },
    formula: ['G1 90 or more, G2 60 to 89, G3a 45 to 59, G3b 30 to 44, G4 15 to 29, G5 under 15 mL/min/1.73 m²'],
    results: { category: { label: 'Category' } },
    example: {
      inputs: { gfr: '14.87' },
      results: { category: gfrWords.G4 },
      source: 'KDIGO CKD 2024: 14.87 is shown as 15',
    },
    sources: [asQuoted(kdigoCkd2024())],
    cautions: [oneResult, 'Not on dialysis.'],
    compute: ({ gfr }) => computed({ category: gfrWords[gfrCategory(gfr)] }),
  }),
  describeFormula({
    name: 'albuminuria-category',
    title: 'Albuminuria category',
    subject: 'kidney function',
    purpose: 'Puts a urine albumin-to-creatinine ratio into its category, by the cut-offs of the unit it came in.',
    inputs: {
      acr: figureAsEntered({
        label: 'Urine albumin to creatinine',
        units: [
          ['mg/g', 1],
          ['mg/mmol', 1],
        ],
        lo: 0,
        hi: 30_000,
      }),
    },
    formula: ['A1 under 30 mg/g or 3 mg/mmol, A2 to 300 mg/g or 30 mg/mmol, A3 over that. The ratio is never converted first.'],
    results: { category: { label: 'Category' } },
    example: { inputs: { acr: '3.0 mg/mmol' }, results: { category: albuminuriaWords.A2 }, source: 'KDIGO CKD 2024' },
    sources: [asQuoted(kdigoCkd2024())],
    cautions: [
      '30 mg/g is 3.39 mg/mmol; the guideline rounds its cut-offs apart.',
      'Repeat it: fever, exercise and infection raise it for a time.',
    ],
    compute({ acr }) {
      const outcome = albuminuriaCategory(acr.value, acr.unit);
      return outcome.kind === 'refused' ? outcome : computed({ category: albuminuriaWords[outcome.value] });
    },
  }),
];
