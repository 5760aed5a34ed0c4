import { useBlocker } from '@tanstack/react-router';

/** Asks before a screen with words that are not saved is left, within the workbench or by closing the page. */
export function useLeaveGuard(isUnsaved: boolean): void {
  useBlocker({
    shouldBlockFn: () => isUnsaved && !window.confirm('What you changed is not saved. Leave, and lose it?'),
    enableBeforeUnload: () => isUnsaved,
  });
}
