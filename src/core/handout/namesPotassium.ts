import type { PlateFood } from '#core/plate/plate.ts';

/**
 * Whether the label names a potassium additive that counts. Foods lower in sodium often hold potassium chloride: such a food may fit, and
 * is never a best pick or a swap.
 */
export function namesPotassium({ label }: PlateFood): boolean {
  return label.additives.some(
    ({ class: kind, counts, certainty }) => kind === 'potassium' && counts && (certainty === 'named' || certainty === 'misspelled'),
  );
}
