import type { ReadLabel } from '#core/label/label.ts';
import type { Amount } from '#core/quantity/amount.ts';
import type { MineralEstimate, MineralRange, NoEstimate } from './minerals.ts';

/** The label with an estimate in the place of a phosphorus or potassium that it does not print. What it prints stays. */
export function estimatedLabel(label: ReadLabel, estimate: MineralEstimate | NoEstimate | undefined): ReadLabel {
  if (estimate?.kind !== 'estimate') return label;
  const { phosphorusMg, potassiumMg } = label.amounts;
  return {
    ...label,
    amounts: {
      ...label.amounts,
      phosphorusMg: filled(phosphorusMg, estimate.phosphorus),
      potassiumMg: filled(potassiumMg, estimate.potassium),
    },
  };
}

function filled(amount: Amount, { sure, likely }: MineralRange): Amount {
  if (amount.kind === 'known' || amount.reason !== 'not-printed') return amount;
  return { kind: 'known', likely: likely.mid, range: sure, source: 'estimated' };
}
