import { useState } from 'react';
import { OneOf } from '../form/OneOf.tsx';
import layout from '../layout.module.css';
import type { Issue } from './neededAt.ts';
import { PaperPages, type Print } from './PaperPages.tsx';
import { PhonePage } from './PhonePage.tsx';
import { ReadAloud } from './ReadAloud.tsx';

const views = [
  ['phone', 'On a phone'],
  ['paper', 'On paper'],
  ['aloud', 'For a screen reader'],
] as const;

/** The page as readers will have it: narrow, on paper, or in the order in which a screen reader reads it. */
export function PagePreview(given: {
  /** Where the page can be looked at; undefined while it cannot be made. */
  readonly src: string | undefined;
  readonly isBuilding: boolean;
  readonly issues: readonly Issue[];
  readonly content: unknown;
  readonly print: Print;
}) {
  const { src, isBuilding, issues, content, print } = given;
  const [view, setView] = useState<(typeof views)[number][0]>('phone');
  return (
    <section className={`${layout.sheet} ${layout.stack}`} aria-labelledby="preview-title">
      <h2 id="preview-title">As readers will have it</h2>
      <OneOf label="Look at it" isLabelUnseen choices={views} value={view} onChange={setView} />
      {isBuilding && <p role="status">Building the page …</p>}
      {issues.length > 0 && <ToMend issues={issues} />}
      {src !== undefined && (
        <>
          {view === 'phone' && <PhonePage src={src} />}
          {view === 'paper' && <PaperPages content={content} print={print} />}
          {view === 'aloud' && <ReadAloud src={src} />}
        </>
      )}
    </section>
  );
}

function ToMend({ issues }: { readonly issues: readonly Issue[] }) {
  return (
    <div className={layout.notice}>
      <p>
        <b>To mend:</b>
      </p>
      <ul>
        {issues.map(({ place, found, expected }) => (
          <li key={`${place.heading} ${found}`}>
            {place.heading === undefined ? '' : `${place.heading}: `}expected {expected}; found {found}.
          </li>
        ))}
      </ul>
    </div>
  );
}
