import type { Client } from '../../api.ts';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import type { Action } from '../../ui/action/action.ts';
import text from '../../ui/text.module.css';
import styles from './Cautions.module.css';
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
  const { cautions = [], issues = [], wasting = [], standingCaution, assessment } = client;
  const urgent = cautions.filter(({ sameDay }) => sameDay);
  const soon = cautions.filter(({ sameDay, contact }) => !sameDay && contact !== undefined);
  const look = cautions.filter(({ sameDay, isOwn, contact }) => !sameDay && isOwn && contact === undefined);
  const others = cautions.filter(({ sameDay, isOwn }) => !sameDay && !isOwn);
  return (
    <section className={styles.cautions} aria-label="Cautions, the gravest first">
      {issues.map(({ kind, told }) => (
        <div className={styles.now} role="alert" key={told}>
          <p>
            <b>{kind === 'question' ? 'A question first.' : 'No target is proposed.'}</b> {told}
          </p>
          {kind === 'question' && <ActionButton action={answerIt} />}
        </div>
      ))}
      {urgent.map(caution => (
        <UrgentCaution key={caution.id} caution={caution} client={client} />
      ))}
      {soon.length + wasting.length > 0 && (
        <div className={styles.soon}>
          <CautionList cautions={soon} />
          {wasting.map(one => (
            <p key={one}>{one}</p>
          ))}
        </div>
      )}
      {look.length > 0 && (
        <div className={styles.look}>
          <CautionList cautions={look} />
        </div>
      )}
      <div className={`${styles.note} ${text.small}`}>
        <Avoided assessment={assessment} />
        {others.length > 0 && (
          <details>
            <summary>
              {others.length} caution{others.length === 1 ? '' : 's'} that {others.length === 1 ? 'holds' : 'hold'} in this setting
            </summary>
            <CautionList cautions={others} />
          </details>
        )}
        {client.contacts.length > 0 && (
          <details>
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
        <p className={text.soft}>{standingCaution}</p>
      </div>
    </section>
  );
}

function Avoided({ assessment }: Pick<Client, 'assessment'>) {
  const { allergies = [], avoidedFoods = [] } = assessment ?? {};
  return (
    <>
      {allergies.length > 0 && (
        <p>
          <b>Allergies: {allergies.join(', ')}.</b>
        </p>
      )}
      {avoidedFoods.length > 0 && <p>Avoids {avoidedFoods.join(', ')}.</p>}
    </>
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
