import type { Issue } from '#core/errors.ts';
import { plain } from './layOut.ts';

/** One line for each thing noticed: `row 5, Sodium (mg): found "12O", expected …`. */
export function reportText(issues: readonly Issue[]): string {
  return issues.map(issue => `${placeText(issue)}found ${quoted(issue.found)}, expected ${plain(issue.expected)}\n`).join('');
}

function placeText({ place }: Issue): string {
  const parts = [
    ...(place.file === undefined ? [] : [plain(place.file)]),
    ...(place.line === undefined ? [] : [`line ${place.line}`]),
    ...(place.row === undefined ? [] : [`row ${place.row}`]),
    ...(place.heading === undefined ? [] : [plain(place.heading)]),
  ];
  return parts.length === 0 ? '' : `${parts.join(', ')}: `;
}

function quoted(found: string): string {
  return `"${plain(found)}"`;
}
