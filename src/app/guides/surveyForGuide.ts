import { Fault } from '#core/errors.ts';
import type { GuideDraft, GuideInput } from '#core/guide/guide.ts';
import type { ReadLabel } from '#core/label/label.ts';
import type { Plate } from '#core/plate/plate.ts';
import type { Day } from '#core/quantity/calendarDay.ts';
import type { Yardstick } from '#core/yardstick/yardstick.ts';
import type { ImportedLabel } from '../importLabels.ts';
import { judgeShelf, tellable } from '../judgeShelf.ts';
import { foodOf, labelHistories } from '../labelHistories.ts';

export interface GuideMaterial {
  readonly draft: GuideDraft;
  readonly labels: readonly ImportedLabel[];
  readonly plate: Plate;
  readonly yardstick: Yardstick;
  readonly today: Day;
}

/**
 * The survey that a guide is made from, out of a table of labels: labels of one food are put together, the newest that was read by
 * `today` is judged, and the newest that was read by the day of publication is what readers of the guide have seen.
 *
 * @throws Fault guide-not-valid when no label is in the guide's category.
 */
export function surveyForGuide({ draft, labels, plate, yardstick, today }: GuideMaterial): GuideInput {
  const { category, setting, switchedOn, servings } = draft.survey;
  const wanted = category.trim().toLowerCase();
  const inCategory = labels.filter(({ label }) => label.printed.category?.trim().toLowerCase() === wanted);
  const histories = labelHistories(inCategory.filter(({ label }) => (label.printed.readOn ?? '') <= today));
  if (histories.length === 0) throw new Fault('guide-not-valid', `No label that was read by ${today} is in the category "${category}".`);
  const foods = histories.map(({ id, history }) => foodOf(id, history.at(-1)!));
  const asPublished = new Map<string, ReadLabel>();
  for (const { id, history } of histories) {
    const published = history.findLast(label => (label.printed.readOn ?? '') <= draft.publishedOn);
    if (published !== undefined && published !== history.at(-1)) asPublished.set(id, published);
  }
  const onPlate = servings === undefined ? plate : { ...plate, portion: { servings } };
  const survey = judgeShelf({
    foods,
    plate: onPlate,
    yardstick,
    switchedOn,
    ...(setting === undefined ? {} : { setting }),
    ways: { shelf: { foods, plates: [onPlate] }, keep: tellable },
  });
  return { draft, survey, today, asPublished };
}
