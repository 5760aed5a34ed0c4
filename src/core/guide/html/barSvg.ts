import type { MarginBar } from '../guidePage.ts';

/** The bound stands at 140 of 200; what is more than 200 ends in an arrow. */
const boundAt = 140;
const width = 200;

/**
 * Where a food stands against its bound, for the eye: the words beside it say the same, so that a screen reader passes over it. The thick
 * part ends at what is judged, the small upright ends are what rounding allows, the tall upright is the bound; an estimate is dashed.
 */
export function barSvg({ value, lo, hi, estimated }: MarginBar): string {
  const at = (share: number): number => Math.round(Math.min(share * boundAt, width));
  const ends = [lo, hi].filter(end => Number.isFinite(end) && end * boundAt < width).map(end => `M${at(end)} 2v8`);
  const arrow = value * boundAt > width ? `M${width - 7} 1l6 5-6 5` : '';
  return `<svg class="b" viewBox="0 0 ${width} 12" preserveAspectRatio="none" aria-hidden="true"><path class="${estimated ? 'e' : 'p'}" d="M0 6H${at(value)}"/><path d="M0 11.5H${width}M${boundAt} 0v12${ends.join('')}${arrow}"/></svg>`;
}
