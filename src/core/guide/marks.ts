import { compareLabels } from '#core/label/compareLabels.ts';
import type { ReadLabel } from '#core/label/label.ts';
import type { Day } from '#core/quantity/calendarDay.ts';
import { dayAfter, dayText } from './day.ts';
import type { GuideDraft } from './guide.ts';

export interface MarkInput {
  readonly label: ReadLabel;
  readonly draft: Pick<GuideDraft, 'publishedOn' | 'recheckAfterDays'>;
  readonly today: Day;
  readonly asPublished?: ReadLabel;
  readonly recheckOn?: Day;
}

/**
 * What makes a computed line of a guide doubtful: the label changed since the guide was published, or the day to read it again has
 * passed (the day set for this food, else so many days after it was read). On that day itself it is not yet overdue.
 */
export function staleMarks({ label, draft, today, asPublished, recheckOn }: MarkInput): readonly string[] {
  const { readOn } = label.printed;
  const marks: string[] = [];
  if (asPublished !== undefined && compareLabels(asPublished, label).outcome === 'changed')
    marks.push(
      `The label has changed since this guide was published on ${dayText(draft.publishedOn)}; the figures are those of the new label.`,
    );
  const due = recheckOn ?? (readOn === undefined ? undefined : dayAfter(readOn, draft.recheckAfterDays));
  if (due === undefined) marks.push('The day this label was read is not known: compare it with the package.');
  else if (due < today) marks.push(`This label was to be read again by ${dayText(due)}: compare it with the package.`);
  return marks;
}
