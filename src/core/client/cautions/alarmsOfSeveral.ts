import { type ClientFacts, isOnDialysis, type Lab, labWords } from '#core/client/assessment/clientFacts.ts';
import { correctedCalciumMgPerDl } from '#core/client/formulas/correctedCalcium.ts';
import type { Analyte } from '#core/client/labs/analytes.ts';
import { labInUnit } from '#core/client/labs/labValue.ts';
import { careFigure } from '#core/client/rules/careRules.ts';
import { daysBetween, hourOfDay } from '#core/quantity/calendarDay.ts';
import { roundHalfUp } from '#core/quantity/rounding.ts';
import { dust, lowFirst, met, readings, standing, toTell } from './alarmReadings.ts';
import type { Met } from './caution.ts';

// Alarms that take more than one result: a correction, a rise, a drop.

/**
 * Calcium as corrected by the laboratory, else for the albumin of the same day, else as it is and said so. The newest day counts; one
 * that could not be corrected lifts nothing.
 */
export function calcium(facts: ClientFacts, isOut: (lab: Lab) => boolean): Met | undefined {
  const all = [...readings(facts, 'correctedCalcium'), ...readings(facts, 'calcium')];
  const days = [...new Set(all.map(({ takenOn }) => takenOn))].sort().reverse();
  for (const day of days) {
    const ofDay = (analyte: Analyte) => readings(facts, analyte).filter(({ takenOn }) => takenOn === day);
    const [own, totals, albumins] = [ofDay('correctedCalcium'), ofDay('calcium'), ofDay('albumin')];
    const out = own.find(isOut);
    if (out !== undefined) return met(out, facts);
    if (own.length > 0) return undefined;
    for (const total of totals) {
      if (albumins.length === 0 && isOut(total)) return met(total, facts, ', not corrected: no albumin of that day');
      for (const albumin of albumins) {
        const corrected = correctedCalciumMgPerDl(total.value, albumin.value);
        if (corrected.kind === 'computed' && isOut(inItsUnit(total, corrected.value)))
          return met(total, facts, `, corrected ${roundHalfUp(corrected.value, 1)} mg/dL`);
      }
    }
    if (albumins.length > 0) return undefined;
  }
  return undefined;
}

/** The total as corrected, in the unit that it came in. */
function inItsUnit(total: Lab, value: number): Lab {
  const { unit } = total.entered;
  const entered = labInUnit('calcium', value, unit);
  return { ...total, value, entered: { unit, value: entered.kind === 'computed' ? entered.value : value } };
}

/** The newest result against every one of the 12 hours before it; an early result after dialysis rises by itself. */
export function risenWithinHours(facts: ClientFacts): Met | undefined {
  const timed = facts.labs.filter(lab => lab.analyte === 'potassium' && lab.takenAt !== undefined && lab.drawn !== 'after-dialysis');
  const [now, ...earlier] = timed.toSorted((a, b) => hoursBetween(a, b));
  if (now === undefined) return undefined;
  const before = earlier.find(lab => hoursBetween(lab, now) > 0 && hoursBetween(lab, now) <= 12 && now.value - lab.value > 0.5 + dust);
  return before && met(now, facts, ` after ${labWords(before, facts.today)}`);
}

/** A drop of 2 g/dL to the newest day, within 60 days. */
export function hemoglobinDropped(facts: ClientFacts): Met | undefined {
  const now = toTell(facts, standing(facts, 'hemoglobin'), lowFirst);
  const window = careFigure(facts.rules, 'alarm.hemoglobin-drop');
  const before = now && readings(facts, 'hemoglobin').find(lab => isBefore(lab, now, window) && lab.value - now.value >= 2 - dust);
  return now && before && met(now, facts, ` after ${labWords(before, facts.today)}`);
}

/** 26 umol/L in 48 hours, or by half in 7 days, also within one day where hours are known; not on dialysis, where creatinine swings. */
export function creatinineRisen(facts: ClientFacts): Met | undefined {
  if (isOnDialysis(facts)) return undefined;
  const all = readings(facts, 'creatinine').filter(({ inQuestion }) => !inQuestion);
  for (const now of standing(facts, 'creatinine')) {
    const before = all.find(lab => {
      const hours = hoursApart(lab, now);
      if (hours <= 0 || hours > 7 * 24) return false;
      return (hours <= 48 && now.value - lab.value >= creatinineRise - dust) || now.value >= 1.5 * lab.value - dust;
    });
    if (before !== undefined) return met(now, facts, ` after ${labWords(before, facts.today)}`);
  }
  return undefined;
}

/** Hours between two samples; where an hour is missing whole days count. */
function hoursApart(from: Lab, to: Lab): number {
  const isTimed = from.takenAt !== undefined && to.takenAt !== undefined;
  return isTimed ? hoursBetween(from, to) : daysBetween(from.takenOn, to.takenOn) * 24;
}

/** 26 umol/L; laboratories that print mg/dL call it 0.3. */
const creatinineRise = 26 / 88.4;

function isBefore(lab: Lab, now: Lab, days: number): boolean {
  const between = daysBetween(lab.takenOn, now.takenOn);
  return between > 0 && between <= days;
}

function hoursBetween(from: Lab, to: Lab): number {
  return daysBetween(from.takenOn, to.takenOn) * 24 + hourOfDay(to.takenAt) - hourOfDay(from.takenAt);
}
