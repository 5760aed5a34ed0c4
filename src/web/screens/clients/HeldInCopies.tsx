import { useQuery } from '@tanstack/react-query';
import { answer, api } from '../../api.ts';

/** Before somebody is erased: until when the daily copies still hold what is erased here. Archives that were saved elsewhere nobody knows but the user. */
export function HeldInCopies() {
  const copies = useQuery({ queryKey: ['copies'], queryFn: () => answer(api.copies.$get()) });
  if (copies.data === undefined) return null;
  const { copies: days, heldUntil, folder, earlierFolders = [] } = copies.data;
  const earlier = earlierFolders.length === 0 ? '' : ` Copies in ${earlierFolders.join(', ')} stay until you delete them.`;
  if (!copies.data.isReadable) {
    return (
      <p>
        The folder of the daily copies, <code>{folder}</code>, cannot be read now: copies in it may still hold what is erased here.{earlier}
      </p>
    );
  }
  if (days.length === 0 || heldUntil === undefined) {
    return (
      <p>{earlier === '' ? 'No daily copy holds what is erased here.' : earlier} Archives that you saved elsewhere are yours to delete.</p>
    );
  }
  return (
    <p>
      The daily copies still hold what is erased here until {heldUntil} at the latest, when Platewright is used till then; to have it gone
      now, use “Delete earlier copies” under Data afterwards; they lie in <code>{folder}</code>.{earlier} Archives that you saved elsewhere
      are yours to delete.
    </p>
  );
}
