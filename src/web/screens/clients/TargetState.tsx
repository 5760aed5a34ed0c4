import styles from './Client.module.css';
import type { Decision } from './typedDecision.ts';

/** Whether a line is signed, proposed or decided anew; withheld is told by its frame. */
export function TargetState({ decision, isSigned }: { readonly decision: Decision; readonly isSigned: boolean }) {
  const { kind, from, isAsSigned } = decision;
  const state = isAsSigned ? 'signed' : from === 'proposal' ? (isSigned ? 'taken, to sign' : 'proposed') : 'own, to sign';
  if (kind === 'withheld') return <span className={isAsSigned ? styles.withheld : styles.toSign}>{isAsSigned ? 'withheld' : state}</span>;
  return <span className={isAsSigned ? undefined : styles.toSign}>{state}</span>;
}
