import { getRouteApi, Link } from '@tanstack/react-router';
import { useState } from 'react';
import { settingWords } from '#core/client/setting.ts';
import type { WeightBasisId } from '#core/client/states/weightBasis.ts';
import type { Client } from '../../api.ts';
import { ClientDoor } from '../../lock/ClientDoor.tsx';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { useOffered } from '../../ui/action/offered.ts';
import layout from '../../ui/layout.module.css';
import { Page } from '../../ui/page/Page.tsx';
import { Reading } from '../../ui/page/Reading.tsx';
import { CarriedNote } from '../calculators/CarriedNote.tsx';
import { useCarried } from '../calculators/carried.ts';
import { ClientHandout } from '../handouts/ClientHandout.tsx';
import { AddResults } from './AddResults.tsx';
import { AssessmentForm } from './AssessmentForm.tsx';
import { AssessmentSummary } from './AssessmentSummary.tsx';
import { Cautions } from './Cautions.tsx';
import { ChartNote } from './ChartNote.tsx';
import styles from './Client.module.css';
import { type OpenForm, useClientActions } from './clientActions.ts';
import { Fits } from './Fits.tsx';
import { HalfTyped } from './HalfTyped.tsx';
import { isLocked } from './isLocked.ts';
import { Lock } from './Lock.tsx';
import { PrescriptionSheet } from './PrescriptionSheet.tsx';
import { SignedPrescriptions } from './SignedPrescriptions.tsx';
import { proposalOf } from './typedPrescription.ts';
import { useClient, useRefreshClient } from './useClient.ts';

const route = getRouteApi('/clients/$clientId');

/** One person: cautions on top, the assessment at the left, the prescription beside it, then what fits, the note, and what was signed before. */
export function ClientScreen() {
  const { clientId } = route.useParams();
  return (
    <ClientDoor>
      <OneClient key={clientId} clientId={clientId} />
    </ClientDoor>
  );
}

function OneClient({ clientId }: { readonly clientId: string }) {
  const { data, error, setPick } = useClient(clientId);
  const refresh = useRefreshClient(clientId);
  const fault = isLocked(error) ? undefined : error;
  if (data !== undefined) return <Open client={data} fault={fault} onPick={setPick} />;
  return (
    <Page title="Client" fault={fault}>
      <Lock onOpen={refresh} />
      {error === null && <Reading />}
    </Page>
  );
}

function Open(given: { readonly client: Client; readonly fault: unknown; readonly onPick: (basis: WeightBasisId) => void }) {
  const { client, fault, onPick } = given;
  const { id, name, setting, isDemo, assessmentId, prescriptions } = client;
  const refresh = useRefreshClient(id);
  // What a calculator sends opens the form with it filled in, unsaved; it goes with the form.
  const { carried, isAssessing, setAssessing } = useCarried(id);
  const [isAdding, setAdding] = useState(false);
  const openForm: OpenForm = isAssessing ? 'assessment' : isAdding ? 'results' : undefined;
  const open = (form: OpenForm): void => {
    setAssessing(form === 'assessment');
    setAdding(form === 'results');
  };
  const { assess, addResults, answerIt } = useClientActions(openForm, open);
  const isAssessed = assessmentId !== undefined;
  useOffered(isAssessed ? [addResults, assess] : [assess]);
  const form = { client, today: localToday(), onDone: () => open(undefined) };
  return (
    <Page
      title={name}
      windowTitle="Client"
      above={
        <>
          <Link to="/clients">Clients</Link>
          {setting === undefined ? '' : ` · ${settingWords[setting]}`}
          {isDemo ? ' · demo, invented' : ''}
        </>
      }
      actions={
        <>
          {isAssessed && <ActionButton action={addResults} />}
          <ActionButton action={assess} isMain />
        </>
      }
      fault={fault}
    >
      {client.cautions !== undefined && <Cautions client={client} answerIt={answerIt} />}
      {openForm === undefined && <HalfTyped clientId={id} open={open} />}
      {isAdding && <AddResults {...form} />}
      {isAssessing && <CarriedNote carried={carried} />}
      {isAssessing && <AssessmentForm {...form} carried={carried} />}
      {isAssessed ? (
        <div className={styles.clientcols}>
          <AssessmentSummary client={client} onPick={onPick} />
          <PrescriptionSheet key={proposalOf(client)} client={client} />
        </div>
      ) : (
        <p className={layout.notice}>
          No assessment yet. Begin with a new assessment: setting, weight, labs and medicines; targets are proposed from them.
        </p>
      )}
      {prescriptions.length > 0 && <Fits client={client} />}
      {prescriptions.length > 0 && <ClientHandout client={client} onChanged={refresh} />}
      {isAssessed && <ChartNote client={client} />}
      <SignedPrescriptions client={client} />
    </Page>
  );
}

/** The calendar day where the browser runs. */
function localToday(): string {
  const now = new Date();
  return new Date(now.getTime() - now.getTimezoneOffset() * 60_000).toISOString().slice(0, 10);
}
