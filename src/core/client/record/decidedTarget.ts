import { z } from 'zod';
import { type Limit, limits, targetItems, targetUnits, targetUnitWords } from '#core/client/prescription/target.ts';
import type { DeepReadonly } from '#core/json/deepReadonly.ts';
import { type Interval, type IntervalJson, intervalFromJson, intervalToJson } from '#core/quantity/interval.ts';

/** A figure, no limit, or held back until something is checked. */
export const decidedKinds = ['bounded', 'no-limit', 'withheld'] as const;
export type DecidedKind = (typeof decidedKinds)[number];

/** As proposed, another guideline's figure, or the dietitian's own. */
export const decidedFroms = ['proposal', 'alternative', 'own'] as const;
export type DecidedFrom = (typeof decidedFroms)[number];

const end = z.number().nonnegative();
const keptRange = z.tuple([end, end.nullable()]).refine(([lo, hi]) => hi === null || lo <= hi);
const decision = {
  item: z.enum(targetItems),
  /** Missing in records of form 1, where only a range tells: without one nobody can say whether it was withheld or without limit. */
  kind: z.enum(decidedKinds).exactOptional(),
  limit: z.enum(limits).exactOptional(),
  /** What it was before the dietitian changed it; the same when she took it over. */
  from: z.enum(decidedFroms),
  /** Why it is not as proposed, or why this position was chosen. Needed unless `from` is `proposal`. */
  reason: z.string().exactOptional(),
  /** The words and sources of the position that was taken. */
  says: z.string(),
};
/** What it rested on, why and by whom, in short, as it stood when it was signed; missing in records of form 2 and before. */
const line = z.object({ basis: z.string().exactOptional(), why: z.string(), source: z.string() });

/** As it is kept: the range as [lo, hi], an open end as null. */
export const decidedTargetSchema = z
  .object({
    ...decision,
    unit: z.enum(targetUnitWords),
    range: keptRange.exactOptional(),
    line: line.exactOptional(),
    /** What was proposed beside it then; missing in records of form 2 and before. */
    proposedThen: z
      .object({ kind: z.enum(decidedKinds), range: keptRange.exactOptional(), limit: z.enum(limits).exactOptional() })
      .exactOptional(),
  })
  .refine(({ item, unit }) => unit === targetUnits[item])
  .refine(one => one.kind === undefined || (one.kind === 'bounded') === (one.range !== undefined));
export type DecidedTargetJson = DeepReadonly<z.input<typeof decidedTargetSchema>>;

/**
 * As it is sent to be signed, without the unit. Ends are any numbers: what is wrong with a figure is said in the words of `missingToSign`.
 * Without a `kind` it is bounded with a range; without one an own decision is no limit, and what is taken over is as it was proposed.
 */
export const sentTargetSchema = z.object({
  ...decision,
  range: z.tuple([z.number(), z.number().nullable()]).exactOptional(),
  reason: z.string().max(1_000).exactOptional(),
  says: z.string().max(2_000),
});
export type SentTarget = DeepReadonly<z.output<typeof sentTargetSchema>>;

/**
 * A day's target as the dietitian decided it: bounded by a range (open upwards or not), without limit, or withheld until something is checked.
 */
export type DecidedTarget = Omit<DecidedTargetJson, 'range' | 'proposedThen'> & {
  readonly range?: Interval;
  readonly proposedThen?: ProposedThen;
};
interface ProposedThen {
  readonly kind: DecidedKind;
  readonly range?: Interval;
  readonly limit?: Limit;
}

export function decidedTargetFromJson({ proposedThen, ...target }: DecidedTargetJson): DecidedTarget {
  return { ...withInterval(target), ...(proposedThen === undefined ? {} : { proposedThen: withInterval(proposedThen) }) };
}

export function decidedTargetToJson({ proposedThen, ...target }: DecidedTarget): DecidedTargetJson {
  return { ...withEnds(target), ...(proposedThen === undefined ? {} : { proposedThen: withEnds(proposedThen) }) };
}

function withInterval<Kept extends { readonly range?: IntervalJson }>({ range, ...rest }: Kept) {
  return range === undefined ? rest : { ...rest, range: intervalFromJson(range) };
}

function withEnds<Told extends { readonly range?: Interval }>({ range, ...rest }: Told) {
  return range === undefined ? rest : { ...rest, range: intervalToJson(range) };
}
