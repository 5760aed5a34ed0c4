import { useMutation, useQuery } from '@tanstack/react-query';
import { useEffect, useRef, useState } from 'react';
import { type ArchiveShort, answer, api, type Restored } from '../../api.ts';
import button from '../../ui/Button.module.css';
import { FileChoice } from '../../ui/FileChoice.tsx';
import layout from '../../ui/layout.module.css';
import { Progress } from '../../ui/Progress.tsx';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import { clientsInWords, exampleInWords, isNamed, leftOutInWords, momentInWords, rowsInWords, sizeInWords } from './archiveWords.ts';

/** A file is looked at first, and restored when the person has seen what is in it. */
export function RestoreArchive(given: {
  /** Nothing is here but the demo. */
  readonly isEmpty: boolean;
  /** A daily copy that was chosen. */
  readonly copy: string | undefined;
  readonly onDone: () => Promise<void>;
}) {
  const { isEmpty, copy, onDone } = given;
  const [workId] = useState(() => crypto.randomUUID());
  const stop = useRef<AbortController>(undefined);
  const [restored, setRestored] = useState<Restored>();
  const signal = (): { readonly init: RequestInit } => {
    stop.current = new AbortController();
    return { init: { signal: stop.current.signal } };
  };
  const look = useMutation({
    mutationFn: (file: File | string) => {
      setRestored(undefined);
      const { init } = signal();
      if (typeof file === 'string') return answer(api.copies[':day'].look.$post({ param: { day: file }, json: { workId } }, { init }));
      return answer(
        api.archives.brought.$post(
          { query: { workId } },
          { init: { ...init, body: file, headers: { 'content-type': 'application/octet-stream' } } },
        ),
      );
    },
  });
  const leave = useMutation({
    mutationFn: (id: string) => answer(api.archives[':id'].$delete({ param: { id } })),
    onSettled: () => look.reset(),
  });
  const restore = useMutation({
    mutationFn: ({ id, json }: { readonly id: string; readonly json: Omit<RestoreChoice, 'workId'> }) =>
      answer(api.archives[':id'].restore.$post({ param: { id }, json: { ...json, workId } }, signal())),
    onSuccess: async result => {
      setRestored(result);
      look.reset();
      await onDone();
    },
  });
  // A copy that was chosen is looked at at once.
  const begin = useRef(look.mutate);
  useEffect(() => {
    if (copy !== undefined) begin.current(copy);
  }, [copy]);
  const isBusy = look.isPending || restore.isPending;
  return (
    <div className={layout.stack}>
      <h3>Restore</h3>
      <p className={text.soft}>
        From an archive (.zip), or a workspace file (.json) of an earlier Platewright. It is looked at first; nothing is written yet.
      </p>
      <Told error={look.error ?? restore.error} />
      {isBusy ? (
        <Progress workId={workId} begins={look.isPending ? 'Reading the file' : 'Restoring'} onCancel={() => stop.current?.abort()} />
      ) : look.data === undefined ? (
        <p className={layout.row}>
          <FileChoice
            label="Choose a file to restore"
            accept=".zip,.json,application/zip,application/json"
            onChoose={file => look.mutate(file)}
          />
        </p>
      ) : (
        <Choice
          key={look.data.id}
          archive={look.data}
          isEmpty={isEmpty}
          onRestore={json => restore.mutate({ id: look.data.id, json })}
          onLeave={() => leave.mutate(look.data.id)}
        />
      )}
      {restored !== undefined && !isBusy && <Result restored={restored} />}
    </div>
  );
}

type RestoreChoice = Parameters<(typeof api.archives)[':id']['restore']['$post']>[0]['json'];

function Choice(given: {
  readonly archive: ArchiveShort;
  readonly isEmpty: boolean;
  readonly onRestore: (choice: Omit<RestoreChoice, 'workId'>) => void;
  readonly onLeave: () => void;
}) {
  const { archive, isEmpty, onRestore, onLeave } = given;
  const [into, setInto] = useState<'empty' | 'beside'>(isEmpty ? 'empty' : 'beside');
  const [withClients, setWithClients] = useState(archive.clients !== undefined);
  const [passphrase, setPassphrase] = useState('');
  const lock = useQuery({ queryKey: ['lock'], queryFn: () => answer(api.clients.lock.$get()), gcTime: 0 });
  const isUnlocked = lock.data?.hasPassphrase === false;
  const asksPassphrase = withClients && into === 'beside' && archive.clients?.opensWith === 'passphrase';
  return (
    <form
      className={`${layout.notice} ${layout.stack}`}
      onSubmit={event => {
        event.preventDefault();
        onRestore({ into, withClients, ...(asksPassphrase ? { passphrase } : {}) });
      }}
    >
      <p>
        <b>
          {archive.kind === 'archive' ? `An archive of ${momentInWords(archive.madeAt)}` : 'A workspace file of an earlier Platewright'}
        </b>{' '}
        ({sizeInWords(archive.bytes)}), read through and whole. In it: {rowsInWords(archive.rows) ?? 'no food or document'};{' '}
        {clientsInWords(archive)}.
        {archive.damaged > 0 && ` ${archive.damaged} values in it cannot be read; they come along as they are and are passed over.`}
      </p>
      <fieldset className={layout.stack}>
        <legend>Where to</legend>
        <label className={layout.row}>
          <input type="radio" name="into" checked={into === 'empty'} disabled={!isEmpty} onChange={() => setInto('empty')} />
          <span>
            Into this workspace,{' '}
            {isEmpty
              ? 'which is empty but for the demo; what was added to foods of the demo goes with it'
              : 'which must be empty first (Delete everything, below)'}
          </span>
        </label>
        <label className={layout.row}>
          <input type="radio" name="into" checked={into === 'beside'} onChange={() => setInto('beside')} />
          <span>Beside what is here: what is new is added, what stands here is left as it is, and what differs is told</span>
        </label>
      </fieldset>
      {archive.clients !== undefined && (
        <label className={layout.row}>
          <input type="checkbox" checked={withClients} onChange={event => setWithClients(event.target.checked)} />
          <span>
            The client records too
            {into === 'empty' &&
              archive.clients.opensWith === 'passphrase' &&
              '; they stay sealed, and their passphrase holds from then on'}
            {into === 'beside' && isUnlocked && '; no passphrase is set here, so anyone using this computer account can read them then'}
          </span>
        </label>
      )}
      {asksPassphrase && (
        <label className={layout.field}>
          <span>Passphrase of the client records in the archive</span>
          <input type="password" autoComplete="off" value={passphrase} onChange={event => setPassphrase(event.target.value)} required />
        </label>
      )}
      <p className={layout.row}>
        <button type="submit" className={button.act}>
          Restore
        </button>
        <button type="button" className={button.quiet} onClick={onLeave}>
          Leave it
        </button>
      </p>
    </form>
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
