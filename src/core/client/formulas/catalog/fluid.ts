import { commonPractice } from '#core/client/rules/sources.ts';
import { fluidAllowanceFacts, fluidAllowanceMlFromUltrafiltration, fluidAllowanceMlFromUrine } from '../fluidAllowance.ts';
import { describeFormula } from './formula.ts';
import { figure } from './formulaInput.ts';
import { oneFigure } from './formulaResult.ts';
import { hours, weight } from './units.ts';

const urine = () =>
  figure(
    'Urine in a day',
    [
      ['mL', 1],
      ['L', 1000],
    ],
    0,
    15_000,
  );
const allowance = { label: 'Fluid', unit: 'mL/day', decimals: 0 } as const;
const fluidIs = 'Fluid is anything liquid at room temperature, and ice, gelatin and soup.';

export const fluidFormulas = [
  describeFormula({
    ...fluidAllowanceFacts,
    name: 'fluid-from-ultrafiltration-limit',
    subject: 'fluid',
    purpose: 'How much fluid a day an agreed ultrafiltration limit leaves room for, on hemodialysis.',
    inputs: {
      ultrafiltration: figure('Agreed ultrafiltration limit', [['mL/kg/h', 1]], 1, 20),
      sessionHours: figure('Length of a session', hours, 0.5, 12),
      targetWeight: weight('Target (dry) weight'),
      gapDays: figure('Days between sessions', [['days', 1]], 1, 4, 'the longest of the week'),
      urine: urine(),
    },
    formula: ['Fluid mL/day = limit mL/kg/h × hours × target weight kg / gap days + urine mL/day'],
    results: { fluid: allowance },
    example: {
      inputs: { ultrafiltration: '10', sessionHours: '4', targetWeight: '70 kg', gapDays: '2', urine: '300 mL' },
      results: { fluid: 1700 },
      source: 'conference abstract of the source, worked by hand; 1233 with 3 days',
    },
    cautions: [...fluidAllowanceFacts.cautions, fluidIs],
    compute: given =>
      oneFigure(
        'fluid',
        fluidAllowanceMlFromUltrafiltration({
          ultrafiltrationMlPerKgH: given.ultrafiltration,
          sessionHours: given.sessionHours,
          targetWeightKg: given.targetWeight,
          gapDays: given.gapDays,
          urineMlPerDay: given.urine,
        }),
      ),
  }),
  describeFormula({
    name: 'fluid-from-urine',
    title: 'Fluid allowance from urine',
    subject: 'fluid',
    purpose: 'A day’s fluid on hemodialysis as practice has it: the urine and 500 to 1000 mL.',
    inputs: { urine: urine() },
    formula: ['Fluid mL/day = urine mL/day + 500 to 1000'],
    results: { fluid: allowance },
    example: { inputs: { urine: '300 mL' }, results: { fluid: [800, 1300] }, source: 'common practice, worked by hand' },
    sources: [commonPractice],
    cautions: ['Gain between sessions, blood pressure and edema decide.', 'Not off dialysis, and not early after a transplant.', fluidIs],
    compute: given => oneFigure('fluid', fluidAllowanceMlFromUrine(given.urine)),
  }),
];
