import { useMutation } from '@tanstack/react-query';
import { useState } from 'react';
import { answer, api, type Client } from '../../api.ts';
import { Told } from '../../ui/Told.tsx';
import {
  beforeText,
  chosenFigure,
  chosenValue,
  type Decision,
  decidedJson,
  decisionFrom,
  differsFrom,
  fluidDecision,
  fluidFigure,
  leftOut,
  ownDecision,
  ownText,
  type SignedTarget,
  signedBefore,
  startingDecision,
  type Target,
} from './decision.ts';

/** The proposal, target by target: range, why, source, other guidelines' figures; edited with a reason, then signed as a whole. */
export function PrescriptionSheet({ client, onSigned }: { readonly client: Client; readonly onSigned: () => Promise<void> }) {
  const targets = client.targets ?? [];
  const [decisions, setDecisions] = useState<Readonly<Record<string, Decision>>>(() =>
    Object.fromEntries(targets.map(target => [target.item, startingDecision(target, signedBefore(client, target.item))])),
  );
  const [isAcknowledged, setAcknowledged] = useState(false);
  const gone = leftOut(client, decisions);
  const lost = targets.filter(({ item }) => gone.includes(item));
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
            ...(client.weight === undefined ? {} : { weightBasis: client.weight.chosen }),
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
        {decision.from === 'proposal' ? says : `Proposed: ${says}`}
        {perKg === undefined ? '' : `: ${perKg}`}
        {weightBasis === undefined ? '' : `, on the ${weightBasis} weight`}.
      </p>
      {before !== undefined && differsFrom(before, target) && <p className="small">Signed before: {beforeText(before)}.</p>}
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
            <option value="proposal">{target.kind === 'withheld' ? 'no figure for now, as proposed' : `as proposed: ${figure}`}</option>
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
              <span>From, {unit}; empty for none</span>
              <input
                type="number"
                min="0"
                step="any"
                value={decision.lo}
                onChange={event => onChange(ownDecision(decision, event.target.value, decision.hi))}
              />
            </label>
            <label className="field">
              <span>To, {unit}; empty for no end</span>
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
