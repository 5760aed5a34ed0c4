import type { Analyte } from '#core/client/labs/analytes.ts';
import type { CareFigureId } from '#core/client/rules/careFigures.ts';
import { careFigure } from '#core/client/rules/careRules.ts';
import { stageOf } from '#core/client/states/stage.ts';
import { type Day, daysBetween } from '#core/quantity/calendarDay.ts';
import type { WeightKind } from './assessment.ts';
import { type ClientFacts, isNewTransplant, type Lab, type Weight } from './clientFacts.ts';

/** What has an age of its own beside laboratory results. */
export type AgedFact = Analyte | 'weight' | 'dry-weight' | 'urine' | 'intake' | 'assessment';

/**
 * For how many days a fact may be used in this client's setting (care rules 1, own decision, set by the clinic). Everything that asks for an
 * age asks here. Potassium on hemodialysis: 45. Phosphate, G4: 200; without a stage the shortest holds.
 */
export function ageLimitDays(facts: ClientFacts, fact: AgedFact): number {
  return careFigure(facts.rules, figureFor(facts, fact));
}

export function isInDate(facts: ClientFacts, fact: AgedFact, on: Day): boolean {
  return daysBetween(on, facts.today) <= ageLimitDays(facts, fact);
}

/** Results of one analyte that may be used, newest first; of one day the highest first, whatever the order of the file. */
export function resultsInDate(facts: ClientFacts, analyte: Analyte): readonly Lab[] {
  const days = ageLimitDays(facts, analyte);
  return facts.labs.filter(lab => lab.analyte === analyte && daysBetween(lab.takenOn, facts.today) <= days);
}

/** The newest result in date; of several of one day the highest. */
export function latest(facts: ClientFacts, analyte: Analyte): Lab | undefined {
  return resultsInDate(facts, analyte)[0];
}

/** The newest result in date; of several of one day the lowest. */
export function latestLowest(facts: ClientFacts, analyte: Analyte): Lab | undefined {
  const newest = latest(facts, analyte);
  return (
    newest &&
    resultsInDate(facts, analyte)
      .filter(({ takenOn }) => takenOn === newest.takenOn)
      .at(-1)
  );
}

/** The newest weight of these kinds that may be used. A usual, goal or standard weight has no age. */
export function weightInDate(facts: ClientFacts, ...kinds: readonly WeightKind[]): Weight | undefined {
  return facts.weights.find(weight => kinds.includes(weight.kind) && isWeightInDate(facts, weight));
}

const ageless: readonly WeightKind[] = ['usual', 'before-admission', 'goal', 'standard'];

export function isWeightInDate(facts: ClientFacts, { kind, on }: Weight): boolean {
  return ageless.includes(kind) || isInDate(facts, kind === 'dry' ? 'dry-weight' : 'weight', on);
}

function figureFor(facts: ClientFacts, fact: AgedFact): CareFigureId {
  const { setting } = facts;
  const late = stageOf(facts);
  switch (fact) {
    case 'potassium':
    case 'bicarbonate':
    case 'sodium':
    case 'ureaNitrogen':
      return isNewTransplant(facts) ? 'age.potassium.new-transplant' : `age.potassium.${setting}`;
    case 'phosphate':
    case 'calcium':
    case 'correctedCalcium':
    case 'ionizedCalcium':
    case 'magnesium':
      if (setting !== 'ckd-not-on-dialysis') return isNewTransplant(facts) ? 'age.phosphate.new-transplant' : `age.phosphate.${setting}`;
      return late === undefined || late === 'G5' ? 'age.phosphate.G5' : late === 'G4' ? 'age.phosphate.G4' : 'age.phosphate.G3';
    case 'albumin':
    case 'prealbumin':
    case 'cholesterol':
      return `age.albumin.${setting}`;
    case 'pth':
      if (setting !== 'ckd-not-on-dialysis') return `age.pth.${setting}`;
      return late === undefined || late === 'G5' ? 'age.pth.G5' : 'age.pth.G3-G4';
    case 'hba1c':
      return 'age.hba1c';
    case 'weight':
      return `age.weight.${setting}`;
    case 'dry-weight':
      return 'age.dry-weight';
    case 'urine':
      return `age.urine.${setting}`;
    case 'intake':
      return `age.intake.${setting}`;
    case 'assessment':
      return `age.assessment.${setting}`;
    default:
      return 'age.other-results';
  }
}
