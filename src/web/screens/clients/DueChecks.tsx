import { lineStart } from '#core/client/lineStart.ts';
import type { Client } from '../../api.ts';
import layout from '../../ui/layout.module.css';
import text from '../../ui/text.module.css';
import styles from './Client.module.css';
import { shownDay } from './shownDay.ts';

/** What is due next, the earliest first; how often and by whom opens below. */
export function DueChecks({ checks = [] }: { readonly checks: Client['nextChecks'] }) {
  const byDay = [...checks].sort((a, b) => a.dueBy.localeCompare(b.dueBy, 'en'));
  return (
    <section className={styles.section} aria-labelledby="due-title">
      <h2 id="due-title">What is due</h2>
      <ul className={styles.due}>
        {byDay.map(({ item, dueBy, state }) => (
          <li key={item}>
            <span>{lineStart(item)}</span>
            {state === 'later' ? (
              <span className={text.soft}>by {shownDay(dueBy)}</span>
            ) : (
              <b>{state === 'overdue' ? `overdue since ${shownDay(dueBy)}` : `due, by ${shownDay(dueBy)}`}</b>
            )}
          </li>
        ))}
      </ul>
      <details className={layout.noprint}>
        <summary className={text.small}>How often, and by whom</summary>
        <ul className={text.small}>
          {byDay.map(({ item, every, lastOn, source }) => (
            <li key={item}>
              {item}: {every}; {lastOn === undefined ? 'no earlier one on record' : `last ${shownDay(lastOn)}`} ({source})
            </li>
          ))}
        </ul>
      </details>
    </section>
  );
}
