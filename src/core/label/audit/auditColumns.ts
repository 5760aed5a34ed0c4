import { nameOf } from '#core/label/figure/figure.ts';
import { sentenceStart } from '#core/label/figure/spanText.ts';
import { divide, type Interval, overlaps } from '#core/quantity/interval.ts';
import type { Finding } from '../label.ts';
import { gramsOf, millilitersOf, type PanelView } from './panelView.ts';

/**
 * A second column of the same food must be in proportion to the first, as far as rounding allows: 140 mg of sodium a serving
 * is 412.5 up to 435 mg in a package of 3. Columns of another state (as prepared) and of a quantity that the label does not
 * tell are not compared.
 */
export function auditColumns(first: PanelView, others: readonly PanelView[]): readonly Finding[] {
  const found: Finding[] = [];
  for (const other of others) {
    if (other.state !== first.state) continue;
    const factor = proportion(first, other);
    if (factor === undefined) continue;
    const names: string[] = [];
    for (const { key } of other.panel.lines) {
      const one = first.ranges[key];
      const two = other.ranges[key];
      if (one && two && !overlaps(product(one, factor), two)) names.push(nameOf(key));
    }
    if (names.length === 0) continue;
    found.push({
      code: 'columns-disagree',
      about: other.prefix.slice(0, -1),
      message: `${sentenceStart(names)} of this column ${names.length === 1 ? 'is' : 'are'} not in proportion to the first column, even with rounding.`,
      source: '21 CFR 101.9(b)(10) and (b)(12): the columns describe one food',
    });
  }
  return found;
}

/** How many times the first column's quantity the other's is. */
function proportion(first: PanelView, other: PanelView): Interval | undefined {
  const grams = gramsOf(first);
  const otherGrams = gramsOf(other);
  if (grams && otherGrams) return divide(otherGrams, grams);
  const milliliters = millilitersOf(first);
  const otherMilliliters = millilitersOf(other);
  if (milliliters && otherMilliliters) return divide(otherMilliliters, milliliters);
  return isWholeContainer(other) && first.basis === 'per-serving' ? first.serving?.perContainer?.range : undefined;
}

function isWholeContainer({ basis, serving }: PanelView): boolean {
  const household = serving?.household;
  return basis === 'per-serving' && household?.count === 1 && (household.measure === 'container' || household.measure === 'package');
}

function product(a: Interval, b: Interval): Interval {
  return { lo: a.lo * b.lo, hi: a.hi * b.hi };
}
