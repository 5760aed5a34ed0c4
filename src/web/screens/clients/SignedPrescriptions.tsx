import type { Client } from '../../api.ts';
import layout from '../../ui/layout.module.css';
import text from '../../ui/text.module.css';

/** What was signed, the newest first; the first stands. */
export function SignedPrescriptions({ client }: { readonly client: Client }) {
  if (client.prescriptions.length === 0) return null;
  return (
    <section className={layout.sheet} aria-labelledby="signed-title">
      <h2 id="signed-title">Signed prescriptions</h2>
      {client.prescriptions.map(({ id, stands, signedBy, signedAt, targets }) => (
        <details key={id} open={stands}>
          <summary>
            {signedAt.slice(0, 10)} by {signedBy}{' '}
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
    </section>
  );
}
