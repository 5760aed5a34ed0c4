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
  /** It stays as the prescription that stands has it. */
  readonly isAsSigned: boolean;
}

export function signedBefore(client: Pick<Client, 'prescriptions'>, item: string): SignedTarget | undefined {
  return client.prescriptions[0]?.targets.find(one => one.item === item);
}

/** "at least 98 g a day, own decision, because: a wound that heals". */
export function beforeText({ figure, from, reason }: SignedTarget): string {
  const how = from === 'own' ? 'own decision' : from === 'alternative' ? 'another guideline' : 'as proposed then';
  return `${figure}, ${how}${reason === undefined ? '' : `, because: ${reason.replace(/\.$/, '')}`}`;
}

/** Changing begins from what is signed, with every choice and reason; the proposal where nothing is signed that can stand again. */
export function startingDecision(target: Target, before: SignedTarget | undefined): Decision {
  return before === undefined || !canStay(before) ? proposedDecision(target) : asSigned(target, before);
}

/** A record of form 1 does not tell whether a target without a figure was withheld or without limit. */
export function canStay({ kind }: SignedTarget): boolean {
  return kind !== 'not-told';
}

/**
 * As it is signed. What was signed as proposed and is proposed otherwise today becomes a decision of the dietitian's own, with the reason that it then
 * needs; another guideline's figure likewise, where that guideline says otherwise today.
 */
function asSigned(target: Target, before: SignedTarget): Decision {
  const { kind, range, limit = 'within', reason = '' } = before;
  const [lo, hi] = endsOf(range);
  const isOwn =
    (before.from === 'proposal' && target.differsSinceSigned !== false) ||
    (before.from === 'alternative' && !target.alternatives.some(one => one.says === before.says && sameEnds(one.range, range)));
  const from = isOwn ? 'own' : before.from;
  const says = isOwn ? 'kept as it was signed before' : before.says;
  return { kind: kind === 'not-told' ? 'withheld' : kind, from, lo, hi, limit, says, reason, isAsSigned: true };
}

function sameEnds(one: Target['range'], other: Target['range']): boolean {
  return one?.[0] === other?.[0] && one?.[1] === other?.[1];
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
  const decision: Decision = {
    kind: kind === 'proposed' ? 'bounded' : kind,
    from: 'proposal',
    lo,
    hi,
    limit,
    says,
    reason: '',
    isAsSigned: false,
  };
  return item === 'fluid' && range !== undefined ? oneFigure(decision) : decision;
}

export function decisionFrom(value: string, target: Target, before: Decision, signed?: SignedTarget): Decision {
  if (value === 'as-signed' && signed !== undefined) return asSigned(target, signed);
  if (value === 'proposal') return { ...proposedDecision(target), reason: before.reason };
  const own: Decision = { ...before, from: 'own', says: 'set by the dietitian', isAsSigned: false };
  if (value === 'own-no-limit') return { ...own, kind: 'no-limit', lo: '', hi: '' };
  if (value === 'own-withheld') return { ...own, kind: 'withheld', lo: '', hi: '' };
  if (value === 'own') {
    const bounded: Decision = { ...own, kind: 'bounded' };
    return target.item === 'fluid' ? fluidDecision(bounded, own.limit, fluidFigure(own)) : ownDecision(bounded, own.lo, own.hi);
  }
  const other = target.alternatives.find(({ says }) => says === value);
  const [lo, hi] = endsOf(other?.range);
  const { reason } = before;
  const chosen: Decision = {
    kind: 'bounded',
    from: 'alternative',
    lo,
    hi,
    limit: other?.limit ?? 'within',
    says: value,
    reason,
    isAsSigned: false,
  };
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

/** A limit that is meant as a need, or the other way round, is no longer what was proposed. */
export function fluidSense(decision: Decision, limit: Limit, { limit: proposed }: Target): Decision {
  const next = fluidDecision(decision, limit, fluidFigure(decision));
  const isInSense = (limit === 'at-least') === (proposed === 'at-least');
  return isInSense || decision.from !== 'proposal' ? next : { ...next, from: 'own', says: 'set by the dietitian' };
}

export function chosenValue({ from, kind, says, isAsSigned }: Decision): string {
  if (isAsSigned) return 'as-signed';
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

/** The decided figure as a line has room for it. */
export function decidedFigure(decision: Decision, { unit, inShort, alternatives, item }: Target, signed: SignedTarget | undefined): string {
  const { kind, from, lo, hi, limit, says, isAsSigned } = decision;
  if (isAsSigned && signed !== undefined) return signed.inShort;
  if (from === 'proposal' && item !== 'fluid') return inShort;
  if (from === 'alternative' && item !== 'fluid') return alternatives.find(one => one.says === says)?.figure?.replace(/ a day$/, '') ?? '';
  if (kind === 'no-limit') return 'no limit';
  if (kind === 'withheld') return 'withheld';
  if (lo === '' && hi === '') return unit === 'mL' ? `${inShort.replace(/ \(.*/, '')}: pick one` : 'a figure to type';
  if (limit === 'at-least') return `at least ${lo} ${unit}`;
  if (limit === 'at-most') return `at most ${hi} ${unit}`;
  return lo === hi ? `${lo} ${unit}` : `${lo} – ${hi} ${unit}`;
}

/** Whether something is still to be written before it can be signed. */
export function isOpenDecision({ from, reason, kind, lo, hi }: Decision): boolean {
  return (from !== 'proposal' && reason.trim() === '') || (kind === 'bounded' && lo === '' && hi === '');
}
