import { useEffect, useState } from 'react';
import { flushSync } from 'react-dom';

/** Whether the page is being printed: what only paper needs is made then, and stands before the browser takes its picture. */
export function useIsPrinting(): boolean {
  const [isPrinting, setIsPrinting] = useState(() => matchMedia('print').matches);
  useEffect(() => {
    const query = matchMedia('print');
    // The browser takes its picture right after this event: the rows must stand by then.
    const begin = (): void => flushSync(() => setIsPrinting(true));
    const end = (): void => setIsPrinting(false);
    const change = (): void => (query.matches ? begin() : end());
    window.addEventListener('beforeprint', begin);
    window.addEventListener('afterprint', end);
    query.addEventListener('change', change);
    return () => {
      window.removeEventListener('beforeprint', begin);
      window.removeEventListener('afterprint', end);
      query.removeEventListener('change', change);
    };
  }, []);
  return isPrinting;
}
