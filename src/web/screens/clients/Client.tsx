import { useQuery, useQueryClient } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import { useState } from 'react';
import { withCarried } from '#core/client/formulas/catalog/assessmentFields.ts';
import { type WeightBasisId, weightBasisIds } from '#core/client/states/weightBasis.ts';
import { answer, api, type Client } from '../../api.ts';
import { Told } from '../../ui/Told.tsx';
import { CarriedNote } from '../calculators/CarriedNote.tsx';
import { useCarried } from '../calculators/carried.ts';
import { ClientHandout } from '../handouts/ClientHandout.tsx';
import { AddResults } from './AddResults.tsx';
import { AssessmentForm } from './AssessmentForm.tsx';
import { Cautions } from './Cautions.tsx';
import { ChartNote } from './ChartNote.tsx';
import { Fits } from './Fits.tsx';
import { Lock } from './Lock.tsx';
import { PrescriptionSheet } from './PrescriptionSheet.tsx';
import { Trends } from './Trends.tsx';
import { settingName } from './vocabulary.ts';

const route = getRouteApi('/clients/$clientId');

/** One person: cautions on top, the assessment at the left, the prescription beside it, then what fits, the note, and what was signed before. */
export function ClientScreen() {
  const { clientId } = route.useParams();
  const queries = useQueryClient();
  // What a calculator sends opens the form with it filled in, unsaved; it goes with the form.
  const { carried, isAssessing, setAssessing } = useCarried(clientId);
  const [isAdding, setAdding] = useState(false);
  const [pick, setPick] = useState<WeightBasisId>();
  const client = useQuery({
    queryKey: ['client', clientId, pick],
    queryFn: () => answer<Client>(api.clients[':id'].$get({ param: { id: clientId }, query: pick === undefined ? {} : { pick } })),
    placeholderData: before => before,
    gcTime: 0,
  });
  const refresh = async (): Promise<void> => {
    await queries.invalidateQueries({ queryKey: ['client', clientId] });
    await queries.invalidateQueries({ queryKey: ['clients'] });
  };
  if (client.data === undefined) {
    return (
      <>
        <h1>Client</h1>
        <Lock onOpen={refresh} />
        {client.error === null ? <p role="status">Reading …</p> : <Told error={client.error} />}
      </>
    );
  }
  const { data } = client;
  return (
    <>
      <div className="spread">
        <div>
          <span className="soft">
            <Link to="/clients">Clients</Link>
            {data.setting === undefined ? '' : ` · ${settingName(data.setting)}`}
            {data.isDemo ? ' · demo, invented' : ''}
          </span>
          <h1>{data.name}</h1>
        </div>
        <p className="row noprint">
          {data.assessmentId !== undefined && (
            <button type="button" className="quiet" disabled={isAssessing} onClick={() => setAdding(true)}>
              Add results
            </button>
          )}
          <button type="button" className="act" disabled={isAdding} onClick={() => setAssessing(true)}>
            New assessment
          </button>
        </p>
      </div>
      {data.cautions !== undefined && <Cautions client={data} onChanged={refresh} onAnswer={() => setAssessing(true)} />}
      {isAdding && (
        <AddResults
          client={data}
          today={localToday()}
          onSave={async results => {
            await answer(api.clients[':id'].results.$post({ param: { id: clientId }, json: { version: data.version, ...results } }));
            setAdding(false);
            await refresh();
          }}
          onCancel={() => setAdding(false)}
        />
      )}
      {isAssessing && <CarriedNote carried={carried} />}
      {isAssessing && (
        <AssessmentForm
          start={carried === undefined ? data.assessment : withCarried(data.assessment, carried)}
          today={localToday()}
          onSave={async assessment => {
            await answer(api.clients[':id'].assessments.$post({ param: { id: clientId }, json: { version: data.version, assessment } }));
            setAssessing(false);
            await refresh();
          }}
          onCancel={() => setAssessing(false)}
        />
      )}
      {data.assessmentId === undefined ? (
        <p className="notice">
          No assessment yet. Begin with a new assessment: setting, weight, labs and medicines; targets are proposed from them.
        </p>
      ) : (
        <div className="clientcols">
          <Assessment client={data} onPick={setPick} />
          <PrescriptionSheet key={proposalKey(data)} client={data} onSigned={refresh} />
        </div>
      )}
      {data.prescriptions.length > 0 && <Fits client={data} onChanged={refresh} />}
      {data.prescriptions.length > 0 && <ClientHandout client={data} onChanged={refresh} />}
      {data.assessmentId !== undefined && <ChartNote clientId={clientId} />}
      <Signed client={data} />
    </>
  );
}

function Assessment({ client, onPick }: { readonly client: Client; readonly onPick: (id: WeightBasisId) => void }) {
  const { weight } = client;
  return (
    <section className="sheet stack" aria-labelledby="assessment-title">
      <h2 id="assessment-title">Assessment of {client.assessedOn}</h2>
      {weight !== undefined && (
        <div>
          <p>
            Weight basis: <b>{weight.text}</b>
            {weight.bmi === undefined ? '' : `, BMI ${weight.bmi}`}
          </p>
          <p className="small soft">{weight.why}</p>
          {weight.others.length > 0 && (
            <label className="field noprint">
              <span>Another weight basis</span>
              <select
                value={weight.chosen}
                onChange={event => {
                  const picked = weightBasisIds.find(id => id === event.target.value);
                  if (picked !== undefined) onPick(picked);
                }}
              >
                <option value={weight.chosen}>{weight.chosen.replaceAll('-', ' ')}</option>
                {weight.others
                  .filter(({ id }) => id !== weight.chosen)
                  .map(({ id, text }) => (
                    <option key={id} value={id}>
                      {text}
                    </option>
                  ))}
              </select>
            </label>
          )}
        </div>
      )}
      {client.weightMissing !== undefined && <p className="notice">{client.weightMissing}</p>}
      {(client.wasting?.length ?? 0) > 0 && (
        <div className="notice">
          {client.wasting?.map(one => (
            <p key={one}>{one}</p>
          ))}
        </div>
      )}
      {(client.notUsed?.length ?? 0) > 0 && (
        <div>
          <h3>On record, not used</h3>
          <ul className="small">
            {client.notUsed?.map(one => (
              <li key={one}>{one}</li>
            ))}
          </ul>
        </div>
      )}
      <div>
        <h3>Labs</h3>
        {client.labs?.length === 0 ? <p>No result on record.</p> : null}
        <ul>
          {client.labs?.map(one => (
            <li key={one}>{one}</li>
          ))}
        </ul>
      </div>
      {client.trends !== undefined && <Trends trends={client.trends} />}
      {(client.changes?.length ?? 0) > 0 && (
        <div>
          <h3>Since the assessment before</h3>
          <ul>
            {client.changes?.map(one => (
              <li key={one}>{one}</li>
            ))}
          </ul>
        </div>
      )}
      <div>
        <h3>Next checks</h3>
        <ul>
          {client.nextChecks?.map(({ item, every, lastOn, dueBy, state, source }) => (
            <li key={item} className={state === 'later' ? 'soft' : ''}>
              {item}: {state === 'overdue' ? <b>overdue since {dueBy}</b> : state === 'due' ? <b>due, by {dueBy}</b> : `due by ${dueBy}`}
              <span className="why">
                {every}; {lastOn === undefined ? 'no earlier one on record' : `last ${lastOn}`} ({source})
              </span>
            </li>
          ))}
        </ul>
      </div>
    </section>
  );
}

/** Another one when results that came in propose otherwise: decisions of an earlier proposal are not signed for a later one. */
function proposalKey({ assessmentId, weight, targets }: Client): string {
  return JSON.stringify([assessmentId, weight?.chosen, targets?.map(({ item, kind, figure }) => [item, kind, figure])]);
}

function Signed({ client }: { readonly client: Client }) {
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

/** The calendar day where the browser runs. */
function localToday(): string {
  const now = new Date();
  return new Date(now.getTime() - now.getTimezoneOffset() * 60_000).toISOString().slice(0, 10);
}
