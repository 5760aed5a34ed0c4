import type { Issue } from '#core/errors.ts';
import { recordOf } from '#core/json/recordOf.ts';
import type { Amount } from '#core/quantity/amount.ts';
import { type IntervalJson, intervalToJson } from '#core/quantity/interval.ts';
import { type Nutrient, nutrientKeys, nutrients } from '#core/quantity/nutrients.ts';
import { ceilTo, floorTo, roundHalfUp } from '#core/quantity/rounding.ts';
import type { Amounts, AmountsFor, Finding, ReadLabel } from './label.ts';
import { per100G } from './serving/per100G.ts';

export type AmountJson =
  | { readonly kind: 'known'; readonly printed?: number; readonly likely?: number; readonly range: IntervalJson; readonly source: string }
  | { readonly kind: 'unknown'; readonly reason: string };

export type AmountsJson = Readonly<Record<Nutrient, AmountJson>>;

/** A type, not an interface, so that it goes where any JSON object goes. */
export type ReadLabelJson = {
  readonly id: string | null;
  readonly amounts: AmountsJson;
  readonly amountsFor: AmountsFor;
  readonly per100G: AmountsJson;
  readonly findings: readonly Finding[];
  readonly issues: readonly Issue[];
};

/**
 * A read label as `platewright label --jsonl` prints it (docs/formats.md). Ranges are rounded outward here, two places
 * beyond what screens show, and an unbounded end is null. Sodium 230 is { kind: 'known', printed: 230, range: [225, 235] }.
 */
export function readLabelToJson(label: ReadLabel): ReadLabelJson {
  return {
    id: label.printed.id ?? null,
    amounts: amountsToJson(label.amounts),
    amountsFor: label.amountsFor,
    per100G: amountsToJson(per100G(label)),
    findings: label.findings,
    issues: label.issues,
  };
}

function amountsToJson(amounts: Amounts): AmountsJson {
  return recordOf(nutrientKeys, key => amountToJson(amounts[key], nutrients[key].decimals + 2));
}

function amountToJson(amount: Amount, decimals: number): AmountJson {
  if (amount.kind === 'unknown') return amount;
  return {
    kind: 'known',
    ...(amount.printed === undefined ? {} : { printed: roundHalfUp(amount.printed, decimals) }),
    ...(amount.likely === undefined ? {} : { likely: roundHalfUp(amount.likely, decimals) }),
    range: intervalToJson({ lo: floorTo(amount.range.lo, decimals), hi: ceilTo(amount.range.hi, decimals) }),
    source: amount.source,
  };
}
