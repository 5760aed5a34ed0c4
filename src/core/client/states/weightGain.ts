import { ageWords, type ClientFacts, has } from '#core/client/assessment/clientFacts.ts';
import { weightInDate } from '#core/client/assessment/factAges.ts';
import { kilogramsPerPound } from '#core/client/formulas/bodyUnits.ts';
import { interdialyticGain } from '#core/client/formulas/interdialyticGain.ts';
import { careFigure } from '#core/client/rules/careRules.ts';
import { roundHalfUp } from '#core/quantity/rounding.ts';
import { type SessionFigures, sessionsInDate } from './sessions.ts';

export interface WeightGainToCall {
  readonly kg: number;
  readonly within: 'between-treatments' | '2-days';
  readonly words: string;
}

/**
 * The gain of weight for which this client calls the same day: hemodialysis over 4.5 % of the dry weight between two treatments (70 kg:
 * 3.15 kg, 6.9 lb); peritoneal dialysis, and heart failure or overload off dialysis, 2 kg in 2 days. Undefined for everybody else, and
 * on hemodialysis without a dry weight in date.
 */
export function weightGainToCall(facts: ClientFacts): WeightGainToCall | undefined {
  const told = (kg: number): string => `${roundHalfUp(kg, 1)} kg (${roundHalfUp(kg / kilogramsPerPound, 1)} lb)`;
  if (facts.setting === 'hemodialysis') {
    const dry = weightInDate(facts, 'dry');
    const percent = careFigure(facts.rules, 'contact.weight-gain-hemodialysis');
    if (dry === undefined) return undefined;
    const kg = (dry.kg * percent) / 100;
    return {
      kg,
      within: 'between-treatments',
      words: `over ${told(kg)} between two treatments, ${percent} % of the dry weight of ${dry.kg.toFixed(1)} kg`,
    };
  }
  const isHeld = facts.setting === 'ckd-not-on-dialysis' && has(facts, 'heart-failure', 'overload');
  if (facts.setting !== 'peritoneal-dialysis' && !isHeld) return undefined;
  const kg = careFigure(facts.rules, 'contact.weight-gain-2-days');
  return { kg, within: '2-days', words: `${told(kg)} or more in 2 days` };
}

/** The newest gain over the dry weight, in words, where it is over the line. */
export function gainOverLine(facts: ClientFacts): string | undefined {
  const [before, dry] = [weightInDate(facts, 'before-dialysis'), weightInDate(facts, 'dry')];
  const after = weightInDate(facts, 'after-dialysis');
  const line = careFigure(facts.rules, 'contact.weight-gain-hemodialysis') + 1e-9;
  const sessions = sessionsInDate(facts);
  const session = sessions.find(({ gainPercent }) => gainPercent !== undefined);
  if (session !== undefined && (before === undefined || session.on >= before.on)) return gainOfSessions(session, sessions, line);
  if (before === undefined || dry === undefined || (after !== undefined && after.on > before.on)) return undefined;
  const result = interdialyticGain(before.kg, dry.kg);
  return result.kind === 'computed' && result.value.gainPercent > line
    ? `gain ${result.value.gainPercent.toFixed(1)} % (${result.value.gainKg.toFixed(1)} kg over dry ${dry.kg.toFixed(1)} kg)`
    : undefined;
}

/** The newest gain of the treatments on record: "gain 5.0 % (3.6 kg) on 2026-06-12, over the line at 3 of 4 treatments". Undefined where it is not over. */
function gainOfSessions(newest: SessionFigures, all: readonly SessionFigures[], line: number): string | undefined {
  const isOver = ({ gainPercent = 0 }: SessionFigures): boolean => gainPercent > line;
  const { gainPercent = 0, gainKg = 0, on } = newest;
  const told = all.filter(one => one.gainPercent !== undefined);
  return isOver(newest)
    ? `gain ${gainPercent.toFixed(1)} % (${gainKg.toFixed(1)} kg) on ${on}, over the line at ${told.filter(isOver).length} of ${told.length} treatments`
    : undefined;
}

/** The newest weight after dialysis is 3 % or more away from the prescribed dry weight (care rules 1). */
export function dryWeightAway(facts: ClientFacts): string | undefined {
  const [dry, after] = [weightInDate(facts, 'dry'), weightInDate(facts, 'after-dialysis', 'after-drain')];
  if (facts.setting !== 'hemodialysis' || dry === undefined || after === undefined || after.on < dry.on) return undefined;
  const percent = (Math.abs(after.kg - dry.kg) / dry.kg) * 100;
  return percent >= 3 - 1e-9
    ? `${after.kg.toFixed(1)} kg after dialysis (${ageWords(after.on, facts.today)}) is ${percent.toFixed(1)} % from the dry weight of ${dry.kg.toFixed(1)} kg`
    : undefined;
}
