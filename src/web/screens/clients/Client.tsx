import { getRouteApi, Link } from '@tanstack/react-router';
import { useState } from 'react';
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
import { AssessmentBehind } from './AssessmentBehind.tsx';
import { AssessmentForm } from './AssessmentForm.tsx';
import { Cautions } from './Cautions.tsx';
import { ChartNote } from './ChartNote.tsx';
import styles from './Client.module.css';
import { ClientSentence } from './ClientSentence.tsx';
import { type OpenForm, useClientActions } from './clientActions.ts';
import { DueChecks } from './DueChecks.tsx';
import { Fits } from './Fits.tsx';
import { HalfTyped } from './HalfTyped.tsx';
import { isLocked } from './isLocked.ts';
import { Lock } from './Lock.tsx';
import { Prescription } from './Prescription.tsx';
import { Results } from './Results.tsx';
import { localToday } from './shownDay.ts';
import { proposalOf } from './typedPrescription.ts';
import { useClient, useRefreshClient } from './useClient.ts';
import type { PickWeight } from './WeightChoice.tsx';

const route = getRouteApi('/clients/$clientId');

/** One person: who it is in a sentence, cautions by weight, the prescription with the results beside it, what fits, documents. */
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

function Open(given: { readonly client: Client; readonly fault: unknown; readonly onPick: PickWeight }) {
  const { client, fault, onPick } = given;
  const { id, name, isDemo, assessmentId, prescriptions } = client;
  const refresh = useRefreshClient(id);
  // What a calculator sends opens the form with it filled in, unsaved; it goes with the form.
  const { carried, isAssessing, setAssessing } = useCarried(id);
  const [isAdding, setAdding] = useState(false);
  const [isCorrecting, setCorrecting] = useState(false);
  const openForm: OpenForm = isAssessing ? 'assessment' : isAdding ? 'results' : undefined;
  const open = (form: OpenForm): void => {
    setAssessing(form === 'assessment');
    setAdding(form === 'results');
    setCorrecting(false);
  };
  const correctIt = (): void => {
    setAssessing(true);
    setCorrecting(true);
  };
  const { assess, addResults, answerIt, correct } = useClientActions(openForm, open, correctIt);
  const isAssessed = assessmentId !== undefined;
  useOffered(isAssessed ? [addResults, assess, correct] : [assess]);
  // What came in may raise an alarm, and that stands on top.
  const onDone = (): void => {
    open(undefined);
    scrollTo({ top: 0 });
  };
  const form = { client, today: localToday(), onDone };
  return (
    <Page
      title={name}
      windowTitle="Client"
      above={
        <>
          <Link to="/clients">Clients</Link>
          {isDemo ? ' · demo, invented' : ''}
        </>
      }
      about={isAssessed && <ClientSentence client={client} />}
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
      {isAssessing && <AssessmentForm {...form} carried={carried} isCorrection={isCorrecting} />}
      {!isAssessed && (
        <p className={layout.notice}>
          No assessment yet. Begin with a new assessment: setting, weight, labs and medicines; targets are proposed from them.
        </p>
      )}
      {isAssessed && (
        <div className={styles.columns}>
          <div className={layout.stack}>
            <Prescription key={proposalOf(client)} client={client} onPick={onPick} />
            <AssessmentBehind client={client} correct={correct} onPick={onPick} />
            {prescriptions.length > 0 && (
              <div className={layout.noprint}>
                <Fits client={client} />
              </div>
            )}
          </div>
          <div className={layout.stack}>
            <Results client={client} />
            <DueChecks checks={client.nextChecks} />
          </div>
        </div>
      )}
      {isAssessed && (
        <section className={styles.section} aria-labelledby="documents-title">
          <h2 id="documents-title" className={layout.noprint}>
            Documents
          </h2>
          {prescriptions.length > 0 && <ClientHandout client={client} onChanged={refresh} />}
          <ChartNote client={client} />
        </section>
      )}
    </Page>
  );
}
