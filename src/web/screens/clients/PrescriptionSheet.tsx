import { useMutation } from '@tanstack/react-query';
import { useState } from 'react';
import { answer, api, type Client } from '../../api.ts';
import { Told } from '../../ui/Told.tsx';

type Target = NonNullable<Client['targets']>[number];
type SignedTarget = Client['prescriptions'][number]['targets'][number];

/** What the dietitian decides of one target; ends as typed, empty where there is none. */
interface Decision {
  readonly kind: 'bounded' | 'no-limit' | 'withheld';
  readonly from: 'proposal' | 'alternative' | 'own';
  readonly lo: string;
  readonly hi: string;
  readonly limit: string;
  readonly says: string;
  readonly reason: string;
}

/** The proposal, target by target: range, why, source, other guidelines' figures; edited with a reason, then signed as a whole. */
export function PrescriptionSheet({ client, onSigned }: { readonly client: Client; readonly onSigned: () => Promise<void> }) {
  const targets = client.targets ?? [];
  const [decisions, setDecisions] = useState<Readonly<Record<string, Decision>>>(() =>
    Object.fromEntries(targets.map(target => [target.item, startingDecision(target, signedBefore(client, target.item))])),
  );
  const [isAcknowledged, setAcknowledged] = useState(false);
  const lost = targets.filter(({ item }) => isLeftOut(signedBefore(client, item), decisions[item]!));
  const [by, setBy] = useState('');
  const [credentials, setCredentials] = useState('');
  const sign = useMutation({
    mutationFn: () =>
      answer(
        api.clients[':id'].prescriptions.$post({
          param: { id: client.id },
          json: {
            version: client.version,
            assessmentId: client.assessmentId!,
            ...(client.weight === undefined ? {} : { weightBasis: client.weight.chosen as 'actual' }),
            by,
            credentials,
            targets: targets.map(({ item }) => decidedJson(item, decisions[item]!)),
            acknowledgedChanges: lost.length > 0 && isAcknowledged,
          },
        }),
      ),
    onSuccess: onSigned,
  });
  if (targets.length === 0) return <section className="sheet">No prescription is proposed until the questions above are answered.</section>;
  return (
    <section className="sheet stack" aria-labelledby="prescription-title">
      <h2 id="prescription-title">Nutrition prescription, proposed</h2>
      {targets.map(target => (
        <TargetRow
          key={target.item}
          target={target}
          before={signedBefore(client, target.item)}
          decision={decisions[target.item]!}
          onChange={decision => setDecisions({ ...decisions, [target.item]: decision })}
        />
      ))}
      <form
        className="stack noprint"
        onSubmit={event => {
          event.preventDefault();
          sign.mutate();
        }}
      >
        <h3>Sign it</h3>
        <p className="small soft">What is signed is never changed: a later prescription takes its place.</p>
        <div className="formgrid">
          <label className="field">
            <span>Name</span>
            <input type="text" required maxLength={200} value={by} onChange={event => setBy(event.target.value)} autoComplete="off" />
          </label>
          <label className="field">
            <span>Credentials</span>
            <input
              type="text"
              maxLength={200}
              value={credentials}
              onChange={event => setCredentials(event.target.value)}
              autoComplete="off"
            />
          </label>
        </div>
        {lost.length > 0 && (
          <div className="notice">
            <p>Signed before as your own decision, and otherwise now:</p>
            <ul>
              {lost.map(({ item, title }) => (
                <li key={item}>
                  {title}: {beforeText(signedBefore(client, item)!)}
                </li>
              ))}
            </ul>
            <label>
              <input type="checkbox" required checked={isAcknowledged} onChange={event => setAcknowledged(event.target.checked)} /> These
              are meant to change
            </label>
          </div>
        )}
        <Told error={sign.error} />
        <p>
          <button type="submit" className="act" disabled={sign.isPending}>
            Sign the prescription
          </button>
        </p>
      </form>
    </section>
  );
}

function TargetRow({
  target,
  before,
  decision,
  onChange,
}: {
  readonly target: Target;
  readonly before: SignedTarget | undefined;
  readonly decision: Decision;
  readonly onChange: (decision: Decision) => void;
}) {
  const { title, figure, perKg, weightBasis, says, reasons, sources, needsChoice, alternatives, unit } = target;
  const isCount = unit === 'named on the label';
  const isFluid = target.item === 'fluid';
  const mustPick = isFluid && decision.kind === 'bounded';
  const others = alternatives.filter(({ figure: one }) => one !== undefined);
  return (
    <article className="target" aria-label={title}>
      <div className="spread">
        <h3>{title}</h3>
        <b>
          {decision.from === 'own' || mustPick
            ? ownText(decision, unit, figure)
            : decision.from === 'proposal'
              ? figure
              : chosenFigure(others, decision)}
        </b>
      </div>
      <p className="small">
        {says}
        {perKg === undefined ? '' : `: ${perKg}`}
        {weightBasis === undefined ? '' : `, on the ${weightBasis} weight`}.
      </p>
      {before !== undefined && before.from !== 'proposal' && <p className="small">Signed before: {beforeText(before)}.</p>}
      <Reasons reasons={reasons} />
      <p className="small soft">{sources.join('; ')}</p>
      {alternatives.length > 0 && (
        <div className="elsewhere small">
          <b>{needsChoice ? 'Guidelines differ:' : 'Elsewhere:'}</b>
          <ul>
            {alternatives.map(({ figure: other, says: words, sources: from }) => (
              <li key={words}>
                {other === undefined ? '' : `${other}. `}
                {words} <span className="soft">({from.join('; ')})</span>
              </li>
            ))}
          </ul>
        </div>
      )}
      <div className="row noprint">
        <label className="field">
          <span>{needsChoice ? `${title}: guidelines differ, choose` : `${title}: decision`}</span>
          <select value={chosenValue(decision)} onChange={event => onChange(decisionFrom(event.target.value, target, decision))}>
            <option value="proposal">as proposed: {figure}</option>
            {others.map(one => (
              <option key={one.says} value={one.says}>
                {one.figure}: {one.says}
              </option>
            ))}
            {!isCount && <option value="own">my own figure</option>}
            {target.kind !== 'no-limit' && <option value="own-no-limit">no limit, my own decision</option>}
            {target.kind !== 'withheld' && <option value="own-withheld">no figure, to be checked</option>}
          </select>
        </label>
        {mustPick && (
          <>
            <label className="field">
              <span>Fluid is meant as</span>
              <select
                value={decision.limit}
                onChange={event => onChange(fluidDecision(decision, event.target.value, fluidFigure(decision)))}
              >
                <option value="at-most">up to, a limit</option>
                <option value="at-least">at least, a need</option>
              </select>
            </label>
            <label className="field">
              <span>One figure{decision.from === 'proposal' ? ' within the proposal' : ''}, mL</span>
              <input
                type="number"
                min="1"
                max="20000"
                step="any"
                required
                value={fluidFigure(decision)}
                onChange={event => onChange(fluidDecision(decision, decision.limit, event.target.value))}
              />
            </label>
          </>
        )}
        {decision.from === 'own' && decision.kind === 'bounded' && !isCount && !isFluid && (
          <>
            <label className="field">
              <span>From, {unit}</span>
              <input
                type="number"
                min="0"
                step="any"
                value={decision.lo}
                onChange={event => onChange(ownDecision(decision, event.target.value, decision.hi))}
              />
            </label>
            <label className="field">
              <span>To, {unit}</span>
              <input
                type="number"
                min="0"
                step="any"
                value={decision.hi}
                onChange={event => onChange(ownDecision(decision, decision.lo, event.target.value))}
              />
            </label>
          </>
        )}
        {decision.from !== 'proposal' && (
          <label className="field">
            <span>{title}: reason</span>
            <input
              type="text"
              required
              maxLength={1_000}
              value={decision.reason}
              onChange={event => onChange({ ...decision, reason: event.target.value })}
              autoComplete="off"
            />
          </label>
        )}
      </div>
    </article>
  );
}

/** Many things to check are folded away, so that the next target stays in sight. */
function Reasons({ reasons }: { readonly reasons: readonly string[] }) {
  const list = (
    <ul className="small">
      {reasons.map(reason => (
        <li key={reason}>{reason}</li>
      ))}
    </ul>
  );
  if (reasons.length <= 5) return list;
  return (
    <details>
      <summary className="small">{reasons.length} things to check first</summary>
      {list}
    </details>
  );
}

function signedBefore(client: Client, item: string): SignedTarget | undefined {
  return client.prescriptions[0]?.targets.find(one => one.item === item);
}

/** "at least 98 g a day, own decision, because: a wound that heals". */
function beforeText({ figure, from, reason }: SignedTarget): string {
  const how = from === 'own' ? 'own decision' : 'another guideline';
  return `${figure}, ${how}${reason === undefined ? '' : `, because: ${reason.replace(/\.$/, '')}`}`;
}

/** As it was decided before, where that was a choice and can still be made; else the proposal. */
function startingDecision(target: Target, before: SignedTarget | undefined): Decision {
  if (before === undefined || before.from === 'proposal' || before.kind === 'not-told') return proposedDecision(target);
  const { from, kind, says, reason = '' } = before;
  const other = target.alternatives.find(one => one.says === says);
  if (from === 'alternative' && other === undefined) return { ...proposedDecision(target), reason };
  // Fluid is one figure that was picked; another guideline's figure is as it reads today.
  const { range, limit = 'within' } = from === 'own' || target.item === 'fluid' ? before : other!;
  const [lo, hi] = endsOf(range);
  return { kind, from: from as 'own' | 'alternative', lo, hi, limit, says, reason };
}

/** Whether a choice that was signed would be left out; the server asks the same. */
function isLeftOut(before: SignedTarget | undefined, now: Decision): boolean {
  if (before === undefined || before.from === 'proposal') return false;
  if (before.range === undefined || now.kind !== 'bounded') {
    return before.range !== undefined || now.kind === 'bounded' || (before.kind !== 'not-told' && before.kind !== now.kind);
  }
  const [lo, hi] = rangeOf(now);
  return before.range[0] !== lo || before.range[1] !== hi || before.limit !== now.limit;
}

function endsOf(range: readonly [number, number | null] | undefined): readonly [lo: string, hi: string] {
  return range === undefined ? ['', ''] : [String(range[0]), range[1] === null ? '' : String(range[1])];
}

/** Fluid is proposed as a range to choose from and signed as one figure, which the dietitian picks. */
function proposedDecision({ item, kind, range, limit = 'within', says }: Target): Decision {
  const [lo, hi] = endsOf(range);
  const decision: Decision = { kind: kind === 'proposed' ? 'bounded' : kind, from: 'proposal', lo, hi, limit, says, reason: '' };
  return item === 'fluid' && range !== undefined ? oneFigure(decision) : decision;
}

function decisionFrom(value: string, target: Target, before: Decision): Decision {
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
function ownDecision(decision: Decision, lo: string, hi: string): Decision {
  const limit = hi === '' ? 'at-least' : Number(lo || 0) === 0 ? 'at-most' : 'within';
  return { ...decision, lo, hi, limit };
}

/** The one figure that a bound or a single amount of fluid has; a range has none yet. */
function oneFigure(decision: Decision): Decision {
  const { limit, lo, hi } = decision;
  if (limit === 'at-least') return fluidDecision(decision, limit, lo);
  return fluidDecision(decision, 'at-most', limit === 'at-most' || lo === hi ? hi : '');
}

function fluidFigure({ limit, lo, hi }: Decision): string {
  return limit === 'at-least' ? lo : hi;
}

function fluidDecision(decision: Decision, limit: string, figure: string): Decision {
  return limit === 'at-least' ? { ...decision, limit, lo: figure, hi: '' } : { ...decision, limit: 'at-most', lo: '', hi: figure };
}

function chosenValue({ from, kind, says }: Decision): string {
  if (from === 'alternative') return says;
  return from === 'own' && kind !== 'bounded' ? `own-${kind}` : from;
}

function rangeOf({ lo, hi }: Decision): [number, number | null] {
  return [Number(lo || 0), hi === '' ? null : Number(hi)];
}

function decidedJson(item: string, decision: Decision) {
  const { kind, from, limit, says, reason } = decision;
  return {
    item: item as 'energy',
    kind,
    from,
    says,
    ...(reason === '' ? {} : { reason }),
    ...(kind === 'bounded' ? { range: rangeOf(decision), limit: limit as 'within' } : {}),
  };
}

function ownText({ kind, lo, hi, limit }: Decision, unit: string, proposed: string): string {
  if (kind === 'no-limit') return 'no limit';
  if (kind === 'withheld') return 'no figure set: to be checked';
  if (lo === '' && hi === '') return unit === 'mL' ? `one figure to pick; proposed: ${proposed}` : 'a figure to type';
  if (limit === 'at-least') return `at least ${lo} ${unit} a day`;
  if (limit === 'at-most') return `at most ${hi} ${unit} a day`;
  return lo === hi ? `${lo} ${unit} a day` : `${lo} – ${hi} ${unit} a day`;
}

function chosenFigure(others: Target['alternatives'], { says }: Decision): string {
  return others.find(one => one.says === says)?.figure ?? '';
}
