import type { Client } from '../../api.ts';

/** What was signed, the newest first; the first stands. */
export function SignedPrescriptions({ client }: { readonly client: Client }) {
  if (client.prescriptions.length === 0) return null;
  return (
    <section className="sheet" aria-labelledby="signed-title">
      <h2 id="signed-title">Signed prescriptions</h2>
      {client.prescriptions.map(({ id, stands, signedBy, signedAt, targets }) => (
        <details key={id} open={stands}>
          <summary>
            {signedAt.slice(0, 10)} by {signedBy} {stands ? <span className="tag">stands</span> : <span className="tag">superseded</span>}
          </summary>
          <table>
            <tbody>
              {targets.map(({ item, title, figure, from, reason, says }) => (
                <tr key={item}>
                  <th scope="row">{title}</th>
                  <td>
                    {figure}
                    {from === 'proposal' ? null : (
                      <span className="why">
                        {from === 'own' ? 'own figure' : 'another position'}: {reason}
                      </span>
                    )}
                    <span className="why">{says}</span>
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
