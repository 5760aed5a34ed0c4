import type { Assessment } from '#core/client/assessment/assessment.ts';
import { checkAssessment } from '#core/client/assessment/checkAssessment.ts';
import { type ClientFacts, isNewTransplant, type Lab, takes, transplantAge } from '#core/client/assessment/clientFacts.ts';
import type { GfrCategory } from '#core/client/formulas/gfrCategory.ts';
import type { Analyte } from '#core/client/labs/analytes.ts';
import { type CareRules, usualCareRules } from '#core/client/rules/careRules.ts';
import type { Source } from '#core/client/rules/source.ts';
import {
  asQuoted,
  commonPractice,
  fromMemory,
  kdigoCkd2024,
  kdigoDiabetes2022,
  kdigoMbd2017,
  kdoqi2006,
  kdoqi2020,
} from '#core/client/rules/sources.ts';
import { stageFacts } from '#core/client/states/stage.ts';
import { addDays, addMonths, type Day, daysBetween } from '#core/quantity/calendarDay.ts';
import type { Setting } from '../setting.ts';

export type CheckItem =
  | 'weight'
  | 'screening'
  | 'full assessment'
  | 'potassium'
  | 'bicarbonate'
  | 'urea nitrogen'
  | 'potassium after RAAS change'
  | 'calcium'
  | 'phosphorus'
  | 'PTH'
  | 'albumin'
  | 'nPCR'
  | 'Kt/V'
  | 'HbA1c'
  | 'urine ACR'
  | 'eGFR';

export const dueStates = ['overdue', 'due', 'later'] as const;

/** What is due next. Never done counts as due today. */
export interface NextCheck {
  readonly item: CheckItem;
  /** "every 1 to 3 months". */
  readonly every: string;
  readonly lastOn?: Day;
  /** The window in which it is due; both ends are the same where the schedule gives one interval. */
  readonly dueFrom: Day;
  readonly dueBy: Day;
  readonly state: (typeof dueStates)[number];
  readonly source: Source;
}

type Months = readonly [from: number, to: number];
type BySetting = Readonly<Record<Setting, Months | undefined>>;

const ckd = 'ckd-not-on-dialysis';

/** Months off dialysis by stage; the last is for who has no stage yet. Potassium: own decision. eGFR: KDIGO CKD 2024, times a year (from memory). */
const byStage: Readonly<Record<'potassium' | 'mineral' | 'pth' | 'egfr', Readonly<Record<GfrCategory | 'none', Months>>>> = {
  potassium: { G1: [12, 12], G2: [12, 12], G3a: [6, 12], G3b: [3, 6], G4: [3, 3], G5: [1, 3], none: [6, 12] },
  mineral: { G1: [12, 12], G2: [12, 12], G3a: [6, 12], G3b: [6, 12], G4: [3, 6], G5: [1, 3], none: [6, 12] },
  pth: { G1: [12, 12], G2: [12, 12], G3a: [6, 12], G3b: [6, 12], G4: [6, 12], G5: [3, 6], none: [6, 12] },
  egfr: { G1: [12, 12], G2: [12, 12], G3a: [12, 12], G3b: [6, 6], G4: [4, 4], G5: [3, 3], none: [12, 12] },
};

/**
 * What is to be checked next, by the schedule of facts section 9.2, as of `today`; first what is due first. Each marker stands for itself,
 * and what was never done is due. Weight on hemodialysis last taken on 2026-03-01 is due on 2026-04-01.
 */
export function nextChecks(assessment: Assessment, today: Day, rules: CareRules = usualCareRules): readonly NextCheck[] {
  const { facts } = checkAssessment(assessment, today, rules);
  const stage = stageFacts(facts).cautioning;
  const late = stage === 'G4' || stage === 'G5';
  const off = (marker: keyof typeof byStage): Months => byStage[marker][stage ?? 'none'];
  const isPd = facts.setting === 'peritoneal-dialysis';
  const lab = (item: CheckItem, analyte: Analyte, schedule: BySetting, source: Source) =>
    check(facts, item, schedule, lastOf(facts, analyte), source);
  const graft: Months = isNewTransplant(facts) ? [0.5, 0.5] : [1, 3];
  const blood: BySetting = { [ckd]: off('potassium'), hemodialysis: [1, 1], 'peritoneal-dialysis': [1, 3], transplant: graft };
  const bones: BySetting = {
    [ckd]: off('mineral'),
    hemodialysis: [1, 3],
    'peritoneal-dialysis': [1, 3],
    transplant: transplantAge(facts) === 'stable' ? off('mineral') : [0.25, 0.25],
  };
  const dose: BySetting = { [ckd]: undefined, hemodialysis: [1, 1], 'peritoneal-dialysis': [4, 6], transplant: undefined };
  const lowProtein: Months | undefined = takes(facts, 'ketoanalogs') ? [3, 3] : undefined;
  const doseSource = isPd ? fromMemory(commonPractice) : kdoqi2006('Guideline 2.1');
  const rate = { [ckd]: off('egfr'), hemodialysis: undefined, 'peritoneal-dialysis': undefined, transplant: off('egfr') };
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
    lab('potassium', 'potassium', blood, commonPractice),
    lab('bicarbonate', 'bicarbonate', blood, commonPractice),
    lab('urea nitrogen', 'ureaNitrogen', blood, commonPractice),
    afterRaasChange(facts),
    check(facts, 'calcium', bones, lastOf(facts, 'calcium', 'correctedCalcium'), asQuoted(kdigoMbd2017())),
    lab('phosphorus', 'phosphate', bones, asQuoted(kdigoMbd2017())),
    lab(
      'PTH',
      'pth',
      { [ckd]: off('pth'), hemodialysis: [3, 6], 'peritoneal-dialysis': [3, 6], transplant: [12, 12] },
      asQuoted(kdigoMbd2017()),
    ),
    lab('albumin', 'albumin', { ...dose, [ckd]: lowProtein }, doseSource),
    lab('nPCR', 'proteinCatabolicRate', dose, doseSource),
    check(facts, 'Kt/V', dose, lastOf(facts, 'spKtV', 'ureaReduction'), doseSource),
    assessment.diabetes ? lab('HbA1c', 'hba1c', same([3, 6]), asQuoted(kdigoDiabetes2022())) : undefined,
    lab(
      'urine ACR',
      'urineAcr',
      { [ckd]: [12, 12], hemodialysis: undefined, 'peritoneal-dialysis': undefined, transplant: [12, 12] },
      asQuoted(kdigoCkd2024()),
    ),
    check(facts, 'eGFR', rate, lastOf(facts, 'egfr', 'creatinine'), fromMemory(kdigoCkd2024())),
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
  const every =
    from < 0.5
      ? 'weekly'
      : from < 1
        ? 'every 2 weeks'
        : from === to
          ? from === 1
            ? 'monthly'
            : `every ${from} months`
          : `every ${from} to ${to} months`;
  if (lastOn === undefined) return due(facts, item, every, facts.today, facts.today, source);
  return due(facts, item, every, later(lastOn, from), later(lastOn, to), source, lastOn);
}

/** A quarter of a month is a week. */
function later(day: Day, months: number): Day {
  return months < 1 ? addDays(day, months * 28) : addMonths(day, months);
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
    // At discharge: what was never done is due.
    if (lastOn === undefined) return due(facts, 'full assessment', 'at discharge, 3 and 12 months', facts.today, facts.today, source);
    const next = daysBetween(lastOn, at3) > 0 ? at3 : addMonths(treatment.transplantedOn, 12);
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

function lastWeight(facts: ClientFacts): Day | undefined {
  return facts.weights.find(({ kind }) => kind !== 'usual' && kind !== 'goal' && kind !== 'standard')?.on;
}

/** The day on which one of them was last taken; undefined when none ever was. */
function lastOf(facts: ClientFacts, ...wanted: readonly Analyte[]): Day | undefined {
  // A marked potassium is no check done: its target asks for a new one.
  const isMarked = ({ analyte, hemolyzed, drawn }: Lab): boolean => analyte === 'potassium' && (hemolyzed || drawn === 'after-dialysis');
  return facts.labs.find(lab => wanted.includes(lab.analyte) && !isMarked(lab))?.takenOn;
}
