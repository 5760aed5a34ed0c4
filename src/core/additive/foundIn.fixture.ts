import { parseStatement } from '#core/statement/parseStatement.ts';
import type { AdditiveClass } from './additive.ts';
import { findAdditives } from './findAdditives.ts';

const letters: Readonly<Record<AdditiveClass, string>> = { phosphate: 'P', potassium: 'K', sodium: 'S' };

/** "P" phosphate, "K" potassium, "S" sodium; "+" counts, "-" reported only; the certainty unless it is "named". */
export function found(text: string, ...classes: AdditiveClass[]): string[] {
  return findAdditives(parseStatement(text).value)
    .filter(finding => classes.length === 0 || classes.includes(finding.class))
    .map(
      ({ class: kind, counts, certainty, id }) =>
        `${letters[kind]}${counts ? '+' : '-'} ${id}${certainty === 'named' ? '' : ` ${certainty}`}`,
    );
}
