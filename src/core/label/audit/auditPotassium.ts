import type { AdditiveFinding } from '#core/additive/additive.ts';
import { twoPercentOfDailyValue } from '#core/label/figure/usPrintRule.ts';
import { lineOf } from '#core/label/panel/readPanel.ts';
import { nutrients } from '#core/quantity/nutrients.ts';
import type { Finding } from '../label.ts';
import type { PanelView } from './panelView.ts';

/** Potassium printed as zero, or left to "not a significant source", while the statement names a potassium salt that counts. */
export function auditPotassium(view: PanelView, additives: readonly AdditiveFinding[]): readonly Finding[] {
  const salt = additives.find(({ class: kind, counts, certainty }) => kind === 'potassium' && counts && isSure(certainty));
  if (salt === undefined || view.market !== 'us') return [];
  const figure = lineOf(view.panel, 'potassiumMg')?.figure;
  const printedAsNothing = figure === undefined ? view.notSignificant.includes('potassiumMg') : isNothing(figure.value, figure.percent);
  if (!printedAsNothing && figure?.notSignificant !== true) return [];
  const { unit } = nutrients.potassiumMg;
  return [
    {
      code: 'potassium-zero-beside-potassium-salt',
      about: `${view.prefix}potassiumMg`,
      message: `Potassium is printed as nothing, but the statement names ${salt.found}; the print allows up to ${twoPercentOfDailyValue('potassiumMg')} ${unit} a serving.`,
      source: '21 CFR 101.9(c)(8)(iii): under 2 % of the Daily Value may print as zero',
    },
  ];
}

function isNothing(value: number | undefined, percent: number | undefined): boolean {
  return value === undefined ? percent !== undefined && percent < 2 : value === 0;
}

function isSure(certainty: AdditiveFinding['certainty']): boolean {
  return certainty === 'named' || certainty === 'misspelled';
}
