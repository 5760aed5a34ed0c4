import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useRef, useState } from 'react';
import { answer, api } from '../../api.ts';
import button from '../../ui/Button.module.css';
import layout from '../../ui/layout.module.css';
import { Progress } from '../../ui/Progress.tsx';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import { momentInWords, sizeInWords } from './archiveWords.ts';
import { DeleteEarlierCopies } from './DeleteEarlierCopies.tsx';

/** The copies that the program makes by itself: how the last one went, where they lie, and which are there. */
export function DailyCopies({ onRestore }: { readonly onRestore: (day: string) => void }) {
  const queries = useQueryClient();
  const [workId] = useState(() => crypto.randomUUID());
  const stop = useRef<AbortController>(undefined);
  const [folder, setFolder] = useState<string>();
  const copies = useQuery({ queryKey: ['copies'], queryFn: () => answer(api.copies.$get()) });
  const refresh = (): Promise<void> => queries.invalidateQueries({ queryKey: ['copies'] });
  const make = useMutation({
    mutationFn: () => {
      stop.current = new AbortController();
      return answer(api.copies.$post({ json: { workId } }, { init: { signal: stop.current.signal } }));
    },
    onSettled: refresh,
  });
  const move = useMutation({
    mutationFn: (to: string) => answer(api.copies.folder.$put({ json: { folder: to } })),
    onSuccess: async () => {
      setFolder(undefined);
      await refresh();
    },
  });
  if (copies.data === undefined) return <Told error={copies.error} />;
  const { lastAt, lastFault, heldUntil, restoreBrokenOff, earlierFolders = [] } = copies.data;
  return (
    <div className={layout.stack}>
      <h3>Daily copies</h3>
      {restoreBrokenOff && (
        <div className={layout.notice} role="alert">
          <p>
            <b>A restore was broken off.</b> Its foods and documents may be here without its client records. Next: restore the same archive
            once more, beside what is here; it adds what is missing.
          </p>
        </div>
      )}
      {lastFault !== undefined && (
        <div className={layout.notice} role="alert">
          <p>
            <b>The copy of {momentInWords(lastFault.at)} was not made.</b> {lastFault.title}. {lastFault.message} Next: {lastFault.nextStep}
          </p>
        </div>
      )}
      <p className={text.soft}>
        On each day on which something has changed, a copy of everything is made: the last seven days, and one a week for four weeks before.
        Client records under a passphrase stay sealed in them; without one, whoever has a copy can read them. The last one:{' '}
        {lastAt === undefined ? 'none yet' : momentInWords(lastAt)}.
        {heldUntil !== undefined &&
          ` What you erase today is in a copy until ${heldUntil} at the latest, when Platewright is used till then.`}
      </p>
      <p className={text.soft}>
        Folder: <code>{copies.data.folder}</code>. On another disk, copies outlive this one.
        {earlierFolders.length > 0 &&
          ` Copies made before in ${earlierFolders.join(', ')} stay there until you delete them${copies.data.earlier.holdKey > 0 ? '; whoever has one can read the client records in it' : ''}.`}
      </p>
      <Told error={make.error ?? move.error} />
      {make.isPending ? (
        <Progress workId={workId} begins="Making a copy" onCancel={() => stop.current?.abort()} />
      ) : (
        <p className={layout.row}>
          <button type="button" className={button.quiet} onClick={() => make.mutate()}>
            Make a copy now
          </button>
          {folder === undefined && (
            <button type="button" className={button.quiet} onClick={() => setFolder(copies.data.folder)}>
              Choose another folder
            </button>
          )}
        </p>
      )}
      {folder !== undefined && (
        <form
          className={layout.stack}
          onSubmit={event => {
            event.preventDefault();
            move.mutate(folder);
          }}
        >
          <label className={layout.field}>
            <span>Folder for copies to come, from its root on</span>
            <input type="text" value={folder} onChange={event => setFolder(event.target.value)} required />
          </label>
          <p className={layout.row}>
            <button type="submit" className={button.act}>
              Use this folder
            </button>
            <button type="button" className={button.quiet} onClick={() => setFolder(undefined)}>
              Cancel
            </button>
          </p>
        </form>
      )}
      {copies.data.copies.length > 0 && (
        <details>
          <summary>{copies.data.copies.length === 1 ? 'One copy' : `${copies.data.copies.length} copies`}</summary>
          <ul>
            {copies.data.copies.map(({ day, bytes, madeAt, holdsKey }) => (
              <li key={day}>
                {momentInWords(madeAt)}, {sizeInWords(bytes)}
                {holdsKey && ', client records not locked'}{' '}
                <button
                  type="button"
                  className={button.quiet}
                  aria-label={`Restore from the copy of ${momentInWords(madeAt)}`}
                  onClick={() => onRestore(day)}
                >
                  Restore from it
                </button>
              </li>
            ))}
          </ul>
          <DeleteEarlierCopies />
        </details>
      )}
    </div>
  );
}
