import { changesFromSigned } from '#core/client/prescription/signPrescription.ts';
import { type Limit, type TargetItem, targetUnits } from '#core/client/prescription/target.ts';
import type { DecidedFrom, DecidedKind, DecidedTarget } from '#core/client/record/record.ts';
import { intervalFromJson } from '#core/quantity/interval.ts';
import type { Client } from '../../api.ts';

export type Target = NonNullable<Client['targets']>[number];
export type SignedTarget = Client['prescriptions'][number]['targets'][number];

/** What the dietitian decides of one target; ends as typed, empty where there is none. */
export interface Decision {
  readonly kind: DecidedKind;
  readonly from: DecidedFrom;
  readonly lo: string;
  readonly hi: string;
  readonly limit: Limit;
  readonly says: string;
  readonly reason: string;
}

export function signedBefore(client: Pick<Client, 'prescriptions'>, item: string): SignedTarget | undefined {
  return client.prescriptions[0]?.targets.find(one => one.item === item);
}

/** Whether what was signed before is worth a word: a choice of its own, or a proposal that was another one. */
export function differsFrom(before: SignedTarget, { kind, range }: Target): boolean {
  if (before.from !== 'proposal' || before.kind === 'not-told') return true;
  if (before.item === 'fluid') return false;
  const now = kind === 'proposed' ? 'bounded' : kind;
  return before.kind !== now || before.range?.[0] !== range?.[0] || before.range?.[1] !== range?.[1];
}

/** "at least 98 g a day, own decision, because: a wound that heals". */
export function beforeText({ figure, from, reason }: SignedTarget): string {
  const how = from === 'own' ? 'own decision' : from === 'alternative' ? 'another guideline' : 'as proposed then';
  return `${figure}, ${how}${reason === undefined ? '' : `, because: ${reason.replace(/\.$/, '')}`}`;
}

/** As it was decided before, where that was a choice and can still be made; else the proposal. */
export function startingDecision(target: Target, before: SignedTarget | undefined): Decision {
  if (before === undefined || before.kind === 'not-told') return proposedDecision(target);
  if (before.from === 'proposal') return withFluidOf(before, proposedDecision(target), target);
  const { from, kind, says, reason = '' } = before;
  const other = target.alternatives.find(one => one.says === says);
  if (from === 'alternative' && other === undefined) return { ...proposedDecision(target), reason };
  // Fluid is one figure that was picked; another guideline's figure is as it reads today.
  const { range, limit = 'within' } = from === 'own' || target.item === 'fluid' ? before : other!;
  const [lo, hi] = endsOf(range);
  return { kind, from, lo, hi, limit, says, reason };
}

/** The one figure of fluid that was picked within an earlier proposal, where it still lies within this one. */
function withFluidOf({ item, range, limit }: SignedTarget, decision: Decision, target: Target): Decision {
  if (item !== 'fluid' || range === undefined || target.range === undefined) return decision;
  const figure = limit === 'at-least' ? range[0] : range[1];
  const [least, most] = target.range;
  const isWithin = figure !== null && least <= figure && (most === null || figure <= most);
  return isWithin && (target.limit === 'within' || target.limit === limit)
    ? fluidDecision(decision, limit ?? 'at-most', String(figure))
    : decision;
}

/** The choices signed before that these decisions would leave out, as the server will find them. */
export function leftOut(client: Client, decisions: Readonly<Record<string, Decision>>): readonly TargetItem[] {
  const before = (client.prescriptions[0]?.targets ?? []).map(({ kind, range, ...one }) =>
    decidedTarget(one, kind === 'not-told' ? undefined : kind, range),
  );
  const now = (client.targets ?? []).map(({ item }) => {
    const { kind, from, says, limit, ...typed } = decisions[item]!;
    return decidedTarget({ item, from, says, limit }, kind, kind === 'bounded' ? rangeOf(typed) : undefined);
  });
  return changesFromSigned(before, now).map(({ item }) => item);
}

function decidedTarget(
  { item, from, says, limit }: Pick<SignedTarget, 'item' | 'from' | 'says' | 'limit'>,
  kind: Decision['kind'] | undefined,
  range: readonly [number, number | null] | undefined,
): DecidedTarget {
  return {
    item,
    unit: targetUnits[item],
    from,
    says,
    ...(kind === undefined ? {} : { kind }),
    ...(range === undefined ? {} : { range: intervalFromJson(range) }),
    ...(limit === undefined ? {} : { limit }),
  };
}

function endsOf(range: readonly [number, number | null] | undefined): readonly [lo: string, hi: string] {
  return range === undefined ? ['', ''] : [range[0] === 0 ? '' : String(range[0]), range[1] === null ? '' : String(range[1])];
}

/** Fluid is proposed as a range to choose from and signed as one figure, which the dietitian picks. */
function proposedDecision({ item, kind, range, limit = 'within', says }: Target): Decision {
  const [lo, hi] = endsOf(range);
  const decision: Decision = { kind: kind === 'proposed' ? 'bounded' : kind, from: 'proposal', lo, hi, limit, says, reason: '' };
  return item === 'fluid' && range !== undefined ? oneFigure(decision) : decision;
}

export function decisionFrom(value: string, target: Target, before: Decision): Decision {
  if (value === 'proposal') return { ...proposedDecision(target), reason: before.reason };
  const own: Decision = { ...before, from: 'own', says: 'set by the dietitian' };
  if (value === 'own-no-limit') return { ...own, kind: 'no-limit', lo: '', hi: '' };
  if (value === 'own-withheld') return { ...own, kind: 'withheld', lo: '', hi: '' };
  if (value === 'own') {
    const bounded: Decision = { ...own, kind: 'bounded' };
    return target.item === 'fluid' ? fluidDecision(bounded, own.limit, fluidFigure(own)) : ownDecision(bounded, own.lo, own.hi);
  }
  const other = target.alternatives.find(({ says }) => says === value);
  const [lo, hi] = endsOf(other?.range);
  const { reason } = before;
  const chosen: Decision = { kind: 'bounded', from: 'alternative', lo, hi, limit: other?.limit ?? 'within', says: value, reason };
  return target.item === 'fluid' ? oneFigure(chosen) : chosen;
}

/** How an own figure is meant follows from which ends are typed. */
export function ownDecision(decision: Decision, lo: string, hi: string): Decision {
  const limit = hi === '' ? 'at-least' : Number(lo || 0) === 0 ? 'at-most' : 'within';
  return { ...decision, lo, hi, limit };
}

/** The one figure that a bound or a single amount of fluid has; a range has none yet. */
function oneFigure(decision: Decision): Decision {
  const { limit, lo, hi } = decision;
  if (limit === 'at-least') return fluidDecision(decision, limit, lo);
  return fluidDecision(decision, 'at-most', limit === 'at-most' || lo === hi ? hi : '');
}

export function fluidFigure({ limit, lo, hi }: Decision): string {
  return limit === 'at-least' ? lo : hi;
}

export function fluidDecision(decision: Decision, limit: string, figure: string): Decision {
  return limit === 'at-least' ? { ...decision, limit, lo: figure, hi: '' } : { ...decision, limit: 'at-most', lo: '', hi: figure };
}

export function chosenValue({ from, kind, says }: Decision): string {
  if (from === 'alternative') return says;
  return from === 'own' && kind !== 'bounded' ? `own-${kind}` : from;
}

function rangeOf({ lo, hi }: Pick<Decision, 'lo' | 'hi'>): [number, number | null] {
  return [Number(lo || 0), hi === '' ? null : Number(hi)];
}

export function decidedJson(item: TargetItem, decision: Decision) {
  const { kind, from, limit, says, reason } = decision;
  return {
    item,
    kind,
    from,
    says,
    ...(reason === '' ? {} : { reason }),
    // Without a figure nothing is sent in its place: the refusal names what is missing.
    ...(kind === 'bounded' && (decision.lo !== '' || decision.hi !== '') ? { range: rangeOf(decision), limit } : {}),
  };
}

export function ownText({ kind, lo, hi, limit }: Decision, unit: string, proposed: string): string {
  if (kind === 'no-limit') return 'no limit';
  if (kind === 'withheld') return 'no figure set: to be checked';
  if (lo === '' && hi === '') return unit === 'mL' ? `one figure to pick; proposed: ${proposed}` : 'a figure to type';
  if (limit === 'at-least') return `at least ${lo} ${unit} a day`;
  if (limit === 'at-most') return `at most ${hi} ${unit} a day`;
  return lo === hi ? `${lo} ${unit} a day` : `${lo} – ${hi} ${unit} a day`;
}

export function chosenFigure(others: Target['alternatives'], { says }: Decision): string {
  return others.find(one => one.says === says)?.figure ?? '';
}
