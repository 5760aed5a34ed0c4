import { type ClientFacts, labWords, takes } from '#core/client/assessment/clientFacts.ts';
import { latest, resultsInDate } from '#core/client/assessment/factAges.ts';
import { correctedCalciumMgPerDl } from '#core/client/formulas/correctedCalcium.ts';
import { calciumTarget } from '#core/client/prescription/targets/calciumTarget.ts';
import { addedADay } from './eaten.ts';
import { binderWords, mayHoldCalcium } from './takenBinders.ts';

/** Usual upper end of corrected calcium in mg/dL, where the laboratory sends none (KDOQI 2003: act over 10.2, from memory). */
const usualUpperCalcium = 10.2;

/** Corrected calcium above the laboratory's limit together with a calcium target, a binder or a supplement (care rules 4). */
export function calciumAbove(facts: ClientFacts): string | undefined {
  // Of binders on record by name those alone that may hold calcium.
  const binder = binderWords(facts, mayHoldCalcium);
  const added = addedADay(facts, 'calciumMg');
  const sources = [
    ...(binder === undefined ? [] : [binder]),
    ...(takes(facts, 'active-vitamin-d') ? ['active vitamin D'] : []),
    ...(takes(facts, 'ketoanalogs') ? ['ketoanalogs'] : []),
    ...(facts.assessment.supplements.includes('calcium') ? ['calcium supplement'] : []),
    ...(added !== undefined && added.lo > 0 ? ['calcium in supplements or feeds'] : []),
    ...(calciumTarget(facts).kind === 'proposed' ? ['calcium target'] : []),
  ];
  if (sources.length === 0) return undefined;
  const total = latest(facts, 'calcium');
  const albumin = total && resultsInDate(facts, 'albumin').findLast(({ takenOn }) => takenOn === total.takenOn);
  const corrected = total && albumin ? correctedCalciumMgPerDl(total.value, albumin.value) : undefined;
  const own = latest(facts, 'correctedCalcium');
  const lab = own !== undefined && (total === undefined || own.takenOn >= total.takenOn) ? own : total;
  if (lab === undefined) return undefined;
  const mgPerDl = lab === own ? own.value : corrected?.kind === 'computed' ? corrected.value : lab.value;
  return mgPerDl > (lab.upperNormal ?? usualUpperCalcium) ? `${labWords(lab, facts.today)}, with ${sources.join(', ')}` : undefined;
}
