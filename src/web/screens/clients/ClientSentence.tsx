import type { Client } from '../../api.ts';
import styles from './Client.module.css';
import { shownDay } from './shownDay.ts';

/** Where things stand with one person: who, how treated, on which weight, what is signed, and whether something came since that would change it. */
export function ClientSentence({ client }: { readonly client: Client }) {
  const { about, weight, prescriptions, targets = [] } = client;
  const [signed] = prescriptions;
  const changing = targets.filter(({ differsSinceSigned }) => differsSinceSigned === true).length;
  return (
    <span className={styles.sentence}>
      {about}.{weight === undefined ? '' : ` Weight basis ${weight.text}.`}{' '}
      {signed === undefined ? (
        <b>No prescription is signed yet.</b>
      ) : (
        <>
          Prescription signed {shownDay(signed.signedAt)};{' '}
          <b>{changing === 0 ? 'nothing' : changing === 1 ? 'one line' : `${changing} lines`} would change</b> with what came since.
        </>
      )}
    </span>
  );
}
