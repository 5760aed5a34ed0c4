import { useMutation } from '@tanstack/react-query';
import { useState } from 'react';
import { answer, api, type Client } from '../../api.ts';
import { Told } from '../../ui/Told.tsx';

type Target = NonNullable<Client['targets']>[number];

/** What the dietitian decides of one target; `range` as typed, empty where there is no limit. */
interface Decision {
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
    Object.fromEntries(targets.map(target => [target.item, proposedDecision(target)])),
  );
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
  decision,
  onChange,
}: {
  readonly target: Target;
  readonly decision: Decision;
  readonly onChange: (decision: Decision) => void;
}) {
  const { title, figure, weightBasis, says, reasons, sources, needsChoice, alternatives, unit } = target;
  const isCount = unit === 'named on the label';
  const others = alternatives.filter(({ figure: one }) => one !== undefined);
  return (
    <article className="target" aria-label={title}>
      <div className="spread">
        <h3>{title}</h3>
        <b>{decision.from === 'proposal' ? figure : decision.from === 'own' ? ownText(decision, unit) : chosenFigure(others, decision)}</b>
      </div>
      <p className="small">
        {says}
        {weightBasis === undefined ? '' : `, on the ${weightBasis} weight`}.
      </p>
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
          <select
            value={decision.from === 'alternative' ? decision.says : decision.from}
            onChange={event => onChange(decisionFrom(event.target.value, target, decision))}
          >
            <option value="proposal">as proposed: {figure}</option>
            {others.map(one => (
              <option key={one.says} value={one.says}>
                {one.figure}: {one.says}
              </option>
            ))}
            <option value="own">{isCount ? 'no limit, my own decision' : 'my own figure'}</option>
          </select>
        </label>
        {decision.from === 'own' && !isCount && (
          <>
            <label className="field">
              <span>From, {unit}</span>
              <input
                type="number"
                min="0"
                step="any"
                value={decision.lo}
                onChange={event => onChange({ ...decision, lo: event.target.value })}
              />
            </label>
            <label className="field">
              <span>To, {unit}</span>
              <input
                type="number"
                min="0"
                step="any"
                value={decision.hi}
                onChange={event => onChange({ ...decision, hi: event.target.value })}
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

function proposedDecision({ range, limit, says }: Target): Decision {
  return {
    from: 'proposal',
    lo: range === undefined ? '' : String(range[0]),
    hi: range?.[1] == null ? '' : String(range[1]),
    limit: limit ?? 'within',
    says,
    reason: '',
  };
}

function decisionFrom(value: string, target: Target, before: Decision): Decision {
  if (value === 'proposal') return { ...proposedDecision(target), reason: before.reason };
  if (value === 'own') return { ...before, from: 'own', limit: 'within', says: 'set by the dietitian' };
  const other = target.alternatives.find(({ says }) => says === value);
  return {
    from: 'alternative',
    lo: other?.range === undefined ? '' : String(other.range[0]),
    hi: other?.range?.[1] == null ? '' : String(other.range[1]),
    limit: other?.limit ?? 'within',
    says: value,
    reason: before.reason,
  };
}

function decidedJson(item: string, { from, lo, hi, limit, says, reason }: Decision) {
  const hasRange = lo !== '' || hi !== '';
  return {
    item: item as 'energy',
    from,
    says,
    ...(reason === '' ? {} : { reason }),
    ...(hasRange ? { range: [Number(lo || 0), hi === '' ? null : Number(hi)] as [number, number | null], limit: limit as 'within' } : {}),
  };
}

function ownText({ lo, hi }: Decision, unit: string): string {
  if (lo === '' && hi === '') return 'no limit';
  if (hi === '') return `at least ${lo} ${unit} a day`;
  return `${lo || 0} – ${hi} ${unit} a day`;
}

function chosenFigure(others: Target['alternatives'], { says }: Decision): string {
  return others.find(one => one.says === says)?.figure ?? '';
}
