import type { ChartNote } from '#core/client/note/noteSection.ts';
import styles from './NotePaper.module.css';

/** A note as a paper of its own. */
export function NotePaper({ title, sections }: ChartNote) {
  return (
    <article className={styles.paper}>
      <h1 dir="auto">{title}</h1>
      {sections.map(({ heading, paragraphs }) => (
        <section key={heading}>
          <h2>{heading}</h2>
          {paragraphs.map((paragraph, at) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: paragraphs have no name, and a paper does not change
            <p key={at} dir="auto">
              {paragraph}
            </p>
          ))}
        </section>
      ))}
    </article>
  );
}
