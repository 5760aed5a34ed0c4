import { useState } from 'react';
import layout from '../layout.module.css';
import text from '../text.module.css';
import { PaperPages, type Print } from './PaperPages.tsx';
import { PhonePage } from './PhonePage.tsx';
import { ReadAloud } from './ReadAloud.tsx';

const views = { phone: 'On a phone', paper: 'On paper', aloud: 'For a screen reader' } as const;
type View = keyof typeof views;

export interface Issue {
  readonly place: { readonly heading?: string | undefined };
  readonly found: string;
  readonly expected: string;
}

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
  const [view, setView] = useState<View>('phone');
  return (
    <section className={`${layout.sheet} ${layout.stack}`} aria-labelledby="preview-title">
      <h2 id="preview-title">As readers will have it</h2>
      <fieldset className={`${layout.row} ${layout.choice}`}>
        <legend className={text.unseen}>Look at it</legend>
        {(Object.keys(views) as View[]).map(key => (
          <label key={key}>
            <input type="radio" name="view" checked={view === key} onChange={() => setView(key)} />
            <span>{views[key]}</span>
          </label>
        ))}
      </fieldset>
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
