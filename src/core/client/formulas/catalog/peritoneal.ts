import { computed, refuse } from '../computed.ts';
import {
  absorbedGlucose,
  absorbedGlucoseGByEquilibration,
  absorbedGlucoseGPerLiterGrodstein,
  dialysateGlucoseFacts,
} from '../dialysateGlucose.ts';
import { peritonealProteinFacts, peritonealProteinG } from '../peritonealProtein.ts';
import { describeFormula } from './formula.ts';
import { figure, optionalFigure } from './formulaInput.ts';
import { oneFigure } from './formulaResult.ts';
import { grams, gramsPerDay, liters, noUnit, percent } from './units.ts';

const noBag = {
  ...refuse('not-defined', 'low', 'No bag was given.'),
  found: 'no bag',
  expected: 'the liters of at least one solution',
};
const bag = (label: string) => optionalFigure(label, liters, 0, 30, 'in a day; empty is none');

export const peritonealFormulas = [
  describeFormula({
    ...dialysateGlucoseFacts,
    name: 'dialysate-glucose-energy',
    subject: 'dialysis',
    purpose: 'Energy that a day’s peritoneal dialysate brings, from its bags and the share absorbed.',
    inputs: {
      low: bag('1.5 % dextrose (label in Europe: 1.36 % glucose)'),
      medium: bag('2.5 % dextrose (2.27 % glucose)'),
      high: bag('4.25 % dextrose (3.86 % glucose)'),
      absorbed: figure('Share absorbed', percent, 10, 100, 'the manual has 60 for CAPD, 40 for APD'),
    },
    formula: [
      'Infused g = liters × 10 × dextrose %, added over the bags',
      'Absorbed g = infused × share absorbed',
      'Energy kcal = absorbed g × 3.4 (dextrose monohydrate)',
    ],
    results: {
      energy: { label: 'Energy absorbed', unit: 'kcal/day', decimals: 0 },
      absorbed: { label: 'Dextrose absorbed', unit: 'g/day', decimals: 0 },
      infused: { label: 'Dextrose infused', unit: 'g/day', decimals: 0 },
    },
    example: {
      inputs: { low: '4', medium: '2', high: '2', absorbed: '60' },
      results: { energy: 398, absorbed: 117, infused: 195 },
      source: 'hospital clinical nutrition manual 2013',
    },
    compute({ low = 0, medium = 0, high = 0, absorbed }) {
      if (low + medium + high === 0) return noBag;
      const bags = [
        { liters: low, percent: 1.5, labeledAs: 'dextrose' },
        { liters: medium, percent: 2.5, labeledAs: 'dextrose' },
        { liters: high, percent: 4.25, labeledAs: 'dextrose' },
      ] as const;
      const outcome = absorbedGlucose(bags, absorbed / 100);
      if (outcome.kind === 'refused') return outcome;
      const { energyKcal, absorbedG, infusedG } = outcome.value;
      return computed({ energy: energyKcal, absorbed: absorbedG, infused: infusedG });
    },
  }),
  describeFormula({
    ...dialysateGlucoseFacts,
    name: 'dialysate-glucose-by-equilibration',
    title: 'Absorbed glucose from the equilibration test',
    subject: 'dialysis',
    purpose: 'Glucose absorbed in a day where the equilibration test is known.',
    inputs: {
      infused: figure('Dextrose infused in a day', grams, 0, 1500),
      dialysateToStart: figure('Dialysate glucose at the end by that at the start (D/D0)', noUnit, 0, 1),
    },
    formula: ['Absorbed g = (1 − D/D0) × infused g'],
    results: { absorbed: { label: 'Glucose absorbed', unit: 'g/day', decimals: 0 } },
    example: {
      inputs: { infused: '195', dialysateToStart: '0.4' },
      results: { absorbed: 117 },
      source: 'KDOQI Nutrition 2000 (from memory), worked by hand',
    },
    sources: [{ kind: 'guideline', text: 'KDOQI Nutrition 2000', toBeConfirmed: true }],
    cautions: ['Of the dwell that was tested; others absorb otherwise.', 'Not for icodextrin or amino-acid bags.'],
    compute: given => oneFigure('absorbed', absorbedGlucoseGByEquilibration(given.infused, given.dialysateToStart)),
  }),
  describeFormula({
    ...dialysateGlucoseFacts,
    name: 'dialysate-glucose-grodstein',
    title: 'Absorbed glucose from the mean dextrose (Grodstein)',
    subject: 'dialysis',
    purpose: 'Glucose absorbed per liter of dialysate, from the mean dextrose of a day’s bags.',
    inputs: {
      meanDextrose: figure('Mean dextrose of the bags', [['g/dL', 1]], 1, 4.25, '1.5 % is 1.5 g/dL'),
      volume: optionalFigure('Dialysate in a day', liters, 0.5, 40),
    },
    formula: ['Absorbed g/L = 11.3 × mean dextrose g/dL − 10.9', 'Absorbed g/day = absorbed g/L × liters a day'],
    results: {
      perLiter: { label: 'Glucose absorbed', unit: 'g/L', decimals: 2 },
      perDay: { label: 'Glucose absorbed in a day', unit: 'g/day', decimals: 1 },
    },
    example: {
      inputs: { meanDextrose: '2.4375', volume: '8' },
      results: { perLiter: 16.64, perDay: 133.2 },
      source: 'Grodstein 1981 (from memory), worked by hand',
    },
    sources: [{ kind: 'paper', text: 'Grodstein 1981', toBeConfirmed: true }],
    cautions: ['Of CAPD with four exchanges: not of APD.', 'Not for icodextrin or amino-acid bags.'],
    compute({ meanDextrose, volume }) {
      const outcome = absorbedGlucoseGPerLiterGrodstein(meanDextrose);
      if (outcome.kind === 'refused') return outcome;
      return computed({ perLiter: outcome.value, ...(volume === undefined ? {} : { perDay: outcome.value * volume }) });
    },
  }),
  describeFormula({
    ...peritonealProteinFacts,
    name: 'protein-equivalent-peritoneal',
    title: 'Protein equivalent of nitrogen appearance on peritoneal dialysis',
    subject: 'dialysis',
    purpose: 'Protein eaten on peritoneal dialysis, from urea nitrogen in urine and dialysate.',
    inputs: {
      ureaNitrogen: figure('Urea nitrogen in a day’s urine and dialysate', gramsPerDay, 0, 60),
      dialysateProtein: optionalFigure('Protein in a day’s dialysate', gramsPerDay, 0, 60, 'where it is measured'),
    },
    formula: [
      'Protein g/day = 20.1 + 7.5 × urea nitrogen g/day',
      'Where the dialysate protein is measured: 15.1 + 6.95 × urea nitrogen g/day + its grams',
    ],
    results: { protein: { label: 'Protein equivalent', unit: 'g/day', decimals: 1 } },
    example: {
      inputs: { ureaNitrogen: '6', dialysateProtein: '6' },
      results: { protein: 62.8 },
      source: 'Bergström 1998 (from memory), worked by hand; 65.1 without the protein',
    },
    cautions: [...peritonealProteinFacts.cautions, 'Equals intake only at nitrogen balance.'],
    fills: [{ result: 'protein', field: 'intake.proteinG', label: 'protein eaten' }],
    compute: given => oneFigure('protein', peritonealProteinG(given.ureaNitrogen, given.dialysateProtein)),
  }),
];
