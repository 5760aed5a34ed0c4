import type { Client } from '../../api.ts';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import type { Action } from '../../ui/action/action.ts';
import layout from '../../ui/layout.module.css';
import text from '../../ui/text.module.css';
import { type Caution, contactWords, UrgentCaution } from './UrgentCaution.tsx';

/** What must not be missed: refusals and questions, values that need contact the same day, cautions, and that targets are for licensed dietitians. */
export function Cautions({
  client,
  answerIt,
}: {
  readonly client: Client;
  /** Opens the form in which a question is answered. */
  readonly answerIt: Action;
}) {
  const { cautions = [], issues = [], standingCaution } = client;
  const urgent = cautions.filter(({ sameDay }) => sameDay);
  const own = cautions.filter(({ sameDay, isOwn }) => !sameDay && isOwn);
  const others = cautions.filter(({ sameDay, isOwn }) => !sameDay && !isOwn);
  return (
    <section className={layout.stack} aria-label="Cautions">
      {issues.map(({ kind, told }) => (
        <div className={`${layout.notice} ${layout.alarm}`} role="alert" key={told}>
          <p>
            <b>{kind === 'question' ? 'A question first.' : 'No target is proposed.'}</b> {told}
          </p>
          {kind === 'question' && (
            <p className={layout.noprint}>
              <ActionButton action={answerIt} />
            </p>
          )}
        </div>
      ))}
      {urgent.map(caution => (
        <UrgentCaution key={caution.id} caution={caution} client={client} />
      ))}
      {own.length > 0 && (
        <div className={layout.sheet}>
          <h2>From this client’s record</h2>
          <CautionList cautions={own} />
        </div>
      )}
      {others.length > 0 && (
        <details className={layout.sheet}>
          <summary>
            {others.length} caution{others.length === 1 ? '' : 's'} that {others.length === 1 ? 'holds' : 'hold'} in this setting
          </summary>
          <CautionList cautions={others} />
        </details>
      )}
      {client.contacts.length > 0 && (
        <details className={layout.sheet}>
          <summary>Who was told: {client.contacts.length}</summary>
          <ul>
            {client.contacts.map(({ at, told, about }) => (
              <li key={at}>
                {told}
                <span className={text.why}>
                  {at.slice(0, 16).replace('T', ' ')} UTC{about === undefined ? '' : `, of ${about}`}
                </span>
              </li>
            ))}
          </ul>
        </details>
      )}
      <p className={`${text.small} ${text.soft}`}>{standingCaution}</p>
    </section>
  );
}

function CautionList({ cautions }: { readonly cautions: readonly Caution[] }) {
  return (
    <ul>
      {cautions.map(({ id, told, because, source, contact }) => (
        <li key={id}>
          {contact !== undefined && <b>{contactWords[contact]}. </b>}
          {told}
          <span className={text.why}>
            {because} ({source})
          </span>
        </li>
      ))}
    </ul>
  );
}
