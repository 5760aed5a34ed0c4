import { notSignificantRange } from '#core/label/figure/notSignificant.ts';
import { sentenceStart, spanText } from '#core/label/figure/spanText.ts';
import { lineOf } from '#core/label/panel/readPanel.ts';
import { sodiumMgFromSaltG } from '#core/quantity/convert.ts';
import { divide, interval, overlaps } from '#core/quantity/interval.ts';
import { nutrients } from '#core/quantity/nutrients.ts';
import type { Finding } from '../label.ts';
import type { PanelView } from './panelView.ts';

/**
 * EU panels compute kJ and kcal apart. By the factors of Regulation (EU) 1169/2011, Annex XIV, one kcal is from 4 kJ (fiber,
 * 8 to 2) over 4.25 (carbohydrate and protein, 17 to 4) up to 4.33 (organic acids, 13 to 3).
 */
const kjPerKcal = interval(4, 13 / 3);

/** One amount told in two ways that have nothing in common. */
export function auditDisagreements(view: PanelView): readonly Finding[] {
  const found: Finding[] = [];
  const kj = view.ranges.energyKj;
  const kcal = view.ranges.energyKcal;
  if (kj && kcal && kcal.lo > 0 && !overlaps(divide(kj, kcal), kjPerKcal)) {
    found.push({
      code: 'figures-disagree',
      about: `${view.prefix}energyKj`,
      message: `Energy is printed as ${spanText(kj, 'kJ')} and as ${spanText(kcal, 'kcal')} with its rounding; 1 kcal is 4 to 4.33 kJ by every factor.`,
      source: 'Regulation (EU) 1169/2011, Annex XIV',
    });
  }
  const salt = view.ranges.saltG;
  const sodium = view.ranges.sodiumMg;
  if (salt && sodium) {
    const fromSalt = interval(sodiumMgFromSaltG(salt.lo), sodiumMgFromSaltG(salt.hi));
    if (!overlaps(sodium, fromSalt)) {
      found.push({
        code: 'figures-disagree',
        about: `${view.prefix}saltG`,
        message: `The printed salt stands for ${spanText(fromSalt, 'mg')} of sodium, but sodium is printed as ${spanText(sodium, 'mg')}.`,
        source: 'Regulation (EU) 1169/2011, Annex I: salt is sodium times 2.5',
      });
    }
  }
  for (const nutrient of view.notSignificant) {
    const printed = lineOf(view.panel, nutrient) && view.ranges[nutrient];
    const bound = notSignificantRange(nutrient);
    if (printed === undefined || overlaps(printed, bound)) continue;
    const { name, unit } = nutrients[nutrient];
    found.push({
      code: 'figures-disagree',
      about: `${view.prefix}${nutrient}`,
      message: `${sentenceStart([name])} is printed as ${spanText(printed, unit)} with its rounding, but "not a significant source of ${name}" means at most ${spanText({ lo: bound.hi, hi: bound.hi }, unit)}.`,
      source: '21 CFR 101.9(c) and (f)(1)',
    });
  }
  return found;
}
