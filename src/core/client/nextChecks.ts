import type { Analyte } from './analytes.ts';
import { addDays, addMonths, type Day, daysBetween } from './calendarDay.ts';
import { checkAssessment } from './checkAssessment.ts';
import type { Assessment } from './client.ts';
import { type ClientFacts, stageOf, takes, transplantAge } from './clientFacts.ts';
import type { GfrCategory } from './formulas/gfrCategory.ts';
import type { Setting } from './setting.ts';
import type { Source } from './source.ts';
import { asQuoted, commonPractice, fromMemory, kdigoCkd2024, kdigoDiabetes2022, kdigoMbd2017, kdoqi2006, kdoqi2020 } from './sources.ts';

export type CheckItem =
  | 'weight'
  | 'screening'
  | 'full assessment'
  | 'potassium, bicarbonate, urea'
  | 'potassium after RAAS change'
  | 'calcium and phosphate'
  | 'PTH'
  | 'albumin, nPCR, Kt/V'
  | 'HbA1c'
  | 'urine ACR and eGFR';

/** What is due next. Never done counts as due today. */
export interface NextCheck {
  readonly item: CheckItem;
  /** "every 1 to 3 months". */
  readonly every: string;
  readonly lastOn?: Day;
  /** The window in which it is due; both ends are the same where the schedule gives one interval. */
  readonly dueFrom: Day;
  readonly dueBy: Day;
  readonly state: 'overdue' | 'due' | 'later';
  readonly source: Source;
}

type Months = readonly [from: number, to: number];
type BySetting = Readonly<Record<Setting, Months | undefined>>;

const ckd = 'ckd-not-on-dialysis';

/**
 * What is to be checked next, by the schedule of facts section 9.2, as of `today`; first what is due first. Weight on hemodialysis last
 * taken on 2026-03-01 is due on 2026-04-01.
 */
export function nextChecks(assessment: Assessment, today: Day): readonly NextCheck[] {
  const { facts } = checkAssessment(assessment, today);
  const stage = stageOf(facts);
  const late = stage === 'G4' || stage === 'G5';
  const all = [
    check(
      facts,
      'weight',
      { [ckd]: late ? [3, 3] : [6, 6], hemodialysis: [1, 1], 'peritoneal-dialysis': [1, 1], transplant: [3, 3] },
      lastWeight(facts),
      fromMemory(kdoqi2020('OPINION')),
    ),
    check(facts, 'screening', same([6, 6]), assessment.lastScreenedOn, fromMemory(kdoqi2020('OPINION'))),
    fullAssessment(facts),
    check(
      facts,
      'potassium, bicarbonate, urea',
      { [ckd]: undefined, hemodialysis: [1, 1], 'peritoneal-dialysis': [1, 3], transplant: undefined },
      lastOf(facts, 'potassium', 'bicarbonate', 'ureaNitrogen'),
      commonPractice,
    ),
    afterRaasChange(facts),
    mineral(facts, stage),
    check(
      facts,
      'PTH',
      {
        [ckd]: stage === 'G4' ? [6, 12] : stage === 'G5' ? [3, 6] : undefined,
        hemodialysis: [3, 6],
        'peritoneal-dialysis': [3, 6],
        transplant: undefined,
      },
      lastOf(facts, 'pth'),
      asQuoted(kdigoMbd2017()),
    ),
    check(
      facts,
      'albumin, nPCR, Kt/V',
      {
        [ckd]: takes(facts, 'ketoanalogs') ? [3, 3] : undefined,
        hemodialysis: [1, 1],
        'peritoneal-dialysis': [4, 6],
        transplant: undefined,
      },
      lastOf(facts, 'albumin'),
      facts.setting === 'peritoneal-dialysis' ? fromMemory(commonPractice) : kdoqi2006('Guideline 2.1'),
    ),
    assessment.diabetes ? check(facts, 'HbA1c', same([3, 6]), lastOf(facts, 'hba1c'), asQuoted(kdigoDiabetes2022())) : undefined,
    check(
      facts,
      'urine ACR and eGFR',
      { [ckd]: [12, 12], hemodialysis: undefined, 'peritoneal-dialysis': undefined, transplant: [12, 12] },
      lastOf(facts, 'egfr'),
      asQuoted(kdigoCkd2024()),
    ),
  ];
  return all.flatMap(one => one ?? []).sort((a, b) => daysBetween(b.dueBy, a.dueBy));
}

function same(months: Months): BySetting {
  return { [ckd]: months, hemodialysis: months, 'peritoneal-dialysis': months, transplant: months };
}

function check(facts: ClientFacts, item: CheckItem, schedule: BySetting, lastOn: Day | undefined, source: Source): NextCheck | undefined {
  const months = schedule[facts.setting];
  if (months === undefined) return undefined;
  const [from, to] = months;
  const every = from === to ? (from === 1 ? 'monthly' : `every ${from} months`) : `every ${from} to ${to} months`;
  if (lastOn === undefined) return due(facts, item, every, facts.today, facts.today, source);
  return due(facts, item, every, addMonths(lastOn, from), addMonths(lastOn, to), source, lastOn);
}

function due({ today }: ClientFacts, item: CheckItem, every: string, dueFrom: Day, dueBy: Day, source: Source, lastOn?: Day): NextCheck {
  const state = daysBetween(dueBy, today) > 0 ? 'overdue' : daysBetween(dueFrom, today) >= 0 ? 'due' : 'later';
  return { item, every, ...(lastOn === undefined ? {} : { lastOn }), dueFrom, dueBy, state, source };
}

/** Yearly or on change; on dialysis within 90 days of the start; after a transplant at 3 and 12 months. */
function fullAssessment(facts: ClientFacts): NextCheck {
  const { lastFullAssessmentOn: lastOn, treatment } = facts.assessment;
  const source = commonPractice;
  if (treatment.setting === 'transplant' && (lastOn === undefined || daysBetween(lastOn, addMonths(treatment.transplantedOn, 12)) > 0)) {
    const at3 = addMonths(treatment.transplantedOn, 3);
    const next = lastOn === undefined || daysBetween(lastOn, at3) > 0 ? at3 : addMonths(treatment.transplantedOn, 12);
    return due(facts, 'full assessment', 'at discharge, 3 and 12 months', next, next, source, lastOn);
  }
  const startedOn = 'startedOn' in treatment ? treatment.startedOn : undefined;
  if (lastOn === undefined && startedOn !== undefined) {
    return due(facts, 'full assessment', 'within 90 days of the start, then yearly', startedOn, addDays(startedOn, 90), source);
  }
  if (lastOn === undefined) return due(facts, 'full assessment', 'at referral, yearly, or on change', facts.today, facts.today, source);
  return due(facts, 'full assessment', 'yearly, or on change', addMonths(lastOn, 12), addMonths(lastOn, 12), source, lastOn);
}

/** Two to four weeks after a RAAS inhibitor is begun or changed, unless potassium has been measured since. */
function afterRaasChange(facts: ClientFacts): NextCheck | undefined {
  const changed = facts.assessment.raasChangedOn;
  if (changed === undefined) return undefined;
  const last = lastOf(facts, 'potassium');
  if (last !== undefined && daysBetween(addDays(changed, 14), last) >= 0) return undefined;
  return due(
    facts,
    'potassium after RAAS change',
    '2 to 4 weeks after the change',
    addDays(changed, 14),
    addDays(changed, 28),
    asQuoted(kdigoCkd2024()),
    last,
  );
}

const mineralByStage: Readonly<Partial<Record<GfrCategory, Months>>> = { G3a: [6, 12], G3b: [6, 12], G4: [3, 6], G5: [1, 3] };

function mineral(facts: ClientFacts, stage: GfrCategory | undefined): NextCheck | undefined {
  const lastOn = lastOf(facts, 'calcium', 'phosphate');
  if (transplantAge(facts) !== undefined && transplantAge(facts) !== 'stable') {
    const next = lastOn === undefined ? facts.today : addDays(lastOn, 7);
    return due(facts, 'calcium and phosphate', 'weekly until stable', next, next, asQuoted(kdigoMbd2017()), lastOn);
  }
  const byStage = stage && mineralByStage[stage];
  return check(
    facts,
    'calcium and phosphate',
    { [ckd]: byStage, hemodialysis: [1, 3], 'peritoneal-dialysis': [1, 3], transplant: byStage },
    lastOn,
    asQuoted(kdigoMbd2017()),
  );
}

function lastWeight(facts: ClientFacts): Day | undefined {
  return facts.weights.find(({ kind }) => kind !== 'usual' && kind !== 'goal' && kind !== 'standard')?.on;
}

/** The day on which the oldest of them was last taken; undefined when one never was. */
function lastOf(facts: ClientFacts, ...wanted: readonly Analyte[]): Day | undefined {
  const days = wanted.map(analyte => facts.labs.find(lab => lab.analyte === analyte)?.takenOn);
  return days.reduce((oldest, day) =>
    oldest === undefined || day === undefined ? undefined : daysBetween(day, oldest) > 0 ? day : oldest,
  );
}
