import { Fragment, type ReactNode } from 'react';
import layout from '../ui/layout.module.css';
import styles from './ClientDoor.module.css';
import { useLock } from './lockPresence.ts';

/** Around what shows client data: out of sight while the program is not heard, gone when that lasts, made anew after a lock. */
export function ClientDoor({ children }: { readonly children: ReactNode }) {
  const { shown, cleared } = useLock();
  return (
    <>
      {shown !== 'shown' && (
        <p className={layout.notice} role="status">
          {shown === 'hidden'
            ? 'The program does not answer. Client data is hidden; it comes back when the program answers within a few seconds.'
            : 'The program does not answer. Client data was put away. Start the program again and open the address that it prints.'}
        </p>
      )}
      {shown !== 'dropped' && (
        <div className={styles.doorway} hidden={shown === 'hidden'}>
          <Fragment key={cleared}>{children}</Fragment>
        </div>
      )}
    </>
  );
}
