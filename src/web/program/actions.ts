import { useRouter } from '@tanstack/react-router';
import { useState } from 'react';
import type { Action } from '../ui/action/action.ts';

export const reloadPage: Action = { label: 'Reload this page', run: () => location.reload() };

/** Opens a screen once more that could not be shown. `reset` lets go of the fault. */
export function useTryAgain(reset: () => void): Action {
  const router = useRouter();
  const [isBusy, setBusy] = useState(false);
  const tryAgain = async (): Promise<void> => {
    setBusy(true);
    // Loads what the screen is made of once more.
    await router.invalidate();
    setBusy(false);
    reset();
  };
  return { label: 'Try again', isBusy, run: () => void tryAgain() };
}
