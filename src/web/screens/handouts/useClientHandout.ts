import { useState } from 'react';
import type { HandoutTyped } from '#core/handout/handoutFromJson.ts';
import type { Client } from '../../api.ts';
import { useLeaveGuard } from '../../ui/useLeaveGuard.ts';
import { useClientHandoutActions } from './actions.ts';
import { handoutOf, type TypedHandout, typedHandout } from './typedHandout.ts';

/** The handout of a client in its form, kept with the record by a button. */
export function useClientHandout(client: Client, start: HandoutTyped, onChanged: () => Promise<void>) {
  const [values, change] = useState(() => typedHandout(start));
  const [kept, setKept] = useState(values);
  const isSame = kept === values || JSON.stringify(handoutOf(kept)) === JSON.stringify(handoutOf(values));
  useLeaveGuard(!isSame);
  const { keep, isKept, fault } = useClientHandoutActions(client, values, async (saving: TypedHandout) => {
    setKept(saving);
    await onChanged();
  });
  return { values, change, keep, isKept: isKept && isSame, fault };
}
