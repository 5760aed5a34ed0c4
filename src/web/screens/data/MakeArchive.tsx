import { useMutation, useQuery } from '@tanstack/react-query';
import { useRef, useState } from 'react';
import { answer, api } from '../../api.ts';
import button from '../../ui/Button.module.css';
import layout from '../../ui/layout.module.css';
import { Progress } from '../../ui/Progress.tsx';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import { clientsInWords, rowsInWords, sizeInWords } from './archiveWords.ts';

/** Everything into one file: asked for, made, read back, saved. */
export function MakeArchive() {
  const [workId] = useState(() => crypto.randomUUID());
  const stop = useRef<AbortController>(undefined);
  const [withClients, setWithClients] = useState(true);
  const [passphrase, setPassphrase] = useState('');
  const [again, setAgain] = useState('');
  const lock = useQuery({ queryKey: ['lock'], queryFn: () => answer(api.clients.lock.$get()) });
  const asksPassphrase = withClients && lock.data?.hasPassphrase === false;
  const make = useMutation({
    mutationFn: () => {
      stop.current = new AbortController();
      const json = { workId, withClients, ...(asksPassphrase ? { passphrase } : {}) };
      return answer(api.archives.$post({ json }, { init: { signal: stop.current.signal } }));
    },
    onSettled: () => {
      setPassphrase('');
      setAgain('');
    },
  });
  const made = make.data;
  return (
    <form
      className={layout.stack}
      onSubmit={event => {
        event.preventDefault();
        make.mutate();
      }}
    >
      <h3>Make an archive</h3>
      <p className={text.soft}>
        One file with everything: foods, labels, photos, plates, yardsticks, saved surveys, guides, handouts, composition tables and,
        sealed, client records. Estimates are not in it: they are computed again.
      </p>
      <label className={layout.row}>
        <input type="checkbox" checked={withClients} onChange={event => setWithClients(event.target.checked)} />
        <span>With the client records{lock.data?.hasPassphrase ? ', sealed under their passphrase' : ''}</span>
      </label>
      {asksPassphrase && (
        <div className={layout.formgrid}>
          <label className={layout.field}>
            <span>Passphrase for this file</span>
            <input
              type="password"
              autoComplete="new-password"
              value={passphrase}
              onChange={event => setPassphrase(event.target.value)}
              required
            />
          </label>
          <label className={layout.field}>
            <span>The same once more</span>
            <input type="password" autoComplete="new-password" value={again} onChange={event => setAgain(event.target.value)} required />
          </label>
        </div>
      )}
      {asksPassphrase && (
        <p className={text.soft}>
          Whoever restores the file needs this passphrase for the client records. Nobody can bring it back when it is forgotten.
        </p>
      )}
      {asksPassphrase && again !== '' && again !== passphrase && <p role="status">The two are not the same yet.</p>}
      <Told error={make.error} />
      {make.isPending ? (
        <Progress workId={workId} begins="Making the archive" onCancel={() => stop.current?.abort()} />
      ) : (
        <p>
          <button type="submit" className={button.act} disabled={asksPassphrase && again !== passphrase}>
            Make an archive
          </button>
        </p>
      )}
      {made !== undefined && !make.isPending && (
        <div className={`${layout.notice} ${layout.stack}`} role="status">
          <p>
            <b>The archive is made and was read back whole</b> ({sizeInWords(made.bytes)}). In it:{' '}
            {rowsInWords(made.rows) ?? 'no food or document'}; {clientsInWords(made)}.
            {made.clients === undefined && ' Client records are not in it.'}
            {made.damaged > 0 && ` ${made.damaged} values that cannot be read went along as they are.`}
          </p>
          <p>
            <a className={button.act} href={`/api/archives/${made.id}/file`} download>
              Save the file
            </a>
          </p>
        </div>
      )}
    </form>
  );
}
