import { type ClientFacts, labWords } from '#core/client/assessment/clientFacts.ts';
import { resultsInDate } from '#core/client/assessment/factAges.ts';
import { fromMemory, kdigoCkd2024, kdoqi2020, ownRule } from '#core/client/rules/sources.ts';
import { phosphateState } from '#core/client/states/phosphateState.ts';
import { alwaysHigh, potassiumState, potassiumStep } from '#core/client/states/potassiumState.ts';
import { interval } from '#core/quantity/interval.ts';
import { noLimit, position, proposed, type Target, type TargetItem, withheld } from '../target.ts';

/** Phosphate additives named on the label: none when phosphate is above normal, also once. Wasting never lifts it: leaving them out takes no nourishment away. */
export function phosphateAdditivesTarget(facts: ClientFacts): Target {
  const item = 'phosphateAdditives';
  const source = kdoqi2020('OPINION');
  const state = phosphateState(facts);
  if (state.kind === 'missing') return withheld(item, 'no result in date', state.why, ['A phosphate result.'], [ownRule]);
  const told = `${labWords(state.lab, facts.today)}.`;
  if (state.kind === 'low' || state.kind === 'in-range')
    return noLimit(item, 'not high', [told, 'Not high: nothing is avoided, though food without them is the better choice.'], [source]);
  return none(
    item,
    'absorbed nearly whole',
    [told, 'Additives are absorbed most, nearly whole by most sources: they go first. The amount is not on the label.'],
    source,
  );
}

/**
 * Potassium additives and salt substitutes: none when potassium is high, also while the other causes are looked at: leaving them
 * out takes no nourishment away (care rules 3).
 */
export function potassiumAdditivesTarget(facts: ClientFacts): Target {
  const item = 'potassiumAdditives';
  const source = fromMemory(kdigoCkd2024('practice point'));
  const state = potassiumState(facts);
  if (state.kind === 'unknown') {
    // Results of one day contradict each other: the highest decides, since leaving these out takes no nourishment away (care rules 2, 3).
    const inDate = resultsInDate(facts, 'potassium').filter(lab => !lab.hemolyzed);
    const high = inDate.find(lab => lab.takenOn === inDate[0]?.takenOn && lab.value > alwaysHigh);
    return high === undefined
      ? withheld(item, 'no result that counts', state.why, [state.whatToCheck], [ownRule])
      : none(item, 'takes no food away', [`${labWords(high, facts.today)}.`, state.why], source);
  }
  const told = `${labWords(state.lab, facts.today)}.`;
  if (state.kind !== 'high')
    return noLimit(item, 'not high', [told, 'Not high: nothing is avoided. Ask before a salt substitute is used.'], [source]);
  const causes =
    potassiumStep(facts, state.lab) === 'check-causes' ? ['The other causes are looked at beside it; no figure for food before.'] : [];
  return none(item, 'takes no food away', [told, 'Processed food with absorbable potassium goes first.', ...causes], source);
}

function none(item: TargetItem, inShort: string, reasons: readonly string[], source: ReturnType<typeof kdoqi2020>): Target {
  return proposed(
    item,
    inShort,
    { ...position('None named on the label', [source], { limit: 'at-most' }), range: interval(0, 0) },
    reasons,
  );
}
