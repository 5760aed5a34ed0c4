import type { ReactNode } from 'react';
import { createPortal } from 'react-dom';
import styles from './PaperAlone.module.css';
import { useIsPrinting } from './useIsPrinting.ts';

/** While it is shown, printing prints its children and nothing else of the page. On the screen it is not there. */
export function PaperAlone({ children }: { readonly children: ReactNode }) {
  const isPrinting = useIsPrinting();
  return isPrinting ? createPortal(<div className={styles.paper}>{children}</div>, document.body) : null;
}
