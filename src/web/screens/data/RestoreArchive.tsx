import { useEffect, useRef } from 'react';
import type { Restored } from '../../api.ts';
import { FileChoice } from '../../ui/FileChoice.tsx';
import layout from '../../ui/layout.module.css';
import { Progress } from '../../ui/Progress.tsx';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import { useRestoreActions } from './archiveActions.ts';
import { exampleInWords, isNamed, leftOutInWords, rowsInWords } from './archiveWords.ts';
import { RestoreForm } from './RestoreForm.tsx';

/** A file is looked at first, and restored when the person has seen what is in it. */
export function RestoreArchive(given: {
  /** Nothing is here but the demo. */
  readonly isEmpty: boolean;
  /** A daily copy that was chosen. */
  readonly copy: string | undefined;
  readonly onDone: () => Promise<void>;
}) {
  const { isEmpty, copy, onDone } = given;
  const actions = useRestoreActions(onDone);
  const { archive, restored, running } = actions;
  // A copy that was chosen is looked at at once.
  const begin = useRef(actions.look);
  useEffect(() => {
    if (copy !== undefined) begin.current(copy);
  }, [copy]);
  return (
    <div className={layout.stack}>
      <h3>Restore</h3>
      <p className={text.soft}>
        From an archive (.zip), or a workspace file (.json) of an earlier Platewright. It is looked at first; nothing is written yet.
      </p>
      <Told error={actions.fault} />
      {running !== undefined ? (
        <Progress workId={running.workId} begins={actions.begins} onCancel={running.cancel} />
      ) : archive === undefined ? (
        <p className={layout.row}>
          <FileChoice
            label="Choose a file to restore"
            accept=".zip,.json,application/zip,application/json"
            onChoose={file => actions.look(file)}
          />
        </p>
      ) : (
        <RestoreForm key={archive.id} archive={archive} isEmpty={isEmpty} actions={actions} />
      )}
      {restored !== undefined && running === undefined && <Result restored={restored} />}
    </div>
  );
}

function Result({ restored }: { readonly restored: Restored }) {
  const { clients, same, examples } = restored;
  return (
    <div className={`${layout.notice} ${layout.stack}`} role="status">
      <p>
        <b>Restored.</b> Added: {rowsInWords(restored.added) ?? 'nothing'}.
        {same > 0 && ` ${same.toLocaleString('en')} entries stood here already.`}
        {clients !== undefined &&
          ` Client records: ${clients.added} added, ${clients.same} the same as here, ${clients.conflicts} different from those here and left out${
            clients.damaged > 0 ? `, ${clients.damaged} damaged` : ''
          }.`}
        {clients?.draftsLeftOut !== undefined &&
          ` Left out: what is half typed in the archive about ${clients.draftsLeftOut === 1 ? 'one client' : `${clients.draftsLeftOut} clients`} who stand here already.`}
      </p>
      {leftOutInWords(restored).length > 0 && (
        <ul>
          {leftOutInWords(restored).map(line => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      )}
      {examples.length > 0 && (
        <details>
          <summary>Which ones</summary>
          <ul>
            {examples.filter(isNamed).map(one => (
              <li key={`${one.table} ${one.id}`}>{exampleInWords(one)}</li>
            ))}
          </ul>
        </details>
      )}
    </div>
  );
}
