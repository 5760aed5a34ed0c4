import { type ClientFacts, type Lab, labWords } from '#core/client/assessment/clientFacts.ts';
import type { Analyte } from '#core/client/labs/analytes.ts';
import { type CareFigure, type CareFigureId, careFigures } from '#core/client/rules/careFigures.ts';
import { careFigure } from '#core/client/rules/careRules.ts';
import { daysBetween } from '#core/quantity/calendarDay.ts';
import type { Met } from './caution.ts';

// Which readings an alarm looks at, and which of them it tells (care rules 2).

/** Binary dust in a difference of two results. */
export const dust = 1e-9;

const maybeFalse = 'The sample was hemolyzed and may be falsely high: repeat it now.';

export function met(lab: Lab, { today }: ClientFacts, more = ''): Met {
  const because = `${labWords(lab, today)}${more}`;
  return { because, on: lab.takenOn, ...(lab.hemolyzed && lab.analyte === 'potassium' ? { told: maybeFalse } : {}) };
}

/** Every reading of one analyte, results in question among them, newest day first. */
export function readings({ labs, questioned }: ClientFacts, analyte: Analyte): readonly Lab[] {
  return [...labs, ...questioned].filter(lab => lab.analyte === analyte).sort((a, b) => daysBetween(a.takenOn, b.takenOn));
}

/**
 * The readings that an alarm looks at: those of the newest day that lifts an earlier one, and what came after it without lifting. Each is as
 * old as it is: one that is history speaks no more, and never in the place of a younger one.
 */
export function standing(facts: ClientFacts, analyte: Analyte): readonly Lab[] {
  const all = readings(facts, analyte).filter(({ takenOn }) => daysBetween(takenOn, facts.today) <= careFigure(facts.rules, 'alarm.asked'));
  const lifts = all.find(lab => !lab.inQuestion && (analyte !== 'potassium' || (!lab.hemolyzed && lab.drawn !== 'after-dialysis')));
  return lifts === undefined ? all : all.filter(({ takenOn }) => daysBetween(lifts.takenOn, takenOn) >= 0);
}

export function isOfNow(facts: ClientFacts, { analyte, takenOn }: Lab): boolean {
  return daysBetween(takenOn, facts.today) <= careFigure(facts.rules, analyte === 'glucose' ? 'alarm.glucose-now' : 'alarm.now');
}

export const isMarked = ({ hemolyzed, inQuestion }: Lab): boolean => hemolyzed || inQuestion === true;

/** Of the readings that reach a bound the one to tell: of now before older ones, clean before marked, then the most extreme. */
export function toTell(facts: ClientFacts, reached: readonly Lab[], byValue: (a: Lab, b: Lab) => number): Lab | undefined {
  const late = (lab: Lab): number => Number(!isOfNow(facts, lab));
  return reached.toSorted((a, b) => late(a) - late(b) || Number(isMarked(a)) - Number(isMarked(b)) || byValue(a, b))[0];
}

/** All that reach the bound are shown, the one that is told first. */
export function tellAll(facts: ClientFacts, reached: readonly Lab[], byValue: (a: Lab, b: Lab) => number, more = ''): Met | undefined {
  const first = toTell(facts, reached, byValue);
  if (first === undefined) return undefined;
  const rest = reached.filter(lab => lab !== first && labWords(lab, facts.today) !== labWords(first, facts.today));
  return met(first, facts, [more, ...rest.map(lab => `; ${labWords(lab, facts.today)}`)].join(''));
}

export const highFirst = (a: Lab, b: Lab): number => b.value - a.value;
export const lowFirst = (a: Lab, b: Lab): number => a.value - b.value;

export function highReadings(facts: ClientFacts, analyte: Analyte, from: number): readonly Lab[] {
  return standing(facts, analyte).filter(({ value }) => value >= from);
}

/** Readings under a figure. After dialysis a potassium is low for a while and never counts as low; a hemolyzed one is lower still than it reads. */
export function lowReadings(facts: ClientFacts, analyte: Analyte, below: CareFigureId): readonly Lab[] {
  const isLow = (lab: Lab): boolean => isBeyond(facts, below, 'under', lab) && (analyte !== 'potassium' || lab.drawn !== 'after-dialysis');
  return standing(facts, analyte).filter(isLow);
}

/**
 * Whether a reading is over or under a contact figure. In mmol/L it is held to the published mmol/L figure, which is rounded apart (calcium
 * under 7.5 mg/dL, 1.9 mmol/L), unless the clinic has set its own; a reading in question is compared in the canonical unit.
 */
export function isBeyond({ rules }: ClientFacts, id: CareFigureId, side: 'over' | 'under', { value, entered, inQuestion }: Lab): boolean {
  const { si }: CareFigure = careFigures[id];
  const isPublished = si !== undefined && !inQuestion && entered.unit === si.unit && !rules.some(one => one.id === id);
  const [compared, bound] = isPublished ? [entered.value, si.value] : [value, careFigure(rules, id)];
  return side === 'over' ? compared > bound + dust : compared < bound - dust;
}
