import type { Source } from '#core/client/rules/source.ts';
import type { WeightBasisId } from '#core/client/states/weightBasis.ts';
import type { Interval } from '#core/quantity/interval.ts';

export const targetItems = [
  'energy',
  'protein',
  'sodium',
  'potassium',
  'phosphorus',
  'calcium',
  'fluid',
  'fiber',
  'phosphateAdditives',
  'potassiumAdditives',
] as const;

export type TargetItem = (typeof targetItems)[number];

export const targetUnitWords = ['kcal', 'g', 'mg', 'mL', 'named on the label'] as const;

export type TargetUnit = (typeof targetUnitWords)[number];

export const targetUnits: Readonly<Record<TargetItem, TargetUnit>> = {
  energy: 'kcal',
  protein: 'g',
  sodium: 'mg',
  potassium: 'mg',
  phosphorus: 'mg',
  calcium: 'mg',
  fluid: 'mL',
  fiber: 'g',
  phosphateAdditives: 'named on the label',
  potassiumAdditives: 'named on the label',
};

/** How the ends of the range are meant: `below` is strict (under 2300 mg), `at-least` has no upper end. */
export const limits = ['below', 'at-most', 'at-least', 'within'] as const;

export type Limit = (typeof limits)[number];

/** What one guideline family says. Without a range it gives no figure, and says what it gives instead. */
export interface Position {
  readonly says: string;
  /** A day's range in the target's unit. */
  readonly range?: Interval;
  readonly limit?: Limit;
  /** The same per kg of the weight basis. */
  readonly perKg?: Interval;
  readonly sources: readonly Source[];
  /** True where the figure or its grade is from memory: screens say "to be confirmed". */
  readonly toBeConfirmed: boolean;
}

export const targetKinds = ['proposed', 'no-limit', 'withheld'] as const satisfies readonly Target['kind'][];

/**
 * One day's target, or why there is none.
 * - `proposed`: a range. Where guidelines differ the least strict guideline is shown, the others stand in `alternatives`, and
 *   `needsChoice` asks the dietitian: nothing is chosen silently.
 * - `no-limit`: nothing to bound, with the reasons.
 * - `withheld`: a proposal is blocked; `whatToCheck` says by what.
 * `inShort` is why in a few words, for a line of a table: "dialysis takes protein away".
 */
export type Target =
  | {
      readonly kind: 'proposed';
      readonly item: TargetItem;
      readonly inShort: string;
      readonly range: Interval;
      readonly unit: TargetUnit;
      readonly basis: 'per-day';
      readonly limit: Limit;
      readonly perKg?: Interval;
      readonly weightBasis?: WeightBasisId;
      readonly needsChoice: boolean;
      readonly says: string;
      readonly reasons: readonly string[];
      readonly sources: readonly Source[];
      readonly toBeConfirmed: boolean;
      readonly alternatives: readonly Position[];
    }
  | {
      readonly kind: 'no-limit';
      readonly item: TargetItem;
      readonly inShort: string;
      readonly reasons: readonly string[];
      readonly sources: readonly Source[];
      readonly toBeConfirmed: boolean;
      readonly alternatives: readonly Position[];
    }
  | {
      readonly kind: 'withheld';
      readonly item: TargetItem;
      readonly inShort: string;
      readonly why: string;
      readonly whatToCheck: readonly string[];
      readonly sources: readonly Source[];
      readonly toBeConfirmed: boolean;
      /** Figures on record that are shown and not proposed. */
      readonly alternatives: readonly Position[];
    };

export function position(says: string, sources: readonly Source[], figure: Pick<Position, 'range' | 'limit' | 'perKg'> = {}): Position {
  return { says, sources, toBeConfirmed: isOpen(sources), ...figure };
}

export function proposed(
  item: TargetItem,
  inShort: string,
  main: Position & { readonly range: Interval },
  reasons: readonly string[],
  alternatives: readonly Position[] = [],
  weightBasis?: WeightBasisId,
): Target {
  return {
    kind: 'proposed',
    item,
    inShort,
    unit: targetUnits[item],
    basis: 'per-day',
    limit: main.limit ?? 'within',
    range: main.range,
    ...(main.perKg === undefined ? {} : { perKg: main.perKg }),
    ...(weightBasis === undefined ? {} : { weightBasis }),
    says: main.says,
    needsChoice: alternatives.some(({ range }) => range !== undefined && (range.lo !== main.range.lo || range.hi !== main.range.hi)),
    reasons,
    sources: main.sources,
    toBeConfirmed: main.toBeConfirmed,
    alternatives,
  };
}

export function noLimit(
  item: TargetItem,
  inShort: string,
  reasons: readonly string[],
  sources: readonly Source[],
  alternatives: readonly Position[] = [],
): Target {
  return { kind: 'no-limit', item, inShort, reasons, sources, toBeConfirmed: isOpen(sources), alternatives };
}

export function withheld(
  item: TargetItem,
  inShort: string,
  why: string,
  whatToCheck: readonly string[],
  sources: readonly Source[],
  alternatives: readonly Position[] = [],
): Target {
  return { kind: 'withheld', item, inShort, why, whatToCheck, sources, toBeConfirmed: isOpen(sources), alternatives };
}

function isOpen(sources: readonly Source[]): boolean {
  return sources.some(({ toBeConfirmed }) => toBeConfirmed === true);
}
