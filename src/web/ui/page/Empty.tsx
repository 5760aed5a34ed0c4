import type { ReactNode } from 'react';
import layout from '../layout.module.css';

/** Nothing is here yet: why, and what to do about it. */
export function Empty({ children }: { readonly children: ReactNode }) {
  return <div className={layout.notice}>{children}</div>;
}
