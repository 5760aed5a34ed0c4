import { useState } from 'react';
import type { GuidePreview } from '../../api.ts';
import { PaperPages } from './PaperPages.tsx';
import { PhonePage } from './PhonePage.tsx';
import { ReadAloud } from './ReadAloud.tsx';
import type { Json } from './typedGuide.ts';

const views = { phone: 'On a phone', paper: 'On paper', aloud: 'For a screen reader' } as const;
type View = keyof typeof views;

/** The page as readers will have it: narrow, on paper, or in the order in which a screen reader reads it. */
export function Preview({
  guideId,
  guide,
  preview,
}: {
  readonly guideId: string;
  readonly guide: Json;
  readonly preview: GuidePreview | undefined;
}) {
  const [view, setView] = useState<View>('phone');
  const previewId = preview?.previewId;
  return (
    <section className="sheet stack" aria-labelledby="preview-title">
      <h2 id="preview-title">As readers will have it</h2>
      <fieldset className="row choice">
        <legend className="unseen">Look at it</legend>
        {(Object.keys(views) as View[]).map(key => (
          <label key={key}>
            <input type="radio" name="view" checked={view === key} onChange={() => setView(key)} />
            <span>{views[key]}</span>
          </label>
        ))}
      </fieldset>
      {preview === undefined ? (
        <p role="status">Building the page …</p>
      ) : previewId === undefined ? (
        <StillToWrite issues={preview.issues} />
      ) : (
        <>
          {preview.issues.length > 0 && <StillToWrite issues={preview.issues} />}
          {view === 'phone' && <PhonePage previewId={previewId} />}
          {view === 'paper' && <PaperPages guideId={guideId} guide={guide} />}
          {view === 'aloud' && <ReadAloud previewId={previewId} />}
        </>
      )}
    </section>
  );
}

function StillToWrite({ issues }: Pick<GuidePreview, 'issues'>) {
  return (
    <div className="notice">
      <p>
        <b>To mend:</b>
      </p>
      <ul>
        {issues.map(({ place, found, expected }) => (
          <li key={`${place.heading} ${found}`}>
            {place.heading ?? 'the guide'}: expected {expected}; found {found}.
          </li>
        ))}
      </ul>
    </div>
  );
}
