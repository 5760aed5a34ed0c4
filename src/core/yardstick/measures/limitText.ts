import type { Bound } from '../bound.ts';
import { quantityText } from '../figureText.ts';

const limits = { atMost: 'at most', below: 'under', atLeast: 'at least' } as const;

/** "at most 140 mg", "under 10 mg per g", "at least 20%". */
export function limitText({ kind, figure }: Bound, unit: string): string {
  return `${limits[kind]} ${quantityText(String(figure), unit)}`;
}
