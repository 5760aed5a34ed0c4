import { type ReactNode, useEffect } from 'react';
import layout from '../layout.module.css';
import { Told } from '../Told.tsx';
import text from '../text.module.css';
import { Reading } from './Reading.tsx';

/**
 * A screen: its title on the page and on the window, what can be done with all of it at the right, then what went wrong, what is still being
 * read, or the screen itself.
 */
export function Page(given: {
  readonly title: string;
  /** On the window and in the browser's history, where the title on the page is nobody else's business. */
  readonly windowTitle?: string;
  readonly isTitleUnseen?: boolean;
  /** Where the screen belongs: stands above the title. */
  readonly above?: ReactNode;
  /** Stands below the title. */
  readonly about?: ReactNode;
  /** Buttons, at the right of the title. */
  readonly actions?: ReactNode;
  readonly isReading?: boolean;
  readonly fault?: unknown;
  readonly children?: ReactNode;
}) {
  const { title, windowTitle = title, isTitleUnseen = false, above, about, actions, isReading = false, fault, children } = given;
  useEffect(() => {
    document.title = `${windowTitle} · Platewright`;
  }, [windowTitle]);
  return (
    <>
      <div className={`${layout.spread} ${isTitleUnseen ? text.unseen : ''}`}>
        <div className={layout.grow}>
          {above !== undefined && <span className={text.soft}>{above}</span>}
          <h1>{title}</h1>
          {about !== undefined && <p className={text.soft}>{about}</p>}
        </div>
        {actions !== undefined && <div className={`${layout.row} ${layout.noprint}`}>{actions}</div>}
      </div>
      <Told error={fault} />
      {isReading && (fault === null || fault === undefined) ? <Reading /> : children}
    </>
  );
}
