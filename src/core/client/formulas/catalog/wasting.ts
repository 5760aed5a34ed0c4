import { computed } from '../computed.ts';
import { proteinEnergyWasting, proteinEnergyWastingFacts } from '../proteinEnergyWasting.ts';
import { describeFormula } from './formula.ts';
import { choice, optionalFigure, yesNo } from './formulaInput.ts';
import { labUnits, optionalAlbumin, percent } from './units.ts';

/** The criteria need no figure at all: what is not known leaves its group open. */
export const wastingFormula = describeFormula({
  ...proteinEnergyWastingFacts,
  name: 'protein-energy-wasting',
  title: 'Protein-energy wasting criteria',
  subject: 'protein and nutrition',
  purpose: 'Goes through the four groups of the published criteria; what is not known leaves its group open.',
  inputs: {
    onDialysis: yesNo('On dialysis'),
    lossCause: choice('A loss of weight was', [
      ['not-asked', 'not asked yet'],
      ['unintended', 'unintended'],
      ['wanted', 'wanted'],
      ['fluid', 'fluid'],
    ]),
    albumin: optionalAlbumin('blood'),
    prealbumin: optionalFigure('Prealbumin', labUnits('prealbumin'), 1, 80, 'blood; on dialysis alone'),
    cholesterol: optionalFigure('Cholesterol, total', labUnits('cholesterol'), 30, 1000, 'blood'),
    bmi: optionalFigure('Body mass index', [['kg/m²', 1]], 8, 100, 'body mass'),
    loss3Months: optionalFigure('Weight lost in 3 months', percent, 0, 60, 'body mass'),
    loss6Months: optionalFigure('Weight lost in 6 months', percent, 0, 60, 'body mass'),
    bodyFat: optionalFigure('Body fat', percent, 1, 70, 'body mass'),
    muscleLoss3Months: optionalFigure('Muscle lost in 3 months', percent, 0, 60, 'muscle'),
    muscleLoss6Months: optionalFigure('Muscle lost in 6 months', percent, 0, 60, 'muscle'),
    armMuscleDown: optionalFigure('Arm muscle area under the median by', percent, 0, 90, 'muscle'),
    protein: optionalFigure('Protein eaten, unintended, for 2 months', [['g/kg/day', 1]], 0, 5, 'intake'),
    energy: optionalFigure('Energy eaten, unintended, for 2 months', [['kcal/kg/day', 1]], 0, 100, 'intake'),
  },
  formula: [
    'Wasting: at least 3 of 4 groups, one test each.',
    'Blood: albumin under 3.8 g/dL, cholesterol under 100 mg/dL, prealbumin under 30 mg/dL (dialysis).',
    'Body mass: BMI under 23, unintended loss of 5 % in 3 or 10 % in 6 months, body fat under 10 %.',
    'Muscle: loss of 5 % in 3 or 10 % in 6 months, arm muscle area over 10 % under the median.',
    'Intake: protein under 0.8 g/kg/day (dialysis) or 0.6, energy under 25 kcal/kg/day.',
  ],
  results: {
    told: { label: 'By the criteria' },
    met: { label: 'Groups met, of 4', decimals: 0 },
    shownBy: { label: 'Shown by' },
    blood: { label: 'Blood' },
    bodyMass: { label: 'Body mass' },
    muscle: { label: 'Muscle' },
    intake: { label: 'Intake' },
  },
  example: {
    inputs: { onDialysis: 'yes', lossCause: 'not-asked', albumin: '3.4 g/dL', bmi: '21', energy: '22' },
    results: { told: 'protein-energy wasting', met: 3, blood: 'met', bodyMass: 'met', muscle: 'not known', intake: 'met' },
    source: 'Fouque 2008, worked by hand',
  },
  compute(given) {
    const isCounted = given.lossCause === 'unintended' || given.lossCause === 'not-asked';
    const { groups, met, wasting, shownBy } = proteinEnergyWasting({
      onDialysis: given.onDialysis,
      ...known('albuminGPerDl', given.albumin),
      ...known('prealbuminMgPerDl', given.prealbumin),
      ...known('cholesterolMgPerDl', given.cholesterol),
      ...known('bodyMassIndex', given.bmi),
      ...known('lossPercent3Months', isCounted ? given.loss3Months : undefined),
      ...known('lossPercent6Months', isCounted ? given.loss6Months : undefined),
      ...(given.lossCause === 'not-asked' && (given.loss3Months ?? given.loss6Months) !== undefined ? { lossIsOpen: true } : {}),
      ...known('bodyFatPercent', given.bodyFat),
      ...known('muscleLossPercent3Months', given.muscleLoss3Months),
      ...known('muscleLossPercent6Months', given.muscleLoss6Months),
      ...known('armMuscleAreaDownPercent', given.armMuscleDown),
      ...known('proteinGPerKg', given.protein),
      ...known('energyKcalPerKg', given.energy),
    });
    const open = Object.values(groups).filter(state => state === 'not known').length;
    return computed({
      met,
      told: wasting ? 'protein-energy wasting' : met + open >= 3 ? `not ruled out: ${open} of 4 groups are open` : 'not met',
      ...(shownBy.length === 0 ? {} : { shownBy: shownBy.join('; ') }),
      blood: groups.blood,
      bodyMass: groups['body mass'],
      muscle: groups.muscle,
      intake: groups.intake,
    });
  },
});

function known<const Key extends string>(key: Key, value: number | undefined): { readonly [K in Key]?: number };
function known(key: string, value: number | undefined): Readonly<Record<string, number>> {
  return value === undefined ? {} : { [key]: value };
}
