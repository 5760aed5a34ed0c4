import { netEndogenousAcidFacts, netEndogenousAcidMeq, potentialRenalAcidLoadFacts, potentialRenalAcidLoadMeq } from '../acidLoad.ts';
import { computed } from '../computed.ts';
import { geriatricNutritionalRiskIndex, nutritionalRiskIndexFacts } from '../nutritionalRiskIndex.ts';
import { perDayFromPerKg } from '../perKilogram.ts';
import {
  proteinFromUrineFacts,
  proteinGFromUreaGeneration,
  proteinGFromUrine,
  ureaNitrogenGFromUreaG,
  ureaNitrogenGFromUreaMmol,
} from '../proteinFromUrine.ts';
import { describeFormula } from './formula.ts';
import { figure, figureAsEntered, optionalFigure } from './formulaInput.ts';
import { oneFigure } from './formulaResult.ts';
import { albumin, grams, gramsPerDay, milligrams, weight } from './units.ts';

const ureaNitrogen = () => figure('Urea nitrogen in a day’s urine', gramsPerDay, 0, 60);
const proteinEaten = { field: 'intake.proteinG', label: 'protein eaten' } as const;
const perKgCaution = 'The weight is a choice: dry weight on dialysis, and another basis with edema or BMI over 30.';

export const proteinNutritionFormulas = [
  describeFormula({
    name: 'protein-per-day',
    title: 'Protein a day from grams per kilogram',
    subject: 'protein and nutrition',
    purpose: 'A day’s protein from a range per kilogram and the weight it is meant for.',
    inputs: {
      from: figure('From, per kilogram a day', [['g/kg', 1]], 0, 5),
      to: optionalFigure('To, per kilogram a day', [['g/kg', 1]], 0, 5, 'empty where there is no upper end'),
      weight: weight('Weight that it is meant for'),
    },
    formula: ['Protein g/day = g/kg × weight in kg, for each end of the range'],
    results: { protein: { label: 'Protein', unit: 'g/day', decimals: 1 } },
    example: {
      inputs: { from: '0.55', to: '0.60', weight: '70 kg' },
      results: { protein: [38.5, 42] },
      source: 'KDOQI 2020 (1A), worked by hand',
    },
    sources: [{ kind: 'definition', text: 'per kilogram by weight' }],
    cautions: [perKgCaution],
    compute: ({ from, to = Number.POSITIVE_INFINITY, weight: kg }) => oneFigure('protein', perDayFromPerKg({ lo: from, hi: to }, kg)),
  }),
  describeFormula({
    name: 'energy-per-day',
    title: 'Energy a day from kilocalories per kilogram',
    subject: 'protein and nutrition',
    purpose: 'A day’s energy from a range per kilogram and the weight it is meant for.',
    inputs: {
      from: figure('From, per kilogram a day', [['kcal/kg', 1]], 0, 100),
      to: optionalFigure('To, per kilogram a day', [['kcal/kg', 1]], 0, 100, 'empty where there is no upper end'),
      weight: weight('Weight that it is meant for'),
    },
    formula: ['Energy kcal/day = kcal/kg × weight in kg, for each end of the range'],
    results: { energy: { label: 'Energy', unit: 'kcal/day', decimals: 0 } },
    example: {
      inputs: { from: '25', to: '35', weight: '70 kg' },
      results: { energy: [1750, 2450] },
      source: 'KDOQI 2020 (1C), worked by hand',
    },
    sources: [{ kind: 'definition', text: 'per kilogram by weight' }],
    cautions: [perKgCaution, 'On peritoneal dialysis the energy of the dialysate counts in.'],
    compute: ({ from, to = Number.POSITIVE_INFINITY, weight: kg }) => oneFigure('energy', perDayFromPerKg({ lo: from, hi: to }, kg)),
  }),
  describeFormula({
    ...proteinFromUrineFacts,
    name: 'protein-intake-from-urine',
    title: 'Protein intake from urine (Maroni)',
    subject: 'protein and nutrition',
    purpose: 'Estimates protein eaten from the urea nitrogen of a 24-hour urine, not on dialysis.',
    inputs: {
      ureaNitrogen: ureaNitrogen(),
      weight: weight('Weight'),
      urineProtein: optionalFigure('Protein in a day’s urine', gramsPerDay, 0, 60, 'counts only over 5 g/day'),
    },
    formula: ['Protein g/day = 6.25 × (urea nitrogen g/day + 0.031 × weight in kg), and the urine protein where it is over 5 g/day'],
    results: {
      protein: { label: 'Protein eaten', unit: 'g/day', decimals: 1 },
      proteinPerKg: { label: 'Protein per kilogram', unit: 'g/kg/day', decimals: 2 },
    },
    example: {
      inputs: { ureaNitrogen: '8', weight: '70 kg' },
      results: { protein: 63.6, proteinPerKg: 0.91 },
      source: 'Maroni 1985; BMC Nephrol 2016, Table 5',
    },
    fills: [{ result: 'protein', ...proteinEaten }],
    compute(given) {
      const { ureaNitrogen: ureaNitrogenGPerDay, weight: weightKg, urineProtein: urineProteinGPerDay = 0 } = given;
      const outcome = proteinGFromUrine({ ureaNitrogenGPerDay, weightKg, urineProteinGPerDay });
      return outcome.kind === 'refused' ? outcome : computed({ protein: outcome.value, proteinPerKg: outcome.value / weightKg });
    },
  }),
  describeFormula({
    ...proteinFromUrineFacts,
    name: 'protein-intake-from-urea-generation',
    title: 'Protein intake from urea generation',
    subject: 'protein and nutrition',
    purpose: 'The other published form: protein eaten from urea generation alone, without a weight.',
    inputs: { ureaNitrogen: ureaNitrogen() },
    formula: ['Protein g/day = 9.35 × G + 11.04, with G = urea nitrogen in mg/day / 1440, in mg/min'],
    results: { protein: { label: 'Protein eaten', unit: 'g/day', decimals: 1 } },
    example: {
      inputs: { ureaNitrogen: '8' },
      results: { protein: 63 },
      source: 'BMC Nephrol 2016, Table 5, worked by hand: G 5.56 mg/min',
    },
    fills: [{ result: 'protein', ...proteinEaten }],
    compute: given => oneFigure('protein', proteinGFromUreaGeneration(given.ureaNitrogen)),
  }),
  describeFormula({
    name: 'urea-nitrogen-from-urea',
    title: 'Urea nitrogen from urea',
    subject: 'protein and nutrition',
    purpose: 'Turns the urea that a laboratory reports into urea nitrogen, for a day’s urine or dialysate.',
    inputs: {
      urea: figureAsEntered({
        label: 'Urea in a day',
        units: [
          ['mmol', 0.06006],
          ['g', 1],
        ],
        lo: 0,
        hi: 130,
      }),
    },
    formula: ['Urea nitrogen g = urea mmol × 0.028014 (molar mass of N₂) = urea g / 2.14'],
    results: { ureaNitrogen: { label: 'Urea nitrogen', unit: 'g', decimals: 2 } },
    example: { inputs: { urea: '300 mmol' }, results: { ureaNitrogen: 8.4 }, source: 'molar mass' },
    sources: [
      { kind: 'definition', text: 'molar mass' },
      { kind: 'paper', text: 'BMC Nephrol 2016 (s12882-016-0282-y), Table 5: 2.14' },
    ],
    cautions: ['Urea and urea nitrogen (BUN) are not the same figure: look what the laboratory prints.'],
    compute: ({ urea: { value, unit } }) =>
      oneFigure('ureaNitrogen', unit === 'mmol' ? ureaNitrogenGFromUreaMmol(value) : ureaNitrogenGFromUreaG(value)),
  }),
  describeFormula({
    ...nutritionalRiskIndexFacts,
    name: 'geriatric-nutritional-risk-index',
    title: 'Geriatric nutritional risk index (GNRI)',
    subject: 'protein and nutrition',
    purpose: 'A score of nutritional risk from albumin and weight; lower is worse.',
    inputs: { albumin: albumin(), weight: weight('Weight', 'dry weight on dialysis'), ideal: weight('Ideal weight') },
    formula: ['GNRI = 1.489 × albumin in g/L + 41.7 × weight / ideal weight, the ratio at most 1'],
    results: { index: { label: 'GNRI', decimals: 1 } },
    example: {
      inputs: { albumin: '34 g/L', weight: '58 kg', ideal: '62 kg' },
      results: { index: 89.6 },
      source: 'Bouillanne 2005, worked by hand',
    },
    compute: given => oneFigure('index', geriatricNutritionalRiskIndex(given.albumin * 10, given.weight, given.ideal)),
  }),
  describeFormula({
    ...potentialRenalAcidLoadFacts,
    name: 'potential-renal-acid-load',
    subject: 'protein and nutrition',
    purpose: 'Whether a day’s food is acid or alkaline for the kidneys, from five nutrients.',
    inputs: {
      protein: figure('Protein in a day', grams, 0, 500),
      phosphorus: figure('Phosphorus in a day', milligrams, 0, 10_000),
      potassium: figure('Potassium in a day', milligrams, 0, 20_000),
      magnesium: figure('Magnesium in a day', milligrams, 0, 5000),
      calcium: figure('Calcium in a day', milligrams, 0, 10_000),
    },
    formula: ['PRAL mEq/day = 0.49 × protein g + 0.037 × phosphorus mg − 0.021 × potassium mg − 0.026 × magnesium mg − 0.013 × calcium mg'],
    results: { load: { label: 'Potential renal acid load', unit: 'mEq/day', decimals: 1 } },
    example: {
      inputs: { protein: '80', phosphorus: '1200', potassium: '2800', magnesium: '300', calcium: '800' },
      results: { load: 6.6 },
      source: 'Remer, Manz 1995, worked by hand',
    },
    compute: given =>
      oneFigure(
        'load',
        potentialRenalAcidLoadMeq({
          proteinG: given.protein,
          phosphorusMg: given.phosphorus,
          potassiumMg: given.potassium,
          magnesiumMg: given.magnesium,
          calciumMg: given.calcium,
        }),
      ),
  }),
  describeFormula({
    ...netEndogenousAcidFacts,
    name: 'net-endogenous-acid-production',
    subject: 'protein and nutrition',
    purpose: 'A day’s acid from protein and potassium alone.',
    inputs: { protein: figure('Protein in a day', grams, 0, 500), potassium: figure('Potassium in a day', milligrams, 1, 20_000) },
    formula: ['NEAP mEq/day = 54.5 × protein g / potassium mEq − 10.2, with potassium mEq = mg / 39.10'],
    results: { load: { label: 'Net endogenous acid production', unit: 'mEq/day', decimals: 1 } },
    example: {
      inputs: { protein: '80', potassium: '2800' },
      results: { load: 50.7 },
      source: 'Frassetto 1998 (from memory), worked by hand',
    },
    compute: given => oneFigure('load', netEndogenousAcidMeq(given.protein, given.potassium)),
  }),
];
