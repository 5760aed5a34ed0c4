import { useQuery } from '@tanstack/react-query';
import { answer, api } from '../../api.ts';

/** Before somebody is erased: until when the daily copies still hold what is erased here. Archives that were saved elsewhere nobody knows but the user. */
export function HeldInCopies() {
  const copies = useQuery({ queryKey: ['copies'], queryFn: () => answer(api.copies.$get()) });
  if (copies.data === undefined) return null;
  const { copies: days, heldUntil, folder, earlierFolders = [] } = copies.data;
  const earlier = earlierFolders.length === 0 ? '' : ` Copies in ${earlierFolders.join(', ')} stay until you delete them.`;
  if (days.length === 0 || heldUntil === undefined)
    return <p>No daily copy holds it. Archives that you saved elsewhere are yours to delete.{earlier}</p>;
  return (
    <p>
      The daily copies still hold it until {heldUntil} at the latest, when Platewright is used till then; to have it gone now, delete the
      files in <code>{folder}</code>. Archives that you saved elsewhere are yours to delete.
      {earlier}
    </p>
  );
}
