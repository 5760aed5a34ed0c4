import { type RefObject, useLayoutEffect, useState } from 'react';

/** Whether an element has less room than so many pixels; known before the browser paints. */
export function useIsNarrow(element: RefObject<HTMLElement | null>, pixels: number): boolean {
  const [isNarrow, setNarrow] = useState(false);
  useLayoutEffect(() => {
    const node = element.current;
    if (node === null) return;
    setNarrow(node.clientWidth < pixels);
    const watch = new ResizeObserver(() => setNarrow(node.clientWidth < pixels));
    watch.observe(node);
    return () => watch.disconnect();
  }, [element, pixels]);
  return isNarrow;
}
