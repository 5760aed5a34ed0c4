import { useState } from 'react';
import type { HandoutTyped } from '#core/handout/handoutFromJson.ts';
import type { Client } from '../../api.ts';
import { isDraftKept, useDraft } from '../../ui/draft/useDraft.ts';
import { typedOf } from '../../ui/form/typed.ts';
import { useLeaveGuard } from '../../ui/useLeaveGuard.ts';
import { vaultDraft } from '../clients/vaultDraft.ts';
import { useClientHandoutActions } from './actions.ts';
import { handoutOf, isSameHandout, type TypedHandout, typedHandout } from './typedHandout.ts';

/** The handout of a client in its form, kept with the record by a button. */
export function useClientHandout(client: Client, start: HandoutTyped, onChanged: () => Promise<void>) {
  const [values, change] = useState(() => typedHandout(start));
  const [kept, setKept] = useState(values);
  const draft = useDraft(vaultDraft(client.id, 'handout'), typedOf(values, change), JSON.stringify(handoutOf(kept)));
  const isSameAs = (other: TypedHandout): boolean => isSameHandout(other, values);
  useLeaveGuard(!isSameAs(kept) && !isDraftKept(draft));
  const { keep, isKept, fault } = useClientHandoutActions(client, kept, values, async saving => {
    setKept(saving);
    // What was typed while it was kept is still a draft.
    if (isSameAs(saving)) await draft.forget();
    await onChanged();
  });
  return { values, change, draft, keep, isKept: isKept && isSameAs(kept), fault };
}
