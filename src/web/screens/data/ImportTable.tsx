import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import type { InferResponseType } from 'hono/client';
import { useRef, useState } from 'react';
import { answer, api, type ImportLook } from '../../api.ts';
import button from '../../ui/Button.module.css';
import { FileChoice } from '../../ui/FileChoice.tsx';
import layout from '../../ui/layout.module.css';
import { Progress } from '../../ui/Progress.tsx';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import { Report } from './Report.tsx';

type Done = InferResponseType<typeof api.imports.$post, 200>;

const doesText = {
  'begins-a-food': 'begins a food',
  'joins-a-food': 'joins',
  'already-there': 'is there already',
  'left-out': 'is left out',
} as const;

/** A table of labels: choose or paste it, say what its columns are, see what each row would do, then keep it. */
export function ImportTable({ onDone }: { readonly onDone: () => Promise<void> }) {
  const queries = useQueryClient();
  const [source, setSource] = useState<File>();
  // Counts what was chosen: a file has no content that a question could be told apart by.
  const [choice, setChoice] = useState(0);
  const [mapping, setMapping] = useState<readonly (string | null)[]>();
  const [pasted, setPasted] = useState('');
  const [done, setDone] = useState<Done>();
  const [workId] = useState(() => crypto.randomUUID());
  const stop = useRef<AbortController>(undefined);
  // Empty leaves a column out.
  const asked = () => ({ file: source!, workId, ...(mapping === undefined ? {} : { mapping: mapping.map(key => key ?? '') }) });
  const earlier = useQuery({ queryKey: ['imports'], queryFn: () => answer(api.imports.$get()) });
  const look = useQuery({
    queryKey: ['import-look', choice, mapping],
    // The signal ends the request when the question is withdrawn: another file, another mapping, cancel, another screen.
    queryFn: ({ signal }) => answer(api.imports.look.$post({ form: asked() }, { init: { signal } })),
    retry: false,
    enabled: source !== undefined,
    placeholderData: before => before,
  });
  const keep = useMutation({
    mutationFn: () => {
      stop.current = new AbortController();
      return answer(api.imports.$post({ form: asked() }, { init: { signal: stop.current.signal } }));
    },
    onSuccess: async result => {
      setDone(result);
      setSource(undefined);
      await onDone();
    },
  });
  const undo = useMutation({
    mutationFn: (id: string) => answer(api.imports[':id'].undo.$post({ param: { id } })),
    onSuccess: async () => {
      setDone(undefined);
      await queries.invalidateQueries();
    },
  });
  const begin = useMutation({
    // What is looked at is what is kept, also when the file is changed on the disk between the two.
    mutationFn: async (next: File) => new File([await next.arrayBuffer()], next.name),
    onSuccess: next => {
      setMapping(undefined);
      setDone(undefined);
      keep.reset();
      setSource(next);
      setChoice(choice + 1);
    },
  });
  const toKeep = look.data?.rows.filter(({ does }) => does !== 'already-there').length ?? 0;
  return (
    <section
      className={`${layout.sheet} ${layout.stack}`}
      aria-labelledby="import-title"
      onDragOver={event => event.preventDefault()}
      onDrop={event => {
        event.preventDefault();
        const [file] = event.dataTransfer.files;
        if (file !== undefined) begin.mutate(file);
      }}
    >
      <h2 id="import-title">Import a table of labels</h2>
      <p className={text.soft}>
        CSV or XLSX, one label a row. Rows that match a food by bar code, or by maker and name, join it as a newer label.
      </p>
      <p className={layout.row}>
        <FileChoice isMain label="Choose a file" accept=".csv,.tsv,.txt,.xlsx" onChoose={file => begin.mutate(file)} />
        <span className={text.soft}>or drop one here</span>
      </p>
      <details>
        <summary>Paste a table</summary>
        <label className={layout.field}>
          <span>Rows with headings in the first, as copied from a spreadsheet</span>
          <textarea value={pasted} onChange={event => setPasted(event.target.value)} />
        </label>
        <button
          type="button"
          className={button.quiet}
          disabled={pasted.trim() === ''}
          onClick={() => begin.mutate(new File([pasted], 'pasted table'))}
        >
          Look at it
        </button>
      </details>
      <Told error={look.error ?? keep.error ?? undo.error} />
      {begin.isError && <p role="alert">The file cannot be read. Next: look whether it is still there, and choose it again.</p>}
      {look.isFetching && <Progress workId={workId} begins="Reading the file" onCancel={() => setSource(undefined)} />}
      {keep.isPending && <Progress workId={workId} begins="Reading the file" onCancel={() => stop.current?.abort()} />}
      {source !== undefined && look.data !== undefined && !keep.isPending && (
        <>
          {/* What was chosen last counts, not the answer to an earlier choice that is still on its way. */}
          <Mapping look={look.data} mapping={mapping ?? look.data.mapping} onChange={setMapping} />
          <Rows look={look.data} />
          <Report report={look.data.report} />
          {toKeep === 0 && look.data.rows.length > 0 && <p>Every label of the table is here already.</p>}
          <p className={layout.row}>
            <button type="button" className={button.act} disabled={toKeep === 0} onClick={() => keep.mutate()}>
              Keep {toKeep} {toKeep === 1 ? 'label' : 'labels'}
            </button>
            <button type="button" className={button.quiet} onClick={() => setSource(undefined)}>
              Cancel
            </button>
          </p>
        </>
      )}
      {done !== undefined && (
        <div className={layout.notice} role="status">
          <p>
            Kept: {done.added} new foods, {done.joined} newer labels; {done.alreadyThere} were there already, {done.leftOut} rows were left
            out.
          </p>
          <button type="button" className={button.quiet} onClick={() => undo.mutate(done.importId)}>
            Undo this import
          </button>
        </div>
      )}
      {(earlier.data?.length ?? 0) > 0 && (
        <details>
          <summary>Earlier imports</summary>
          <ul>
            {earlier.data?.map(one => (
              <li key={one.id}>
                {one.at.slice(0, 10)}: {one.fileName}, {one.added} new foods, {one.joined} newer labels{' '}
                {one.undoneAt === undefined ? (
                  <button
                    type="button"
                    className={button.quiet}
                    onClick={() => undo.mutate(one.id)}
                    aria-label={`Undo the import of ${one.fileName}`}
                  >
                    Undo
                  </button>
                ) : (
                  <span className={text.tag}>undone</span>
                )}
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

function Mapping({
  look,
  mapping,
  onChange,
}: {
  readonly look: ImportLook;
  readonly mapping: readonly (string | null)[];
  readonly onChange: (mapping: readonly (string | null)[]) => void;
}) {
  return (
    <div>
      <h3>What each column is</h3>
      <div className={layout.formgrid}>
        {look.headings.map((heading, at) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: two columns may have one heading; their place tells them apart
          <label className={layout.field} key={`${at}${heading}`}>
            <span>{heading || `column ${at + 1}`}</span>
            <select
              value={mapping[at] ?? ''}
              onChange={event => onChange(mapping.map((one, index) => (index === at ? event.target.value || null : one)))}
            >
              <option value="">left out</option>
              {look.columns.map(({ key, name }) => (
                <option key={key} value={key}>
                  {name}
                </option>
              ))}
            </select>
          </label>
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
