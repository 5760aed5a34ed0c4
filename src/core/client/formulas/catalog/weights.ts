import { adjustedEdemaFreeWeightFacts, adjustedEdemaFreeWeightKg } from '../adjustedEdemaFreeWeight.ts';
import { adjustedWeightFacts, adjustedWeightKg } from '../adjustedWeight.ts';
import { amputationFacts, weightKgBeforeAmputation } from '../amputation.ts';
import { bodyMassIndex, bodyMassIndexFacts } from '../bodyMassIndex.ts';
import { devineWeightFacts, idealWeightFacts, idealWeightKgDevine, idealWeightKgHamwi } from '../idealWeight.ts';
import { weightLossPercent } from '../weightLoss.ts';
import { describeFormula } from './formula.ts';
import { choice, optionalChoice } from './formulaInput.ts';
import { oneFigure } from './formulaResult.ts';
import { sexes } from './kidneyFunction.ts';
import { height, weight } from './units.ts';

const kg = { unit: 'kg', decimals: 1 } as const;

const armParts = [
  ['hand', 'hand, 0.7%'],
  ['forearm-with-hand', 'forearm with hand, 2.3%'],
  ['whole-arm', 'whole arm, 5.0%'],
] as const;
const legParts = [
  ['foot', 'foot, 1.5%'],
  ['lower-leg-with-foot', 'lower leg with foot, 5.9%'],
  ['mid-thigh', 'leg from mid-thigh, about 11%'],
  ['whole-leg', 'whole leg, 16.0%'],
] as const;

export const weightFormulas = [
  describeFormula({
    ...bodyMassIndexFacts,
    name: 'body-mass-index',
    subject: 'weight',
    purpose: 'Weight for height.',
    inputs: { weight: weight('Weight', 'dry weight on dialysis'), height: height() },
    formula: ['BMI = weight in kg / (height in m)²'],
    results: { bmi: { label: 'Body mass index', unit: 'kg/m²', decimals: 1 } },
    example: { inputs: { weight: '82 kg', height: '175 cm' }, results: { bmi: 26.8 }, source: 'by definition' },
    cautions: [...bodyMassIndexFacts.cautions, 'Fluid counts as weight: with edema it reads too high.'],
    compute: given => oneFigure('bmi', bodyMassIndex(given.weight, given.height)),
  }),
  describeFormula({
    ...idealWeightFacts,
    name: 'ideal-weight-hamwi',
    subject: 'weight',
    purpose: 'A reference weight for height and sex.',
    inputs: { sex: choice('Sex that the formula goes by', sexes), height: height() },
    formula: ['Men: 106 lb + 6 lb for each inch over 60. Women: 100 lb + 5 lb for each inch over 60. × 0.45359237 for kg.'],
    results: { ideal: { label: 'Ideal weight', ...kg } },
    example: { inputs: { sex: 'female', height: '163 cm' }, results: { ideal: 54.8 }, source: 'Hamwi 1964, worked by hand' },
    compute: given => oneFigure('ideal', idealWeightKgHamwi(given.sex, given.height)),
  }),
  describeFormula({
    ...devineWeightFacts,
    name: 'ideal-weight-devine',
    subject: 'weight',
    purpose: 'A reference weight for height and sex, made for doses of drugs.',
    inputs: { sex: choice('Sex that the formula goes by', sexes), height: height() },
    formula: ['Men: 50 kg + 2.3 kg for each inch over 60. Women: 45.5 kg + 2.3 kg for each inch over 60. From 5 ft up.'],
    results: { ideal: { label: 'Ideal weight (Devine)', ...kg } },
    example: {
      inputs: { sex: 'male', height: '5 ft 10 in' },
      results: { ideal: 73 },
      source: 'Devine 1974, worked by hand: 50 + 10 × 2.3',
    },
    compute: given => oneFigure('ideal', idealWeightKgDevine(given.sex, given.height)),
  }),
  describeFormula({
    ...adjustedWeightFacts,
    name: 'adjusted-weight-obesity',
    subject: 'weight',
    purpose: 'A weight between ideal and actual, for targets per kilogram in obesity.',
    inputs: { actual: weight('Actual weight, without edema'), ideal: weight('Ideal weight') },
    formula: ['Adjusted weight = ideal + 0.25 × (actual − ideal), in kg, where the actual weight is above the ideal one'],
    results: { adjusted: { label: 'Adjusted weight', ...kg } },
    example: { inputs: { actual: '98 kg', ideal: '54.8 kg' }, results: { adjusted: 65.6 }, source: 'common practice, worked by hand' },
    compute: given => oneFigure('adjusted', adjustedWeightKg(given.actual, given.ideal)),
  }),
  describeFormula({
    ...adjustedEdemaFreeWeightFacts,
    name: 'adjusted-edema-free-weight',
    subject: 'weight',
    purpose: 'A weight between edema-free and standard, for targets per kilogram far from the standard weight.',
    inputs: {
      edemaFree: weight('Edema-free weight', 'after hemodialysis, after drain'),
      standard: weight('Standard weight', 'NHANES II median by sex, age, height and frame'),
    },
    formula: [
      'Adjusted = edema-free + 0.25 × (standard − edema-free), in kg',
      'Only where the edema-free weight is under 95 % or over 115 % of standard; else the edema-free weight stands.',
    ],
    results: { adjusted: { label: 'Adjusted edema-free weight', ...kg } },
    example: {
      inputs: { edemaFree: '98 kg', standard: '62 kg' },
      results: { adjusted: 89 },
      source: 'KDOQI Nutrition 2000, Guideline 12, worked by hand',
    },
    compute: given => oneFigure('adjusted', adjustedEdemaFreeWeightKg(given.edemaFree, given.standard)),
  }),
  describeFormula({
    ...amputationFacts,
    name: 'weight-before-amputation',
    subject: 'weight',
    purpose: 'The weight as it would be with the missing parts, for BMI.',
    inputs: {
      weight: weight('Weight now'),
      rightArm: optionalChoice('Missing of the right arm', armParts),
      leftArm: optionalChoice('Missing of the left arm', armParts),
      rightLeg: optionalChoice('Missing of the right leg', legParts),
      leftLeg: optionalChoice('Missing of the left leg', legParts),
    },
    formula: ['Corrected weight = weight / (1 − missing percent / 100), in kg; the percents of all missing parts added'],
    results: { corrected: { label: 'Weight with the missing parts', ...kg } },
    example: {
      inputs: { weight: '70 kg', rightLeg: 'lower-leg-with-foot' },
      results: { corrected: 74.4 },
      source: 'Osterkamp 1995, worked by hand',
    },
    compute({ weight: kilograms, rightArm, leftArm, rightLeg, leftLeg }) {
      const missing = [rightArm, leftArm, rightLeg, leftLeg].filter(part => part !== undefined);
      return oneFigure('corrected', weightKgBeforeAmputation(kilograms, missing));
    },
  }),
  describeFormula({
    name: 'weight-loss-percent',
    title: 'Weight loss',
    subject: 'weight',
    purpose: 'How much of the usual weight was lost; a minus is a gain.',
    inputs: { usual: weight('Usual weight', 'of the same kind as the weight now'), current: weight('Weight now') },
    formula: ['Loss = (usual − current) / usual × 100, in %'],
    results: { loss: { label: 'Weight loss', unit: '%', decimals: 1 } },
    example: { inputs: { usual: '80 kg', current: '72 kg' }, results: { loss: 10 }, source: 'by definition' },
    sources: [{ kind: 'definition', text: 'definition' }],
    cautions: [
      'Two weights of one kind: fluid taken off is no loss of body mass.',
      'Ask whether it was wanted: only an unwanted loss points to wasting.',
    ],
    fills: [
      { result: 'loss', field: 'weightLoss.percent3Months', label: 'weight loss in 3 months' },
      { result: 'loss', field: 'weightLoss.percent6Months', label: 'weight loss in 6 months' },
    ],
    compute: given => oneFigure('loss', weightLossPercent(given.usual, given.current)),
  }),
];
