import { useState } from 'react';
import type { Food, Label } from '../../api.ts';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { ActionForm } from '../../ui/action/ActionForm.tsx';
import type { Action } from '../../ui/action/action.ts';
import { FileChoice } from '../../ui/FileChoice.tsx';
import { Field } from '../../ui/form/Field.tsx';
import { useTyped } from '../../ui/form/typed.ts';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import { useLabelActions } from './labelActions.ts';
import { RecheckDay } from './RecheckDay.tsx';

/** All labels of the food, newest first: readings, corrections and withdrawals told apart, with what changed. */
export function History({
  food,
  correct,
  onChanged,
}: {
  readonly food: Food;
  readonly correct: (label: Label) => Action;
  readonly onChanged: () => void;
}) {
  return (
    <section className={`${layout.sheet} ${layout.stack}`} aria-labelledby="history-title">
      <h2 id="history-title">Labels of this food</h2>
      {food.history.map(label => (
        <LabelEntry key={label.id} label={label} version={food.version} correct={correct(label)} onChanged={onChanged} />
      ))}
    </section>
  );
}

function LabelEntry({
  label,
  version,
  correct,
  onChanged,
}: {
  readonly label: Label;
  readonly version: number;
  readonly correct: Action;
  readonly onChanged: () => void;
}) {
  const typed = useTyped({ reason: '' });
  const [isAsked, setAsked] = useState(false);
  const actions = useLabelActions(label, version, typed.values.reason, { askWhy: () => setAsked(true), onChanged });
  const isOpen = label.withdrawn === undefined;
  return (
    <article className={layout.stack} aria-label={`Label of ${String(label.printed.readOn ?? label.addedAt.slice(0, 10))}`}>
      <h3>
        {label.kind === 'correction' ? 'Correction' : 'Label'} {String(label.printed.readOn ?? '')}{' '}
        <span className={text.soft}>added {label.addedAt.slice(0, 10)}</span> {label.stands && <span className={text.tag}>stands</span>}
        {label.correctedBy !== undefined && <span className={text.tag}>corrected since</span>}
        {!isOpen && <span className={text.tag}>withdrawn</span>}
      </h3>
      {label.kind === 'correction' && <p>A misread figure was mended: {label.reason}</p>}
      {label.withdrawn !== undefined && (
        <p>
          Withdrawn {label.withdrawn.at.slice(0, 10)}: {label.withdrawn.reason}
        </p>
      )}
      {label.changes !== undefined && (
        <div>
          {label.changes.outcome === 'same' ? <p>Nothing changed since the label before.</p> : null}
          <ul>
            {label.changes.sentences.map(sentence => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </div>
      )}
      {label.photoIds.length > 0 && (
        <p className={layout.row}>
          {label.photoIds.map((id, index) => (
            <a key={id} href={`/api/photos/${id}`} target="_blank" rel="noreferrer">
              Photo {index + 1}
            </a>
          ))}
        </p>
      )}
      {isOpen && (
        <div className={`${layout.row} ${layout.noprint}`}>
          <ActionButton action={correct} />
          <RecheckDay label={label} onChanged={onChanged} />
          <FileChoice label="Add a photo" accept="image/jpeg,image/png,image/webp" onChoose={actions.addPhoto} />
          {isAsked ? (
            <ActionForm action={actions.withdraw} className={layout.row} isOffered={false}>
              <Field label="Why is it withdrawn?" isRequired {...typed.field('reason')} />
              <ActionButton action={actions.withdraw} submits />
            </ActionForm>
          ) : (
            <ActionButton action={actions.beginWithdrawal} />
          )}
        </div>
      )}
      <Told error={actions.fault} />
    </article>
  );
}
