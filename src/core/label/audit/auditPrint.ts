import { agreement, dailyValueOf, isPrintablePercent } from '#core/label/figure/dailyValue.ts';
import { type Figure, isNutrientKey, nameOf } from '#core/label/figure/figure.ts';
import { sentenceStart, spanText } from '#core/label/figure/spanText.ts';
import { isVitaminOrMineral, usPrintRule } from '#core/label/figure/usPrintRule.ts';
import { hasBoth } from '#core/label/panel/readPanel.ts';
import { scale } from '#core/quantity/interval.ts';
import { type Nutrient, nutrients } from '#core/quantity/nutrients.ts';
import type { Finding } from '../label.ts';
import type { PanelView } from './panelView.ts';

/** Figures that no US rounding prints, and %DVs that do not go with the amount beside them. */
export function auditPrint(view: PanelView): readonly Finding[] {
  const found: Finding[] = [];
  const onOldValues: Nutrient[] = [];
  for (const { key, figure, words } of view.panel.lines) {
    if (figure === undefined || !isNutrientKey(key)) continue;
    if (view.market === 'us') {
      const why = notAUsPrint(key, figure);
      if (why !== undefined) {
        const message = `${sentenceStart([nameOf(key)])} is printed as "${words.trim()}": ${why}. It may be an old or foreign label, or a misreading.`;
        found.push({ code: 'not-a-us-print', about: view.prefix + key, message, source: usPrintSource(key) });
      }
    }
    if (!hasBoth(figure)) continue;
    const range = view.ranges[key];
    const agrees = range && agreement(key, range, figure.percent, view.market);
    if (agrees === 'agrees-before-2016') onOldValues.push(key);
    else if (range && (agrees === 'one-step-off' || agrees === 'contradicts')) {
      const dailyValue = dailyValueOf(key, view.market, 'current') ?? 0;
      const { unit } = nutrients[key];
      const message = `${sentenceStart([nameOf(key)])} is printed as "${words.trim()}": ${spanText(range, unit)} are ${spanText(scale(range, 100 / dailyValue), '%')} of ${dailyValue} ${unit}, which does not print as ${figure.percent}%.`;
      const source = isVitaminOrMineral(key) ? '21 CFR 101.9(c)(8)(iii)' : '21 CFR 101.9(d)(7)(ii)';
      found.push({ code: 'daily-value-does-not-agree', about: view.prefix + key, message, source });
    }
  }
  if (onOldValues.length > 0) found.push(oldDailyValues(view, onOldValues));
  return found;
}

function oldDailyValues(view: PanelView, keys: readonly Nutrient[]): Finding {
  const names = keys.map(key => `${nameOf(key)} (${dailyValueOf(key, view.market, 'before-2016')} ${nutrients[key].unit})`);
  return {
    code: 'old-daily-values',
    about: view.prefix + keys[0],
    message: `The %DV of ${names.join(', ')} is of an older Daily Value, so the other percents of this panel may be too.`,
    source:
      view.market === 'us'
        ? '9 CFR 317.309 and 381.409 keep the Daily Values from before 2016; 21 CFR 101.9(c)(9) has the present ones'
        : 'Canada, Table of Daily Values, 20 October 2022; the older one could be used until 31 December 2025',
  };
}

/** Why 21 CFR 101.9(c) never prints this figure; undefined when it can. Vitamins and minerals have no legal step. */
function notAUsPrint(key: Nutrient, figure: Figure): string | undefined {
  if (figure.percent !== undefined && !figure.percentLessThan && dailyValueOf(key, 'us', 'current') !== undefined) {
    if (!isPrintablePercent(key, figure.percent))
      return 'a %DV goes by 1, for vitamins and minerals by 2 up to 10, by 5 up to 50, by 10 above';
  }
  const { value } = figure;
  if (value === undefined || figure.converted) return undefined;
  switch (usPrintRule[key]) {
    case 'energy':
      return figure.lessThan || value % (value <= 50 ? 5 : 10) !== 0 ? 'energy goes by 5 kcal up to 50, by 10 above' : undefined;
    case 'fat':
      return figure.lessThan || value % (value < 5 ? 0.5 : 1) !== 0
        ? 'fat goes by 0.5 g under 5, by 1 g above, and under 0.5 g is 0'
        : undefined;
    case 'cholesterol':
      return (figure.lessThan ? value === 5 : value % 5 === 0) ? undefined : 'cholesterol goes by 5 mg, or "less than 5 mg"';
    case 'sodium':
      return figure.lessThan || value % (value <= 140 ? 5 : 10) !== 0 ? 'sodium goes by 5 mg up to 140, by 10 mg above' : undefined;
    case 'gram':
      return (figure.lessThan ? value === 1 : value % 1 === 0) ? undefined : `${nameOf(key)} goes by 1 g, or "less than 1 g"`;
    default:
      return undefined;
  }
}

function usPrintSource(key: Nutrient): string {
  switch (usPrintRule[key]) {
    case 'energy':
      return '21 CFR 101.9(c)(1)';
    case 'fat':
      return '21 CFR 101.9(c)(2)';
    case 'cholesterol':
      return '21 CFR 101.9(c)(3)';
    case 'sodium':
      return '21 CFR 101.9(c)(4)';
    case 'gram':
      return '21 CFR 101.9(c)(6) and (c)(7)';
    default:
      return '21 CFR 101.9(c)(8)(iii)';
  }
}
