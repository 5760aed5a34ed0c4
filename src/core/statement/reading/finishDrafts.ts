import type { Interval } from '#core/quantity/interval.ts';
import type { Ingredient } from '../statement.ts';
import type { Draft } from './draft.ts';
import { type Report, ShareBounds } from './shareBounds.ts';

/** Gives every ingredient the bounds on its share of the whole food and turns offsets into code points. */
export function finishDrafts(drafts: readonly Draft[], position: (offset: number) => number, report: Report): Ingredient[] {
  return finishList(drafts, { lo: 100, hi: 100 }, true, false, position, report);
}

function finishList(
  drafts: readonly Draft[],
  whole: Interval,
  isWholeFood: boolean,
  unordered: boolean,
  position: (offset: number) => number,
  report: Report,
): Ingredient[] {
  const bounds = new ShareBounds(drafts, whole, unordered);
  const finished: Ingredient[] = [];
  for (const draft of drafts) {
    const sharePercent = bounds.next(draft, isWholeFood ? declaredRange(draft) : undefined, report);
    const parts = draft.parts.length === 0 ? noParts : finishList(draft.parts, sharePercent, false, draft.unordered, position, report);
    const start = position(draft.start);
    const end = position(draft.end);
    const ingredient: { -readonly [Key in keyof Ingredient]: Ingredient[Key] } = {
      kind: draft.kind === 'group' && parts.length === 0 ? 'ingredient' : draft.kind,
      name: draft.name,
      start: parts.length === 0 ? start : Math.min(start, parts[0]!.start),
      end: parts.length === 0 ? end : Math.max(end, parts.at(-1)!.end),
      presence: draft.presence,
      organic: draft.organic,
      notes: draft.notes,
      sharePercent,
      parts,
    };
    if (draft.declaredPercent !== undefined) ingredient.declaredPercent = draft.declaredPercent;
    if (draft.atMostPercent !== undefined) ingredient.atMostPercent = draft.atMostPercent;
    finished.push(ingredient);
  }
  return finished;
}
const noParts: readonly Ingredient[] = [];

/** A printed percentage with its rounding: "83%" is 82.5 to 83.5. */
function declaredRange({ declaredPercent, declaredDecimals }: Draft): Interval | undefined {
  if (declaredPercent === undefined) return undefined;
  const half = 0.5 * 10 ** -declaredDecimals;
  return { lo: Math.max(0, declaredPercent - half), hi: Math.min(100, declaredPercent + half) };
}
