import { useVirtualizer } from '@tanstack/react-virtual';
import { type RefObject, useCallback, useEffect, useEffectEvent } from 'react';
import { blocksOf } from './blocks.ts';

/** Of many rows those in view, with the room that the others would take; of few rows, all of them. */
export function useRowsInView<Row>(given: {
  readonly rows: readonly Row[];
  readonly keyOf: (row: Row) => string;
  readonly isVirtual: boolean;
  readonly scroller: RefObject<HTMLElement | null>;
  /** The place of the picked row, -1 where none is. */
  readonly pickedAt: number;
  readonly onView: ((blocks: readonly (readonly Row[])[]) => void) | undefined;
}) {
  const { rows, keyOf, isVirtual, scroller, pickedAt, onView } = given;
  // One function while the rows stay: with another one the list measures all of its rows anew.
  const keyAt = useCallback((index: number) => keyOf(rows[index]!), [rows, keyOf]);
  const list = useVirtualizer({
    count: rows.length,
    getScrollElement: () => scroller.current,
    estimateSize: () => 64,
    overscan: 4,
    getItemKey: keyAt,
    enabled: isVirtual,
  });
  const items = list.getVirtualItems();
  const first = isVirtual ? (items[0]?.index ?? 0) : 0;
  const last = isVirtual ? (items.at(-1)?.index ?? -1) : rows.length - 1;

  const tell = useEffectEvent(() => onView?.(blocksOf(rows, first, last)));
  const isStill = !list.isScrolling;
  // biome-ignore lint/correctness/useExhaustiveDependencies: told anew when other rows are in view
  useEffect(() => {
    if (isStill) tell();
  }, [isStill, first, last, rows]);

  const goTo = useEffectEvent((index: number) => list.scrollToIndex(index, { align: 'center' }));
  const pickedKey = pickedAt < 0 ? undefined : keyAt(pickedAt);
  // Only when another row is picked: scrolling must not be pulled back.
  // biome-ignore lint/correctness/useExhaustiveDependencies: where the row stands is not what it is about
  useEffect(() => {
    if (pickedKey !== undefined && isVirtual) goTo(pickedAt);
  }, [pickedKey]);

  return {
    first,
    shown: rows.slice(first, last + 1),
    above: isVirtual ? (items[0]?.start ?? 0) : 0,
    below: isVirtual ? list.getTotalSize() - (items.at(-1)?.end ?? 0) : 0,
    measure: isVirtual ? list.measureElement : undefined,
  };
}
