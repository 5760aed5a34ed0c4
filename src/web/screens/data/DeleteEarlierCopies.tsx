import { useQuery } from '@tanstack/react-query';
import { answer, api } from '../../api.ts';
import { ConfirmButton } from '../../ui/ConfirmButton.tsx';
import layout from '../../ui/layout.module.css';
import { Progress } from '../../ui/Progress.tsx';
import { Told } from '../../ui/Told.tsx';
import { useEarlierCopiesActions } from './copyActions.ts';

/** A new copy in the place of those of before, which hold who was erased since, and records of before a passphrase with their key. */
export function DeleteEarlierCopies() {
  const { renew, renewing } = useEarlierCopiesActions();
  const copies = useQuery({ queryKey: ['copies'], queryFn: () => answer(api.copies.$get()) });
  const count = (copies.data?.copies.length ?? 0) + (copies.data?.earlier.copies ?? 0);
  if (renewing.isRunning) return <Progress workId={renewing.workId} begins="Making a copy" onCancel={renewing.cancel} />;
  if (renewing.result !== undefined) return <p role="status">A new copy was made, and the earlier ones are deleted.</p>;
  if (count === 0) return null;
  const which = count === 1 ? 'the copy' : `the ${count} copies`;
  return (
    <div className={layout.stack}>
      <Told error={renewing.fault} />
      <ConfirmButton
        action={renew}
        question={`Delete ${which} made until now, those in folders of before among them? A new one is made first. What was changed or deleted before today can then not be brought back from a copy.`}
      />
    </div>
  );
}
