import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useRef, useState } from 'react';
import { answer, api } from '../../api.ts';
import button from '../../ui/Button.module.css';
import layout from '../../ui/layout.module.css';
import { Progress } from '../../ui/Progress.tsx';
import { Told } from '../../ui/Told.tsx';

/** A new copy in the place of those of before, which hold who was erased since, and records of before a passphrase with their key. */
export function DeleteEarlierCopies() {
  const queries = useQueryClient();
  const [workId] = useState(() => crypto.randomUUID());
  const stop = useRef<AbortController>(undefined);
  const [isAsked, setAsked] = useState(false);
  const copies = useQuery({ queryKey: ['copies'], queryFn: () => answer(api.copies.$get()) });
  const renew = useMutation({
    mutationFn: () => {
      stop.current = new AbortController();
      return answer(api.copies.$post({ json: { workId, deleteEarlier: true } }, { init: { signal: stop.current.signal } }));
    },
    onSuccess: () => setAsked(false),
    onSettled: () => queries.invalidateQueries({ queryKey: ['copies'] }),
  });
  const count = (copies.data?.copies.length ?? 0) + (copies.data?.earlier.copies ?? 0);
  if (renew.isSuccess && !isAsked) return <p role="status">A new copy was made, and the earlier ones are deleted.</p>;
  if (count === 0) return null;
  if (renew.isPending) return <Progress workId={workId} begins="Making a copy" onCancel={() => stop.current?.abort()} />;
  const which = count === 1 ? 'the copy' : `the ${count} copies`;
  if (!isAsked) {
    return (
      <div className={layout.stack}>
        <Told error={renew.error} />
        <p>
          <button type="button" className={button.quiet} onClick={() => setAsked(true)}>
            Delete earlier copies …
          </button>
        </p>
      </div>
    );
  }
  return (
    <div className={`${layout.stack} ${layout.notice}`}>
      <p>
        <b>Delete {which} made until now, those in folders of before among them?</b> A new one is made first. What was changed or deleted
        before today can then not be brought back from a copy.
      </p>
      <Told error={renew.error} />
      <p className={layout.row}>
        <button type="button" className={button.act} onClick={() => renew.mutate()}>
          Make a new copy, delete {which}
        </button>
        <button type="button" className={button.quiet} onClick={() => setAsked(false)}>
          Keep {count === 1 ? 'it' : 'them'}
        </button>
      </p>
    </div>
  );
}
