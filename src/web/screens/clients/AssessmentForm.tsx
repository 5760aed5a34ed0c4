import { useDeferredValue, useEffect, useEffectEvent } from 'react';
import type { Carried } from '#core/client/formulas/catalog/assessmentFields.ts';
import type { Client, Proposal } from '../../api.ts';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { ActionForm } from '../../ui/action/ActionForm.tsx';
import { Draft } from '../../ui/draft/Draft.tsx';
import { useDraft } from '../../ui/draft/useDraft.ts';
import { focusFirstField } from '../../ui/focusFirstField.ts';
import { useTyped } from '../../ui/form/typed.ts';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import { AddedFoods } from './AddedFoods.tsx';
import { useAssessmentActions } from './assessmentActions.ts';
import { assessmentOf, stillMissing } from './assessmentOf.ts';
import { Binders, PotassiumBinders } from './Binders.tsx';
import { BodyFields, FoodFields } from './BodyFields.tsx';
import { withCarried } from './carriedAssessment.ts';
import { Issues } from './Issues.tsx';
import { Labs } from './Labs.tsx';
import { PersonFields } from './PersonFields.tsx';
import { questionsByRow } from './questionsByRow.ts';
import { TickedLists } from './TickedLists.tsx';
import { typedAssessment } from './typedAssessment.ts';
import { useVersionOf } from './useClient.ts';
import { useProposal } from './useProposal.ts';
import { vaultDraft } from './vaultDraft.ts';
import { Weighings } from './Weighings.tsx';

/** A dated set of facts. Questions and refusals speak while it is typed; nothing is corrected silently. */
export function AssessmentForm(given: {
  readonly client: Client;
  /** A result of a calculator that is filled in. */
  readonly carried?: Carried | undefined;
  readonly today: string;
  /** The newest assessment is put right: this one, of the same day, takes its place. */
  readonly isCorrection: boolean;
  readonly onDone: () => void;
}) {
  const { client, carried, today, isCorrection, onDone } = given;
  const on = (isCorrection ? client.assessedOn : undefined) ?? today;
  const typed = useTyped(() => {
    const begun = typedAssessment(client.assessment, on);
    return carried === undefined ? begun : withCarried(begun, carried);
  });
  const draft = useDraft(vaultDraft(client.id, 'assessment'), typed, JSON.stringify(client.assessment));
  const version = useVersionOf(client.version, JSON.stringify(client.assessment));
  // What was typed before has taken the place of the whole form, without the result that comes now.
  const carryAgain = useEffectEvent(() => carried !== undefined && typed.set(withCarried(typed.values, carried)));
  const isRestored = draft.state.kind === 'restored';
  useEffect(() => {
    if (isRestored) carryAgain();
  }, [isRestored]);
  const missing = stillMissing(typed.values);
  const ready = missing.length === 0 ? assessmentOf(typed.values) : undefined;
  const { keep, cancel, fault } = useAssessmentActions(
    { ...client, version },
    ready,
    { forget: draft.forget, onDone },
    isCorrection ? client.assessmentId : undefined,
  );
  // What is asked is what is looked at: what settles later must not be sent half typed.
  const proposal = useProposal(assessmentOf(useDeferredValue(typed.values)));
  const issues = proposal.data?.issues ?? [];
  const { labs, weighings, fields } = typed.values;
  const { bornOn } = fields;
  return (
    <ActionForm action={keep} className={`${layout.sheet} ${layout.stack}`} isSentByEnter={false} formRef={focusFirstField}>
      <h2>{isCorrection ? `A correction of the assessment of ${client.assessedOn}` : 'An assessment'}</h2>
      <Draft draft={draft} />
      <p className={text.soft}>What is not known stays empty. Enter weights in pounds and heights in feet and inches as they come.</p>
      <PersonFields typed={typed} today={today} />
      <fieldset className={layout.stack}>
        <legend>Body and intake</legend>
        <BodyFields fields={typed.part('fields')} />
        <Weighings weighings={typed.rows('weighings')} today={today} questions={questionsByRow(weighings, 'weighings', issues)} />
        <AddedFoods rows={typed.rows('addedFoods')} holdsAdded={typed.part('fields').field('holdsAdded')} />
      </fieldset>
      <Labs
        labs={typed.rows('labs')}
        today={today}
        client={{ name: client.name, ...(bornOn.trim() === '' ? {} : { bornOn }) }}
        questions={questionsByRow(labs, 'labs', issues)}
      />
      <TickedLists ticked={typed.part('ticked')} />
      <Binders rows={typed.rows('binders')} />
      <PotassiumBinders rows={typed.rows('potassiumBinders')} />
      <FoodFields fields={typed.part('fields')} />
      {missing.length > 0 && (
        <p className={layout.notice} role="status">
          Before anything can be proposed: {missing.join('; ')}.
        </p>
      )}
      {missing.length === 0 && proposal.error !== null && <Told error={proposal.error} />}
      {missing.length === 0 && proposal.data !== undefined && <SoFar proposal={proposal.data} />}
      <Told error={fault} />
      <p className={layout.row}>
        <ActionButton action={keep} isMain submits />
        <ActionButton action={cancel} />
      </p>
    </ActionForm>
  );
}

/** Whether what is typed so far could be proposed from, and who must be told today. */
function SoFar({ proposal: { issues, cautions } }: { readonly proposal: Proposal }) {
  return (
    <div className={layout.notice} role="status">
      {issues.length === 0 ? <p>So far a prescription can be proposed.</p> : null}
      <Issues issues={issues} />
      {cautions
        .filter(({ sameDay }) => sameDay)
        .map(({ id, told }) => (
          <p key={id}>
            <b>Contact the same day.</b> {told}
          </p>
        ))}
    </div>
  );
}
