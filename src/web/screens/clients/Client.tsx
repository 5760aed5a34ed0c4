import { useQuery, useQueryClient } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import { useState } from 'react';
import { settingWords } from '#core/client/setting.ts';
import type { WeightBasisId } from '#core/client/states/weightBasis.ts';
import { answer, api, type Client } from '../../api.ts';
import { ClientDoor } from '../../lock/ClientDoor.tsx';
import button from '../../ui/Button.module.css';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import { CarriedNote } from '../calculators/CarriedNote.tsx';
import { useCarried } from '../calculators/carried.ts';
import { ClientHandout } from '../handouts/ClientHandout.tsx';
import { AddResults } from './AddResults.tsx';
import { AssessmentForm } from './AssessmentForm.tsx';
import { AssessmentSummary } from './AssessmentSummary.tsx';
import { Cautions } from './Cautions.tsx';
import { ChartNote } from './ChartNote.tsx';
import styles from './Client.module.css';
import { Fits } from './Fits.tsx';
import { Lock } from './Lock.tsx';
import { PrescriptionSheet } from './PrescriptionSheet.tsx';
import { SignedPrescriptions } from './SignedPrescriptions.tsx';

const route = getRouteApi('/clients/$clientId');

/** One person: cautions on top, the assessment at the left, the prescription beside it, then what fits, the note, and what was signed before. */
export function ClientScreen() {
  return (
    <ClientDoor>
      <OneClient />
    </ClientDoor>
  );
}

function OneClient() {
  const { clientId } = route.useParams();
  const queries = useQueryClient();
  // What a calculator sends opens the form with it filled in, unsaved; it goes with the form.
  const { carried, isAssessing, setAssessing } = useCarried(clientId);
  const [isAdding, setAdding] = useState(false);
  const [pick, setPick] = useState<WeightBasisId>();
  const client = useQuery({
    queryKey: ['client', clientId, pick],
    queryFn: () => answer(api.clients[':id'].$get({ param: { id: clientId }, query: pick === undefined ? {} : { pick } })),
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
      <div className={layout.spread}>
        <div>
          <span className={text.soft}>
            <Link to="/clients">Clients</Link>
            {data.setting === undefined ? '' : ` · ${settingWords[data.setting]}`}
            {data.isDemo ? ' · demo, invented' : ''}
          </span>
          <h1>{data.name}</h1>
        </div>
        <p className={`${layout.row} ${layout.noprint}`}>
          {data.assessmentId !== undefined && (
            <button type="button" className={button.quiet} disabled={isAssessing} onClick={() => setAdding(true)}>
              Add results
            </button>
          )}
          <button type="button" className={button.act} disabled={isAdding} onClick={() => setAssessing(true)}>
            New assessment
          </button>
        </p>
      </div>
      {data.cautions !== undefined && <Cautions client={data} onChanged={refresh} onAnswer={() => setAssessing(true)} />}
      {isAdding && (
        <AddResults
          client={data}
          today={localToday()}
          onSave={async ({ labs, weighings }) => {
            await answer(
              api.clients[':id'].results.$post({
                param: { id: clientId },
                json: { version: data.version, labs: [...labs], weighings: [...weighings] },
              }),
            );
            setAdding(false);
            await refresh();
          }}
          onCancel={() => setAdding(false)}
        />
      )}
      {isAssessing && <CarriedNote carried={carried} />}
      {isAssessing && (
        <AssessmentForm
          start={data.assessment}
          carried={carried}
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
        <p className={layout.notice}>
          No assessment yet. Begin with a new assessment: setting, weight, labs and medicines; targets are proposed from them.
        </p>
      ) : (
        <div className={styles.clientcols}>
          <AssessmentSummary client={data} onPick={setPick} />
          <PrescriptionSheet key={proposalKey(data)} client={data} onSigned={refresh} />
        </div>
      )}
      {data.prescriptions.length > 0 && <Fits client={data} onChanged={refresh} />}
      {data.prescriptions.length > 0 && <ClientHandout client={data} onChanged={refresh} />}
      {data.assessmentId !== undefined && <ChartNote clientId={clientId} />}
      <SignedPrescriptions client={data} />
    </>
  );
}

/** Another one when results that came in propose otherwise: decisions of an earlier proposal are not signed for a later one. */
function proposalKey({ assessmentId, weight, targets }: Client): string {
  return [assessmentId, weight?.chosen, ...(targets ?? []).flatMap(({ item, kind, figure }) => [item, kind, figure])].join('; ');
}

/** The calendar day where the browser runs. */
function localToday(): string {
  const now = new Date();
  return new Date(now.getTime() - now.getTimezoneOffset() * 60_000).toISOString().slice(0, 10);
}
