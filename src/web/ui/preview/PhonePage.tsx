import { useRef, useState } from 'react';
import layout from '../layout.module.css';
import styles from './preview.module.css';

const widths = [390, 320] as const;

/** The page in a frame as wide as a phone. It stays where it was scrolled to when it is built anew. */
export function PhonePage({ src }: { readonly src: string }) {
  const [width, setWidth] = useState<number>(widths[0]);
  const scrolled = useRef(0);
  return (
    <>
      <label className={layout.row}>
        <span>Width</span>
        <select value={width} onChange={event => setWidth(Number(event.target.value))}>
          {widths.map(one => (
            <option key={one} value={one}>
              {one} px
            </option>
          ))}
        </select>
      </label>
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
