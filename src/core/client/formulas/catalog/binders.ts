import { binderCalciumFacts, binderCalciumMg, calciumShare } from '../binderCalcium.ts';
import { computed } from '../computed.ts';
import { phosphateBinderEquivalentG, phosphateBinderFacts } from '../phosphateBinder.ts';
import { describeFormula } from './formula.ts';
import { choice, figure } from './formulaInput.ts';
import { oneFigure } from './formulaResult.ts';

const strength = (label: string, help?: string) =>
  figure(
    label,
    [
      ['mg', 1],
      ['g', 1000],
    ],
    1,
    3000,
    help,
  );

export const binderFormulas = [
  describeFormula({
    ...phosphateBinderFacts,
    name: 'phosphate-binder-load',
    subject: 'minerals',
    purpose: 'What a day’s binder tablets come to in grams of calcium carbonate, to compare binders.',
    inputs: {
      binder: choice('Binder', [
        ['calcium-carbonate', 'calcium carbonate'],
        ['calcium-acetate', 'calcium acetate'],
        ['magnesium-carbonate-anhydrous', 'magnesium carbonate, anhydrous'],
        ['magnesium-carbonate-hydrated', 'magnesium carbonate, hydrated'],
        ['lanthanum', 'lanthanum carbonate, mg of the element'],
        ['sevelamer', 'sevelamer'],
        ['aluminum-hydroxide', 'aluminum hydroxide'],
        ['aluminum-carbonate', 'aluminum carbonate'],
      ]),
      tablet: strength('Strength of a tablet'),
      tabletsPerDay: figure('Tablets a day', [['', 1]], 0, 40),
    },
    formula: [
      'Equivalent g/day = tablet mg / 1000 × tablets a day × coefficient',
      'Coefficients: calcium carbonate and acetate 1.0, magnesium carbonate 1.7 (anhydrous) or 1.3 (hydrated), lanthanum 2.0, sevelamer 0.75, aluminum hydroxide 1.5, aluminum carbonate 1.9. Iron binders are left out: theirs are per tablet.',
    ],
    results: { equivalent: { label: 'Equivalent dose', unit: 'g calcium carbonate a day', decimals: 1 } },
    example: {
      inputs: { binder: 'sevelamer', tablet: '800 mg', tabletsPerDay: '6' },
      results: { equivalent: 3.6 },
      source: 'Daugirdas, Semin Dial 2011 (journal from memory)',
    },
    compute: ({ binder, tablet, tabletsPerDay }) => oneFigure('equivalent', phosphateBinderEquivalentG(binder, tablet, tabletsPerDay)),
  }),
  describeFormula({
    ...binderCalciumFacts,
    name: 'binder-calcium',
    subject: 'minerals',
    purpose: 'The calcium that a day’s tablets of a calcium binder bring, beside that of food.',
    inputs: {
      binder: choice('Binder', [
        ['calcium-carbonate', 'calcium carbonate'],
        ['calcium-acetate', 'calcium acetate'],
      ]),
      tablet: strength('Strength of a tablet', 'Of the compound: 1250 mg calcium carbonate hold 500 mg calcium.'),
      tabletsPerDay: figure('Tablets a day', [['', 1]], 0, 60),
    },
    formula: [
      'Calcium mg/day = tablet mg × tablets a day × share',
      'Share = 40.078 / mass of the formula: CaCO3 100.086, so 0.4004; Ca(CH3COO)2 158.166, so 0.2534',
    ],
    results: {
      calcium: { label: 'Calcium', unit: 'mg/day', decimals: 0 },
      share: { label: 'Share of calcium', unit: '%', decimals: 1 },
    },
    example: {
      inputs: { binder: 'calcium-acetate', tablet: '667 mg', tabletsPerDay: '6' },
      results: { calcium: 1014, share: 25.3 },
      source: 'facts of kidney nutrition 6.4: 667 mg hold 169 mg, 6 a day 1014 mg',
    },
    compute({ binder, tablet, tabletsPerDay }) {
      const calcium = binderCalciumMg(binder, tablet, tabletsPerDay);
      return calcium.kind === 'refused' ? calcium : computed({ calcium: calcium.value, share: calciumShare[binder] * 100 });
    },
  }),
];
