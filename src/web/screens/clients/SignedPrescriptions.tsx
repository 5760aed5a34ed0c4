import type { Client } from '../../api.ts';
import text from '../../ui/text.module.css';
import { shownDay } from './shownDay.ts';

/** What was signed before, the newest first; the first stands and is the table itself where there is one. */
export function SignedPrescriptions({ client }: { readonly client: Client }) {
  const isInTable = (client.targets ?? []).length > 0;
  const listed = client.prescriptions.filter(({ stands }) => !(isInTable && stands));
  if (listed.length === 0) return null;
  return (
    <div>
      {listed.map(({ id, stands, signedBy, signedAt, targets }) => (
        <details key={id} open={stands}>
          <summary className={text.small}>
            {stands ? 'Signed' : 'Signed earlier'}: {shownDay(signedAt)} by {signedBy}{' '}
            {stands ? <span className={text.tag}>stands</span> : <span className={text.tag}>superseded</span>}
          </summary>
          <table>
            <tbody>
              {targets.map(({ item, title, figure, from, reason, says }) => (
                <tr key={item}>
                  <th scope="row">{title}</th>
                  <td>
                    {figure}
                    {from === 'proposal' ? null : (
                      <span className={text.why}>
                        {from === 'own' ? 'own figure' : 'another position'}: {reason}
                      </span>
                    )}
                    <span className={text.why}>{says}</span>
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </details>
      ))}
    </div>
  );
}
