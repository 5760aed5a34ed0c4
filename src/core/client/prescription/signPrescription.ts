import type { ClientRecord, DecidedTarget, Prescription } from '#core/client/record/record.ts';
import { type Interval, isOpenEnded } from '#core/quantity/interval.ts';
import { isAsProposed } from './asProposed.ts';
import { type Limit, type Target, type TargetItem, targetItems } from './target.ts';
import { targetNames } from './targetWords.ts';

/** No day's amount in kcal, g, mg or mL comes near it: a figure this large stands for "no end" or is a slip of the finger. */
const noAmount = 1_000_000;

/** What was proposed for each item, where that is known. */
type Proposed = Readonly<Record<TargetItem, Target>>;

/**
 * Why a draft cannot be signed, in words; empty when it can. With `proposed`, what claims to be as proposed must be so, or it would
 * pass without a reason. The words name items, never figures.
 */
export function missingToSign(targets: readonly DecidedTarget[], by: string, proposed?: Proposed): readonly string[] {
  const missing: string[] = [];
  if (by.trim() === '') missing.push('the name of who signs');
  for (const item of targetItems) {
    const own = targets.filter(target => target.item === item);
    if (own.length !== 1)
      missing.push(own.length === 0 ? `a decision on ${nameOf(item)}` : `one decision on ${nameOf(item)}, not ${own.length}`);
  }
  for (const target of targets) {
    const { item, from, reason } = target;
    if (from !== 'proposal' && (reason ?? '').trim() === '')
      missing.push(`a reason for the ${nameOf(item)} target, which is not as proposed`);
    const wrong = figureFault(target);
    if (wrong !== undefined) missing.push(wrong);
    else if (from === 'proposal' && proposed !== undefined && !isAsProposed(target, proposed[item]))
      missing.push(`a reason for the ${nameOf(item)} target, and it marked as your own: it is not as proposed`);
  }
  return missing;
}

function figureFault({ item, kind, from, range, limit = 'within' }: DecidedTarget): string | undefined {
  const name = nameOf(item);
  if (range === undefined) {
    if (kind !== 'no-limit' && kind !== 'withheld') return `a ${name} figure, or the word that there is no limit or that it is withheld`;
    return from === 'alternative' ? `the ${name} figure of the guideline that was chosen` : undefined;
  }
  if (kind === 'no-limit' || kind === 'withheld') return `one of the two for ${name}: a figure, or none`;
  const { lo, hi } = range;
  if (!(Number.isFinite(lo) && lo >= 0 && lo < noAmount && (isOpenEnded(range) || hi < noAmount)))
    return `${name} figures from 0 to under a million; leave the upper end empty where there is none`;
  if (!(lo <= hi)) return `a ${name} range whose low end is not above its high end`;
  if (contradicts(range, limit)) return `a ${name} figure that agrees with how it is meant (${limitNames[limit]})`;
  if (item === 'fluid' && limit !== 'at-most' && limit !== 'at-least')
    return 'one figure for fluid, "up to" for a limit or "at least" for a need: nobody can drink a range';
  return undefined;
}

/** As a sentence has it: "phosphate additives". */
function nameOf(item: TargetItem): string {
  return targetNames[item].toLowerCase();
}

const limitNames: Readonly<Record<Limit, string>> = { below: 'under', 'at-most': 'up to', 'at-least': 'at least', within: 'from, to' };

/** A most needs an end, and no least beside it; a least has no end, or is one figure; a range has both ends. */
function contradicts(range: Interval, limit: Limit): boolean {
  const { lo, hi } = range;
  switch (limit) {
    case 'below':
      return isOpenEnded(range) || hi === 0 || lo !== 0;
    case 'at-most':
      return isOpenEnded(range) || (lo !== 0 && lo !== hi);
    case 'at-least':
      return lo === 0 || !(isOpenEnded(range) || lo === hi);
    case 'within':
      return isOpenEnded(range);
  }
}

/** A choice of the dietitian's that stands and that a new decision would leave out. */
export interface LostChoice {
  readonly item: TargetItem;
  readonly before: DecidedTarget;
  readonly now: DecidedTarget | undefined;
}

/**
 * Every own figure and every other guideline of the prescription that stands which is not decided so again, in the order of the items.
 * What was signed as proposed may follow the newer proposal without a word.
 */
export function changesFromSigned(before: readonly DecidedTarget[], decided: readonly DecidedTarget[]): readonly LostChoice[] {
  return targetItems.flatMap(item => {
    const earlier = before.find(one => one.item === item);
    const now = decided.find(one => one.item === item);
    return earlier === undefined || earlier.from === 'proposal' || (now !== undefined && isSameFigure(earlier, now))
      ? []
      : [{ item, before: earlier, now }];
  });
}

function isSameFigure(a: DecidedTarget, b: DecidedTarget): boolean {
  if (a.range === undefined || b.range === undefined) return a.range === b.range && (a.kind === undefined || a.kind === b.kind);
  return a.range.lo === b.range.lo && a.range.hi === b.range.hi && (a.limit ?? 'within') === (b.limit ?? 'within');
}

/** Adds a signed prescription, which takes the place of the one before it. What was signed is never changed. */
export function withSigned(record: ClientRecord, prescription: Omit<Prescription, 'supersedes'>): ClientRecord {
  const [before] = record.prescriptions;
  const signed: Prescription = { ...prescription, ...(before === undefined ? {} : { supersedes: before.id }) };
  return { ...record, prescriptions: [signed, ...record.prescriptions] };
}
