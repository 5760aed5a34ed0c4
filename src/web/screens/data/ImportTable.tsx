import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { answer, api, type ImportLook } from '../../api.ts';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { useOffered } from '../../ui/action/offered.ts';
import { DropPlace } from '../../ui/DropPlace.tsx';
import { FileChoice } from '../../ui/FileChoice.tsx';
import { Choice } from '../../ui/form/Choice.tsx';
import { orNone } from '../../ui/form/choices.ts';
import { Field } from '../../ui/form/Field.tsx';
import layout from '../../ui/layout.module.css';
import { Progress } from '../../ui/Progress.tsx';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import { EarlierImports } from './EarlierImports.tsx';
import { type Mapping, useImportActions } from './importActions.ts';
import { Report } from './Report.tsx';

const doesText = {
  'begins-a-food': 'begins a food',
  'joins-a-food': 'joins',
  'already-there': 'is there already',
  'left-out': 'is left out',
} as const;

/** A table of labels: choose or paste it, say what its columns are, see what each row would do, then keep it. */
export function ImportTable({ onDone }: { readonly onDone: () => Promise<void> }) {
  const [pasted, setPasted] = useState('');
  const actions = useImportActions(pasted, onDone);
  const { look, keeping, done } = actions;
  const earlier = useQuery({ queryKey: ['imports'], queryFn: () => answer(api.imports.$get()) });
  useOffered(look === undefined ? [] : [actions.keep]);
  return (
    <DropPlace className={`${layout.sheet} ${layout.stack}`} labelledBy="import-title" onFiles={([file]) => file && actions.begin(file)}>
      <h2 id="import-title">Import a table of labels</h2>
      <p className={text.soft}>
        CSV or XLSX, one label a row. Rows that match a food by bar code, or by maker and name, join it as a newer label.
      </p>
      <p className={layout.row}>
        <FileChoice isMain label="Choose a file" accept=".csv,.tsv,.txt,.xlsx" onChoose={actions.begin} />
        <span className={text.soft}>or drop one here</span>
      </p>
      <details>
        <summary>Paste a table</summary>
        <div className={layout.stack}>
          <Field
            label="Rows with headings in the first, as copied from a spreadsheet"
            rows={6}
            maxLength={50_000_000}
            value={pasted}
            onChange={setPasted}
          />
          <ActionButton action={actions.lookAtPasted} />
        </div>
      </details>
      <Told error={actions.fault} />
      {actions.isFileUnreadable && <p role="alert">The file cannot be read. Next: look whether it is still there, and choose it again.</p>}
      {actions.isLooking && <Progress workId={keeping.workId} begins="Reading the file" onCancel={actions.cancel.run} />}
      {keeping.isRunning && <Progress workId={keeping.workId} begins="Reading the file" onCancel={keeping.cancel} />}
      {look !== undefined && (
        <>
          {/* What was chosen last counts, not the answer to an earlier choice that is still on its way. */}
          <Columns look={look} mapping={actions.mapping ?? look.mapping} onChange={actions.setMapping} />
          <Rows look={look} />
          <Report report={look.report} />
          {actions.toKeep === 0 && look.rows.length > 0 && <p>Every label of the table is here already.</p>}
          <p className={layout.row}>
            <ActionButton action={actions.keep} isMain />
            <ActionButton action={actions.cancel} />
          </p>
        </>
      )}
      {done !== undefined && (
        <div className={layout.notice} role="status">
          <p>
            Kept: {done.added} new foods, {done.joined} newer labels; {done.alreadyThere} were there already, {done.leftOut} rows were left
            out.
          </p>
          <ActionButton action={actions.undo(done.importId)} />
        </div>
      )}
      {earlier.data !== undefined && earlier.data.length > 0 && <EarlierImports imports={earlier.data} undo={actions.undoEarlier} />}
    </DropPlace>
  );
}

function Columns({
  look,
  mapping,
  onChange,
}: {
  readonly look: ImportLook;
  readonly mapping: Mapping;
  readonly onChange: (mapping: Mapping) => void;
}) {
  const choices = orNone(
    'left out',
    look.columns.map(({ key, name }) => [key, name]),
  );
  return (
    <div>
      <h3>What each column is</h3>
      <div className={layout.formgrid}>
        {look.headings.map((heading, at) => (
          <Choice
            // biome-ignore lint/suspicious/noArrayIndexKey: two columns may have one heading; their place tells them apart
            key={`${at}${heading}`}
            label={heading || `column ${at + 1}`}
            choices={choices}
            value={mapping[at] ?? ''}
            onChange={chosen => onChange(mapping.with(at, chosen || null))}
          />
        ))}
      </div>
    </div>
  );
}

function Rows({ look }: { readonly look: ImportLook }) {
  const most = 200;
  return (
    <details open={look.rows.length <= 20}>
      <summary>What the {look.rows.length} rows do</summary>
      <ul>
        {look.rows.slice(0, most).map(({ row, name, maker, does, joins }) => (
          <li key={row}>
            Row {row}: {name}
            {maker === undefined ? '' : ` (${maker})`} {doesText[does]}
            {does === 'joins-a-food' ? ` ${joins}` : ''}.
          </li>
        ))}
      </ul>
      {look.rows.length > most && <p className={text.soft}>And {look.rows.length - most} more.</p>}
    </details>
  );
}
