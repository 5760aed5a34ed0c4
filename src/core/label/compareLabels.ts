import type { AdditiveFinding } from '#core/additive/additive.ts';
import type { Amount } from '#core/quantity/amount.ts';
import { overlaps } from '#core/quantity/interval.ts';
import { type Nutrient, nutrientKeys } from '#core/quantity/nutrients.ts';
import type { Ingredient, Statement } from '#core/statement/statement.ts';
import type { Amounts, ReadLabel } from './label.ts';
import { per100G, per100Ml } from './serving/per100G.ts';

export interface FigureChange {
  readonly nutrient: Nutrient;
  /** `appeared` and `disappeared`: known on one of the two labels only, which says nothing about the food. */
  readonly kind: 'changed' | 'appeared' | 'disappeared';
  /** Both in the quantity that `comparedPer` names. */
  readonly earlier: Amount;
  readonly later: Amount;
}

export interface LabelComparison {
  /**
   * - `same`: nothing that is read differs.
   * - `reprinted`: other words, another serving, lines more or fewer, but figures and ingredients allow the same food.
   * - `changed`: a figure, an ingredient or an additive is another one.
   */
  readonly outcome: 'same' | 'reprinted' | 'changed';
  /** `nothing`: the servings differ and one has no grams or milliliters, or the states differ; no figure was compared. */
  readonly comparedPer: 'the-same-quantity' | '100-g' | '100-ml' | 'nothing';
  readonly figures: readonly FigureChange[];
  readonly servingChanged: boolean;
  /** `reworded`: other letters, the same ingredients in the same order. */
  readonly statement: 'same' | 'reworded' | 'changed' | 'appeared' | 'disappeared';
  /** Only where both labels have a statement: without one, additives are unknown. */
  readonly additivesCame: readonly AdditiveFinding[];
  readonly additivesWent: readonly AdditiveFinding[];
}

/**
 * What changed between two labels of one food. For one quantity, another printed number is a change; where the serving is
 * another one, only figures that no rounding can bring together are: 140 mg in 28 g and 150 mg in 30 g allow the same food.
 */
export function compareLabels(earlier: ReadLabel, later: ReadLabel): LabelComparison {
  const { comparedPer, before, after } = onOneQuantity(earlier, later);
  const figures = before && after ? figureChanges(before, after, comparedPer === 'the-same-quantity') : [];
  const servingChanged = !sameServing(earlier, later);
  const statement = statementChange(earlier.statement, later.statement);
  const bothRead = earlier.statement !== undefined && later.statement !== undefined;
  const additivesCame = bothRead ? missingFrom(earlier.additives, later.additives) : [];
  const additivesWent = bothRead ? missingFrom(later.additives, earlier.additives) : [];
  const changed =
    figures.some(({ kind }) => kind === 'changed') || statement === 'changed' || additivesCame.length > 0 || additivesWent.length > 0;
  const same = figures.length === 0 && !servingChanged && statement === 'same';
  return {
    outcome: changed ? 'changed' : same ? 'same' : 'reprinted',
    comparedPer,
    figures,
    servingChanged,
    statement,
    additivesCame,
    additivesWent,
  };
}

interface OnOneQuantity {
  readonly comparedPer: LabelComparison['comparedPer'];
  readonly before?: Amounts;
  readonly after?: Amounts;
}

function onOneQuantity(earlier: ReadLabel, later: ReadLabel): OnOneQuantity {
  if (earlier.printed.state !== later.printed.state) return { comparedPer: 'nothing' };
  const sameBasis = earlier.printed.basis === later.printed.basis;
  if (sameBasis && (earlier.printed.basis !== 'per-serving' || sameServing(earlier, later)))
    return { comparedPer: 'the-same-quantity', before: earlier.amounts, after: later.amounts };
  const [a, b] = [earlier.amountsFor, later.amountsFor];
  if (a.grams !== undefined && b.grams !== undefined) return { comparedPer: '100-g', before: per100G(earlier), after: per100G(later) };
  if (a.milliliters !== undefined && b.milliliters !== undefined)
    return { comparedPer: '100-ml', before: per100Ml(earlier), after: per100Ml(later) };
  return { comparedPer: 'nothing' };
}

function sameServing(earlier: ReadLabel, later: ReadLabel): boolean {
  const [a, b] = [earlier.amountsFor, later.amountsFor];
  return (
    earlier.printed.basis === later.printed.basis &&
    a.servings === b.servings &&
    a.grams === b.grams &&
    a.milliliters === b.milliliters &&
    a.household?.count === b.household?.count &&
    a.household?.measure === b.household?.measure
  );
}

function figureChanges(before: Amounts, after: Amounts, sameQuantity: boolean): readonly FigureChange[] {
  const changes: FigureChange[] = [];
  for (const nutrient of nutrientKeys) {
    const earlier = before[nutrient];
    const later = after[nutrient];
    const kind = figureChange(earlier, later, sameQuantity);
    if (kind !== undefined) changes.push({ nutrient, kind, earlier, later });
  }
  return changes;
}

function figureChange(earlier: Amount, later: Amount, sameQuantity: boolean): FigureChange['kind'] | undefined {
  if (earlier.kind === 'unknown') return later.kind === 'known' ? 'appeared' : undefined;
  if (later.kind === 'unknown') return 'disappeared';
  if (sameQuantity && earlier.printed !== undefined && later.printed !== undefined)
    return earlier.printed === later.printed ? undefined : 'changed';
  return overlaps(earlier.range, later.range) ? undefined : 'changed';
}

function statementChange(earlier: Statement | undefined, later: Statement | undefined): LabelComparison['statement'] {
  if (earlier === undefined) return later === undefined ? 'same' : 'appeared';
  if (later === undefined) return 'disappeared';
  if (earlier.text === later.text) return 'same';
  return areSameLists(earlier.ingredients, later.ingredients) ? 'reworded' : 'changed';
}

/** Alike in names, nesting, presence and printed shares; case, notes and positions say nothing. */
function areSameLists(some: readonly Ingredient[], others: readonly Ingredient[]): boolean {
  return some.length === others.length && some.every((one, at) => isSameIngredient(one, others[at]!));
}

function isSameIngredient(a: Ingredient, b: Ingredient): boolean {
  return (
    a.name.toLowerCase() === b.name.toLowerCase() &&
    a.presence === b.presence &&
    a.declaredPercent === b.declaredPercent &&
    a.atMostPercent === b.atMostPercent &&
    areSameLists(a.parts, b.parts)
  );
}

function missingFrom(some: readonly AdditiveFinding[], all: readonly AdditiveFinding[]): readonly AdditiveFinding[] {
  const keys = new Set(some.map(additiveKey));
  return all.filter(each => !keys.has(additiveKey(each)));
}

function additiveKey({ id, class: kind }: AdditiveFinding): string {
  return `${id} ${kind}`;
}
