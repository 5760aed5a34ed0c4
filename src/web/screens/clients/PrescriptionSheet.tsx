import { useMutation } from '@tanstack/react-query';
import { useState } from 'react';
import { answer, api, type Client } from '../../api.ts';
import button from '../../ui/Button.module.css';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import { beforeText, type Decision, decidedJson, leftOut, signedBefore, startingDecision } from './decision.ts';
import { TargetRow } from './TargetRow.tsx';

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
  if (targets.length === 0)
    return <section className={layout.sheet}>No prescription is proposed until the questions above are answered.</section>;
  return (
    <section className={`${layout.sheet} ${layout.stack}`} aria-labelledby="prescription-title">
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
        className={`${layout.stack} ${layout.noprint}`}
        onSubmit={event => {
          event.preventDefault();
          sign.mutate();
        }}
      >
        <h3>Sign it</h3>
        <p className={`${text.small} ${text.soft}`}>What is signed is never changed: a later prescription takes its place.</p>
        <div className={layout.formgrid}>
          <label className={layout.field}>
            <span>Name</span>
            <input type="text" required maxLength={200} value={by} onChange={event => setBy(event.target.value)} autoComplete="off" />
          </label>
          <label className={layout.field}>
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
          <div className={layout.notice}>
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
          <button type="submit" className={button.act} disabled={sign.isPending}>
            Sign the prescription
          </button>
        </p>
      </form>
    </section>
  );
}
