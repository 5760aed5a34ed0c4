import { useMutation } from '@tanstack/react-query';
import { useState } from 'react';
import { answer, api, type Food, type Label, sent } from '../../api.ts';
import button from '../../ui/Button.module.css';
import { FileChoice } from '../../ui/FileChoice.tsx';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import { RecheckDay } from './RecheckDay.tsx';

/** All labels of the food, newest first: readings, corrections and withdrawals told apart, with what changed. */
export function History({
  food,
  onCorrect,
  onChanged,
}: {
  readonly food: Food;
  readonly onCorrect: (label: Label) => void;
  readonly onChanged: () => void;
}) {
  return (
    <section className={`${layout.sheet} ${layout.stack}`} aria-labelledby="history-title">
      <h2 id="history-title">Labels of this food</h2>
      {food.history.map(label => (
        <LabelEntry key={label.id} label={label} version={food.version} onCorrect={onCorrect} onChanged={onChanged} />
      ))}
    </section>
  );
}

function LabelEntry({
  label,
  version,
  onCorrect,
  onChanged,
}: {
  readonly label: Label;
  readonly version: number;
  readonly onCorrect: (label: Label) => void;
  readonly onChanged: () => void;
}) {
  const [reason, setReason] = useState('');
  const [asks, setAsks] = useState(false);
  const withdraw = useMutation({
    mutationFn: () => answer(api.labels[':id'].withdraw.$post({ param: { id: label.id }, json: { version, reason } })),
    onSuccess: onChanged,
  });
  const photo = useMutation({
    mutationFn: async (file: File) =>
      sent(fetch(`/api/labels/${label.id}/photos`, { method: 'POST', headers: { 'content-type': file.type }, body: file })),
    onSuccess: onChanged,
  });
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
          <button type="button" className={button.quiet} onClick={() => onCorrect(label)}>
            Correct a misread figure
          </button>
          <RecheckDay label={label} onChanged={onChanged} />
          <FileChoice label="Add a photo" accept="image/jpeg,image/png,image/webp" onChoose={file => photo.mutate(file)} />
          {asks ? (
            <form
              className={layout.row}
              onSubmit={event => {
                event.preventDefault();
                withdraw.mutate();
              }}
            >
              <label className={layout.field}>
                <span>Why is it withdrawn?</span>
                <input type="text" required value={reason} onChange={event => setReason(event.target.value)} />
              </label>
              <button type="submit" className={button.quiet}>
                Withdraw this label
              </button>
            </form>
          ) : (
            <button type="button" className={button.quiet} onClick={() => setAsks(true)}>
              Withdraw …
            </button>
          )}
        </div>
      )}
      <Told error={withdraw.error ?? photo.error} />
    </article>
  );
}
