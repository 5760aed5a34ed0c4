import { type ClientFacts, labWords } from '#core/client/clientFacts.ts';
import { phosphateState } from '#core/client/phosphateState.ts';
import { otherCausesOfHighPotassium, potassiumState, potassiumStep } from '#core/client/potassiumState.ts';
import { fromMemory, kdigoCkd2024, kdoqi2020, ownRule } from '#core/client/sources.ts';
import { noLimit, position, proposed, type Target, type TargetItem, withheld } from '#core/client/target.ts';
import type { WastingState } from '#core/client/wastingState.ts';
import { interval } from '#core/quantity/interval.ts';

/** Phosphate additives named on the label: none when phosphate is high. Facts section 3.5, 6.1. */
export function phosphateAdditivesTarget(facts: ClientFacts, wasting: WastingState): Target {
  const item = 'phosphateAdditives';
  const source = kdoqi2020('OPINION');
  const state = phosphateState(facts);
  if (state.kind === 'missing')
    return withheld(item, `There is no phosphate result of the last ${state.atMostDays} days.`, ['A phosphate result.'], [ownRule]);
  const told = `${labWords(state.lab, facts.today)}.`;
  if (state.kind !== 'high')
    return noLimit(item, [told, 'Not high: nothing is avoided, though food without them is the better choice.'], [source]);
  return (
    blocked(item, wasting) ??
    none(item, [told, 'Additives are absorbed most, nearly whole by most sources: they go first. The amount is not on the label.'], source)
  );
}

/** Potassium additives and salt substitutes: none when potassium is high and the other causes are checked. Facts section 3.4. */
export function potassiumAdditivesTarget(facts: ClientFacts, wasting: WastingState): Target {
  const item = 'potassiumAdditives';
  const source = fromMemory(kdigoCkd2024('practice point'));
  const state = potassiumState(facts);
  if (state.kind === 'missing')
    return withheld(item, `There is no potassium result of the last ${state.atMostDays} days.`, ['A potassium result.'], [ownRule]);
  const told = `${labWords(state.lab, facts.today)}.`;
  if (state.kind !== 'high') return noLimit(item, [told, 'Not high: nothing is avoided. Ask before a salt substitute is used.'], [source]);
  const block = blocked(item, wasting);
  if (block) return block;
  if (potassiumStep(facts, state.lab) === 'check-causes')
    return withheld(item, `${told} The other causes come before food.`, otherCausesOfHighPotassium, [ownRule]);
  return none(item, [told, 'Processed food with absorbable potassium goes first.'], source);
}

function none(item: TargetItem, reasons: readonly string[], source: ReturnType<typeof kdoqi2020>): Target {
  return proposed(item, { ...position('None named on the label', [source], { limit: 'at-most' }), range: interval(0, 0) }, reasons);
}

function blocked(item: TargetItem, { blocks }: WastingState): Target | undefined {
  if (blocks.length === 0) return undefined;
  return withheld(
    item,
    blocks.map(({ why }) => why).join(' '),
    blocks.map(({ whatToCheck }) => whatToCheck),
    blocks.map(({ source }) => source),
  );
}
