import type { PageDress } from '#core/guide/html/guideCss.ts';
import { guideHtml } from '#core/guide/html/guideHtml.ts';
import type { JsonObject } from '#core/json/presentForm.ts';
import { testText } from '#core/yardstick/testText.ts';
import type { Previews } from '../previews.ts';
import type { Workbench } from '../workbench.ts';
import { builtGuide } from './builtGuide.ts';

/** A guide as it is being written: what it comes to, its foods beside the form, and its page kept to be looked at. */
export async function previewGuide(guide: JsonObject, id: string, dress: PageDress, previews: Previews, workbench: Workbench) {
  const { issues, input, page } = await guideInHand(guide, id, workbench);
  const varieties = page === undefined ? [] : [...page.sections.flatMap(({ entries }) => entries), ...page.nearly];
  const marks = new Map(varieties.flatMap(entry => entry.varieties.map(one => [one.foodId, one.marks] as const)));
  return {
    ...(page === undefined ? {} : { previewId: previews.keep(guideHtml(page, dress)), counts: page.counts }),
    issues,
    takenOff: page?.takenOff ?? [],
    foods: (input?.survey.foods ?? []).map(({ food, verdict }) => ({
      foodId: food.id,
      name: food.name,
      ...(food.label.printed.maker === undefined ? {} : { maker: food.label.printed.maker }),
      verdict: verdict.verdict,
      marks: marks.get(food.id) ?? [],
    })),
    tests: (input?.survey.yardstick.tests ?? []).map(test => ({ id: test.id, text: testText(test), isOff: test.off === true })),
  };
}

/** A guide as its form has it, against what was published under its id. */
export async function guideInHand(guide: JsonObject, id: string, workbench: Workbench) {
  return builtGuide({ ...guide, id }, (await workbench.store.guides.get(id))?.published, workbench);
}
