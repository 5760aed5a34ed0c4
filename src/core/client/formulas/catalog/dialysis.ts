import { computed, refuse } from '../computed.ts';
import { spKtV, spKtVFacts, ureaReductionFacts, ureaReductionPercent } from '../dialysisDose.ts';
import { interdialyticGain, interdialyticGainFacts } from '../interdialyticGain.ts';
import {
  betweenSessionsRateSource,
  nPcrGPerKgFromRise,
  nPcrGPerKgFromSession,
  proteinCatabolicRateFacts,
  sessionRateSource,
} from '../proteinCatabolicRate.ts';
import { ultrafiltrationMlPerKgH, ultrafiltrationRateFacts } from '../ultrafiltrationRate.ts';
import { describeFormula } from './formula.ts';
import { choice, figure, optionalFigure } from './formulaInput.ts';
import { oneFigure } from './formulaResult.ts';
import { grams, hours, kilograms, noUnit, ureaNitrogenInBlood, weight } from './units.ts';

const nPcr = { label: 'nPCR', unit: 'g/kg/day', decimals: 2 } as const;
const fillsNPcr = [{ result: 'nPcr', field: 'labs.proteinCatabolicRate', label: 'nPCR among the results' }] as const;
const bunBefore = () => ureaNitrogenInBlood('BUN before the session');
const bunAfter = () => ureaNitrogenInBlood('BUN after the session');

const weightMissing = {
  ...refuse('not-defined', 'weight', 'The weight that goes with the urine is missing.'),
  found: 'nothing',
  expected: 'the weight that goes with the urine',
};

export const dialysisFormulas = [
  describeFormula({
    ...spKtVFacts,
    name: 'kt-v-single-pool',
    title: 'Single-pool Kt/V (spKt/V)',
    subject: 'dialysis',
    purpose: 'The dose of one hemodialysis session, by the second formula of Daugirdas.',
    inputs: {
      bunBefore: bunBefore(),
      bunAfter: bunAfter(),
      hours: figure(
        'Length of the session',
        [
          ['h', 1],
          ['min', 1 / 60],
        ],
        0.5,
        12,
      ),
      ultrafiltration: figure(
        'Fluid taken off',
        [
          ['L', 1],
          ['mL', 0.001],
        ],
        0,
        12,
      ),
      weightAfter: weight('Weight after the session'),
    },
    formula: [
      'spKt/V = −ln(R − 0.008 × t) + (4 − 3.5 × R) × UF / W',
      'R = BUN after / BUN before, t in hours, UF in L, W = weight after in kg',
    ],
    results: { ktv: { label: 'spKt/V', decimals: 2 } },
    example: {
      inputs: { bunBefore: '70 mg/dL', bunAfter: '20 mg/dL', hours: '4 h', ultrafiltration: '2.8 L', weightAfter: '70 kg' },
      results: { ktv: 1.49 },
      source: 'Daugirdas 1993, worked by hand',
    },
    cautions: [...spKtVFacts.cautions, 'The sample after must be drawn slowed or stopped: rebound and recirculation change it.'],
    fills: [{ result: 'ktv', field: 'labs.spKtV', label: 'spKt/V among the results' }],
    compute: given =>
      oneFigure(
        'ktv',
        spKtV({
          bunBeforeMgPerDl: given.bunBefore,
          bunAfterMgPerDl: given.bunAfter,
          hours: given.hours,
          ultrafiltrationL: given.ultrafiltration,
          weightAfterKg: given.weightAfter,
        }),
      ),
  }),
  describeFormula({
    ...ureaReductionFacts,
    name: 'urea-reduction-ratio',
    subject: 'dialysis',
    purpose: 'How much of the urea one hemodialysis session takes out.',
    inputs: { bunBefore: bunBefore(), bunAfter: bunAfter() },
    formula: ['URR = (1 − BUN after / BUN before) × 100, in %'],
    results: { reduction: { label: 'Urea reduction ratio', unit: '%', decimals: 1 } },
    example: {
      inputs: { bunBefore: '70 mg/dL', bunAfter: '20 mg/dL' },
      results: { reduction: 71.4 },
      source: 'KDOQI Hemodialysis Adequacy 2006, worked by hand',
    },
    fills: [{ result: 'reduction', field: 'labs.ureaReduction', label: 'urea reduction ratio among the results' }],
    compute: given => oneFigure('reduction', ureaReductionPercent(given.bunBefore, given.bunAfter)),
  }),
  describeFormula({
    ...proteinCatabolicRateFacts,
    name: 'npcr-between-sessions',
    title: 'nPCR from the rise of BUN between two sessions',
    subject: 'dialysis',
    purpose: 'Protein breakdown on hemodialysis from BUN after one session and before the next, with urine where there is some.',
    inputs: {
      bunAfter: bunAfter(),
      bunBeforeNext: ureaNitrogenInBlood('BUN before the next session'),
      gapHours: figure('Time between', hours, 12, 120),
      ureaNitrogen: optionalFigure('Urea nitrogen in the urine of that time', grams, 0, 60, 'with the weight'),
      weight: optionalFigure('Weight', kilograms, 20, 400, 'needed with the urine'),
    },
    formula: [
      'nPCR g/kg/day = 0.22 + 0.864 × (BUN before the next − BUN after) mg/dL / hours between',
      'With urine: + 150 × urea nitrogen g / (hours × weight kg)',
    ],
    results: { nPcr },
    example: {
      inputs: { bunAfter: '18 mg/dL', bunBeforeNext: '70 mg/dL', gapHours: '44', ureaNitrogen: '3', weight: '70 kg' },
      results: { nPcr: 1.39 },
      source: 'nephrology teaching note 2009, worked by hand; 1.24 without urine',
    },
    sources: [betweenSessionsRateSource],
    fills: fillsNPcr,
    compute({ bunAfter: bunAfterMgPerDl, bunBeforeNext: bunBeforeNextMgPerDl, gapHours, ureaNitrogen, weight: weightKg }) {
      const blood = { bunAfterMgPerDl, bunBeforeNextMgPerDl, gapHours };
      if (ureaNitrogen === undefined) return oneFigure('nPcr', nPcrGPerKgFromRise(blood));
      // No weight is a missing input, never a weight of 0.
      if (weightKg === undefined) {
        return weightMissing;
      }
      return oneFigure('nPcr', nPcrGPerKgFromRise({ ...blood, urine: { ureaNitrogenG: ureaNitrogen, weightKg } }));
    },
  }),
  describeFormula({
    ...proteinCatabolicRateFacts,
    name: 'npcr-before-session',
    title: 'nPCR from BUN before one of three sessions a week',
    subject: 'dialysis',
    purpose: 'Protein breakdown on hemodialysis three times a week without urine, from one BUN and spKt/V.',
    inputs: {
      session: choice('The session it was drawn before', [
        ['first', 'first of the week, after the long gap'],
        ['midweek', 'midweek'],
        ['last', 'last of the week'],
      ]),
      bunBefore: bunBefore(),
      ktv: figure('spKt/V', noUnit, 0.3, 4),
    },
    formula: [
      'nPCR g/kg/day = BUN mg/dL / (a + b × K + c / K) + 0.168, K = spKt/V',
      'First of the week: a 36.3, b 5.48, c 53.5. Midweek: 25.8, 1.15, 56.4. Last: 16.3, 4.30, 56.6.',
    ],
    results: { nPcr },
    example: {
      inputs: { session: 'midweek', bunBefore: '60 mg/dL', ktv: '1.4' },
      results: { nPcr: 1.05 },
      source: 'Depner, Daugirdas 1996, worked by hand',
    },
    sources: [sessionRateSource],
    cautions: [
      ...proteinCatabolicRateFacts.cautions,
      'Three sessions a week, no urine. The figures of the first session read a midweek sample 15 % low.',
    ],
    fills: fillsNPcr,
    compute: given => oneFigure('nPcr', nPcrGPerKgFromSession(given.session, given.bunBefore, given.ktv)),
  }),
  describeFormula({
    ...ultrafiltrationRateFacts,
    name: 'ultrafiltration-rate',
    subject: 'dialysis',
    purpose: 'How fast fluid is taken off in a session, for the weight.',
    inputs: {
      volume: figure(
        'Fluid taken off',
        [
          ['mL', 1],
          ['L', 1000],
        ],
        0,
        12_000,
      ),
      hours: figure(
        'Length of the session',
        [
          ['h', 1],
          ['min', 1 / 60],
        ],
        0.5,
        12,
      ),
      weightAfter: weight('Weight after the session'),
    },
    formula: ['Rate mL/kg/h = fluid mL / hours / weight after in kg'],
    results: { rate: { label: 'Ultrafiltration rate', unit: 'mL/kg/h', decimals: 1 } },
    example: { inputs: { volume: '2800 mL', hours: '4 h', weightAfter: '70 kg' }, results: { rate: 10 }, source: 'by definition' },
    compute: given => oneFigure('rate', ultrafiltrationMlPerKgH(given.volume, given.hours, given.weightAfter)),
  }),
  describeFormula({
    ...interdialyticGainFacts,
    name: 'interdialytic-weight-gain',
    subject: 'dialysis',
    purpose: 'What was gained between two sessions, in kg and in percent of dry weight.',
    inputs: { before: weight('Weight before the session'), dry: weight('Dry weight', 'set by the team') },
    formula: ['Gain kg = before − dry', 'Gain % = gain / dry × 100'],
    results: {
      gain: { label: 'Gain', unit: 'kg', decimals: 1 },
      gainPercent: { label: 'Gain for dry weight', unit: '%', decimals: 1 },
    },
    example: { inputs: { before: '75.6 kg', dry: '72.0 kg' }, results: { gain: 3.6, gainPercent: 5 }, source: 'by definition' },
    compute(given) {
      const outcome = interdialyticGain(given.before, given.dry);
      return outcome.kind === 'refused' ? outcome : computed({ gain: outcome.value.gainKg, gainPercent: outcome.value.gainPercent });
    },
  }),
];
