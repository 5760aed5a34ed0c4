import { useRef, useState } from 'react';
import { Choice } from '../form/Choice.tsx';
import layout from '../layout.module.css';
import styles from './preview.module.css';

const widths = [
  ['390', '390 px'],
  ['320', '320 px'],
] as const;

/** The page in a frame as wide as a phone. It stays where it was scrolled to when it is built anew. */
export function PhonePage({ src }: { readonly src: string }) {
  const [width, setWidth] = useState<(typeof widths)[number][0]>('390');
  const scrolled = useRef(0);
  return (
    <>
      <div className={layout.row}>
        <Choice label="Width" choices={widths} value={width} onChange={setWidth} />
      </div>
      <iframe
        className={styles.phone}
        title="The page at phone width"
        src={src}
        // Scripts stay forbidden; the same origin lets the workbench keep the place that was scrolled to.
        sandbox="allow-same-origin"
        width={width}
        height={680}
        onLoad={({ currentTarget: { contentWindow } }) => {
          if (contentWindow === null) return;
          contentWindow.scrollTo(0, scrolled.current);
          contentWindow.addEventListener('scroll', () => {
            scrolled.current = contentWindow.scrollY;
          });
        }}
      />
    </>
  );
}
