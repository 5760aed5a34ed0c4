import { anionGapFacts, anionGapMmolPerL, anionGapMmolPerLForAlbumin } from '../anionGap.ts';
import { computed } from '../computed.ts';
import {
  correctedCalciumFacts,
  correctedCalciumMgPerDl,
  correctedCalciumMmolPerL,
  correctedCalciumSiSource,
  correctedCalciumSource,
} from '../correctedCalcium.ts';
import { absorbedPhosphorusMg, phosphorusMgFromProteinG, phosphorusToProtein, phosphorusToProteinFacts } from '../phosphorus.ts';
import { potassiumAfterCookingFacts, potassiumMgAfterCooking } from '../potassiumAfterCooking.ts';
import { describeFormula } from './formula.ts';
import { choice, figure } from './formulaInput.ts';
import { oneFigure } from './formulaResult.ts';
import { albumin, grams, labUnits, milligrams, optionalAlbumin } from './units.ts';

const phosphorus = (label: string) => figure(label, milligrams, 0, 10_000);

export const mineralFormulas = [
  describeFormula({
    ...correctedCalciumFacts,
    name: 'corrected-calcium',
    subject: 'minerals',
    purpose: 'Total calcium as it would be at a normal albumin, in mg/dL.',
    inputs: { calcium: figure('Calcium, total', labUnits('calcium'), 3, 20), albumin: albumin() },
    formula: ['Corrected calcium mg/dL = calcium mg/dL + 0.8 × (4.0 − albumin g/dL), only where albumin is under 4.0 g/dL'],
    results: { calcium: { label: 'Corrected calcium', unit: 'mg/dL', decimals: 2 } },
    example: { inputs: { calcium: '8.4 mg/dL', albumin: '2.8 g/dL' }, results: { calcium: 9.36 }, source: 'dialysis laboratory manual' },
    sources: [correctedCalciumSource],
    compute: given => oneFigure('calcium', correctedCalciumMgPerDl(given.calcium, given.albumin)),
  }),
  describeFormula({
    ...correctedCalciumFacts,
    name: 'corrected-calcium-si',
    title: 'Calcium corrected for albumin, SI form',
    subject: 'minerals',
    purpose: 'Total calcium as it would be at a normal albumin, in mmol/L: the SI form has round figures of its own.',
    inputs: {
      calcium: figure(
        'Calcium, total',
        [
          ['mmol/L', 1],
          ['mg/dL', 0.2495],
        ],
        0.75,
        5,
      ),
      albumin: figure(
        'Albumin',
        [
          ['g/L', 1],
          ['g/dL', 10],
        ],
        5,
        70,
      ),
    },
    formula: ['Corrected calcium mmol/L = calcium mmol/L + 0.02 × (40 − albumin g/L), only where albumin is under 40 g/L'],
    results: { calcium: { label: 'Corrected calcium', unit: 'mmol/L', decimals: 2 } },
    example: {
      inputs: { calcium: '2.10 mmol/L', albumin: '28 g/L' },
      results: { calcium: 2.34 },
      source: 'SI form (from memory), worked by hand',
    },
    sources: [correctedCalciumSiSource],
    compute: given => oneFigure('calcium', correctedCalciumMmolPerL(given.calcium, given.albumin)),
  }),
  describeFormula({
    ...anionGapFacts,
    name: 'anion-gap',
    subject: 'minerals',
    purpose: 'What sodium, chloride and bicarbonate leave unexplained; with albumin also corrected for it.',
    inputs: {
      sodium: figure('Sodium', labUnits('sodium'), 90, 200),
      chloride: figure('Chloride', labUnits('chloride'), 50, 170),
      bicarbonate: figure('Bicarbonate', labUnits('bicarbonate'), 2, 60),
      albumin: optionalAlbumin('for the corrected gap'),
    },
    formula: ['Anion gap mmol/L = sodium − chloride − bicarbonate', 'Corrected = gap + 2.5 × (4.0 − albumin g/dL)'],
    results: {
      gap: { label: 'Anion gap', unit: 'mmol/L', decimals: 0 },
      corrected: { label: 'Corrected for albumin', unit: 'mmol/L', decimals: 0 },
    },
    example: {
      inputs: { sodium: '138 mmol/L', chloride: '102 mmol/L', bicarbonate: '18 mmol/L', albumin: '2.8 g/dL' },
      results: { gap: 18, corrected: 21 },
      source: 'dialysis laboratory manual; the correction from memory',
    },
    compute(given) {
      const gap = anionGapMmolPerL(given.sodium, given.chloride, given.bicarbonate);
      if (gap.kind === 'refused') return gap;
      if (given.albumin === undefined) return computed({ gap: gap.value });
      const corrected = anionGapMmolPerLForAlbumin(gap.value, given.albumin);
      return corrected.kind === 'refused' ? corrected : computed({ gap: gap.value, corrected: corrected.value });
    },
  }),
  describeFormula({
    ...phosphorusToProteinFacts,
    name: 'phosphorus-to-protein',
    subject: 'minerals',
    purpose: 'How much phosphorus comes with each gram of protein, of a food or of a day.',
    inputs: { phosphorus: phosphorus('Phosphorus'), protein: figure('Protein', grams, 0, 500) },
    formula: ['Phosphorus to protein = phosphorus mg / protein g'],
    results: {
      ratio: { label: 'Phosphorus to protein', unit: 'mg/g', decimals: 1 },
      band: { label: 'Band, in mg/g' },
    },
    example: {
      inputs: { phosphorus: '1200', protein: '70' },
      results: { ratio: 17.1, band: 'over 16' },
      source: 'worked by hand; cut-offs of the sources',
    },
    compute(given) {
      const outcome = phosphorusToProtein(given.phosphorus, given.protein);
      return outcome.kind === 'refused' ? outcome : computed({ ratio: outcome.value.mgPerG, band: outcome.value.band });
    },
  }),
  describeFormula({
    name: 'phosphorus-from-protein',
    title: 'Phosphorus that comes with protein',
    subject: 'minerals',
    purpose: 'The phosphorus that a day’s protein brings with it, between the lines of two papers.',
    inputs: { protein: figure('Protein in a day', grams, 0, 500) },
    formula: ['From 78 + 11.8 × protein g to 128 + 14 × protein g, in mg/day'],
    results: { phosphorus: { label: 'Phosphorus', unit: 'mg/day', decimals: 0 } },
    example: { inputs: { protein: '75' }, results: { phosphorus: [963, 1178] }, source: 'both papers (from memory), worked by hand' },
    sources: [
      { kind: 'paper', text: 'Kalantar-Zadeh 2010: 78 + 11.8 × g', toBeConfirmed: true },
      { kind: 'paper', text: 'Boaz, Smetana 1996: 128 + 14 × g', toBeConfirmed: true },
    ],
    cautions: ['Of mixed diets: additives, and what a food really holds, may lie outside.'],
    compute: given => oneFigure('phosphorus', phosphorusMgFromProteinG(given.protein)),
  }),
  describeFormula({
    name: 'absorbed-phosphorus',
    title: 'Absorbed phosphorus',
    subject: 'minerals',
    purpose: 'How much of a day’s phosphorus may be absorbed, by where it comes from; always a range.',
    inputs: {
      additive: phosphorus('From additives'),
      animal: phosphorus('From animal foods, natural'),
      plant: phosphorus('From plant foods, natural'),
    },
    formula: ['Absorbed mg = additive mg × 0.9 to 1 + animal mg × 0.4 to 0.6 + plant mg × 0.2 to 0.4'],
    results: { absorbed: { label: 'Absorbed phosphorus', unit: 'mg/day', decimals: 0 } },
    example: {
      inputs: { additive: '200', animal: '400', plant: '300' },
      results: { absorbed: [400, 560] },
      source: 'Ren Replace Ther 2017 (s41100-017-0095-x), Table 1, worked by hand',
    },
    sources: [
      { kind: 'paper', text: 'Clin J Am Soc Nephrol 2010;5:519', toBeConfirmed: true },
      { kind: 'paper', text: 'Ren Replace Ther 2017 (s41100-017-0095-x), Table 1' },
    ],
    cautions: ['Against it: feeding studies recovered less of the additive (J Ren Nutr 2017 commentary).', 'Binders are not counted.'],
    compute: ({ additive, animal, plant }) =>
      oneFigure('absorbed', absorbedPhosphorusMg({ additiveMg: additive, animalMg: animal, plantMg: plant })),
  }),
  describeFormula({
    ...potassiumAfterCookingFacts,
    name: 'potassium-after-cooking',
    subject: 'minerals',
    purpose: 'How much of its potassium a raw potato keeps.',
    inputs: {
      rawPotassium: figure('Potassium of the raw amount', milligrams, 0, 20_000),
      method: choice('How it is cooked', [
        ['boiled-cubes-1-cm', 'boiled in cubes of 1 cm'],
        ['boiled-shredded', 'boiled, shredded'],
        ['soaked-only', 'soaked only'],
        ['baked-roast-microwave-steam', 'baked, roasted, microwaved or steamed'],
      ]),
    },
    formula: [
      'Potassium kept mg = raw mg × share: boiled cubes 0.5, boiled shredded 0.25, soaked 1, baked, roasted, microwaved, steamed 1',
    ],
    results: { potassium: { label: 'Potassium kept', unit: 'mg', decimals: 0 } },
    example: {
      inputs: { rawPotassium: '420', method: 'boiled-cubes-1-cm' },
      results: { potassium: 210 },
      source: 'Bethke, Jansky 2008',
    },
    compute: given => oneFigure('potassium', potassiumMgAfterCooking(given.rawPotassium, given.method)),
  }),
];
