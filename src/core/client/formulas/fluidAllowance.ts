import { type Interval, interval } from '#core/quantity/interval.ts';
import { type Computed, computed, type FormulaFacts, firstImpossible, weightKgInput } from './computed.ts';

export const fluidAllowanceFacts: FormulaFacts = {
  title: 'Fluid allowance from the ultrafiltration limit',
  unit: 'mL/day',
  sources: [{ kind: 'paper', text: 'conference abstract, Australian and New Zealand Society of Nephrology' }],
  cautions: ['The ultrafiltration limit is the team’s decision.', 'A low gain with falling intake is a warning, not a success.'],
};

/**
 * Fluid allowance in mL/day from an ultrafiltration limit: UFR × hours × target kg / gap days + urine mL/day.
 * 10 mL/kg/h, 4 h, 70 kg, 300 mL urine: 1700 mL with a gap of 2 days, 1233 mL with 3. Source: ANZSN abstract.
 */
export function fluidAllowanceMlFromUltrafiltration(input: {
  ultrafiltrationMlPerKgH: number;
  sessionHours: number;
  targetWeightKg: number;
  gapDays: number;
  urineMlPerDay: number;
}): Computed {
  const { ultrafiltrationMlPerKgH, sessionHours, targetWeightKg, gapDays, urineMlPerDay } = input;
  return (
    firstImpossible(
      ['ultrafiltrationMlPerKgH', ultrafiltrationMlPerKgH, 1, 20, 'mL/kg/h'],
      ['sessionHours', sessionHours, 0.5, 12, 'h'],
      weightKgInput(targetWeightKg, 'targetWeightKg'),
      ['gapDays', gapDays, 1, 4, 'days'],
      urineInput(urineMlPerDay),
    ) ?? computed((ultrafiltrationMlPerKgH * sessionHours * targetWeightKg) / gapDays + urineMlPerDay)
  );
}

/** Fluid in mL/day on hemodialysis as practice has it: a day's urine and 500 to 1000 mL. 300 mL urine: 800 to 1300 mL. Common practice. */
export function fluidAllowanceMlFromUrine(urineMlPerDay: number): Computed<Interval> {
  return firstImpossible(urineInput(urineMlPerDay)) ?? computed(interval(urineMlPerDay + 500, urineMlPerDay + 1000));
}

function urineInput(urineMlPerDay: number) {
  return ['urineMlPerDay', urineMlPerDay, 0, 15_000, 'mL'] as const;
}
