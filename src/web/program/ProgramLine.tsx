import { useLock } from '../lock/lockPresence.ts';
import { ActionButton } from '../ui/action/ActionButton.tsx';
import { useOffered } from '../ui/action/offered.ts';
import layout from '../ui/layout.module.css';
import { reloadPage } from './actions.ts';
import { useIsRenewed } from './renewed.ts';

/** Above every screen: that the program is stopped, or was renewed under the open page; nothing while all is well. */
export function ProgramLine() {
  const { isHeard, shown } = useLock();
  const isRenewed = useIsRenewed();
  useOffered(isRenewed ? [reloadPage] : []);
  if (!isHeard)
    return (
      <p className={`${layout.notice} ${layout.noprint}`} role="alert">
        <b>The program is stopped, or hangs.</b> Start it again with npm start, and open the address it prints in this browser
        {shown === 'dropped' ? '.' : '. What you typed here is kept: leave this page open meanwhile.'}
      </p>
    );
  if (!isRenewed) return null;
  return (
    <p className={`${layout.notice} ${layout.noprint} ${layout.row}`} role="alert">
      <span>
        <b>The program was renewed.</b> Reload this page; what you typed is kept as a draft.
      </span>
      <ActionButton action={reloadPage} />
    </p>
  );
}
