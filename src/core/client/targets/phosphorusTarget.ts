import { type ClientFacts, labWords, transplantAge } from '#core/client/clientFacts.ts';
import { phosphateState } from '#core/client/phosphateState.ts';
import { asQuoted, ebpg2007, fromMemory, kdigoMbd2017, kdoqi2003, kdoqi2020, ownRule } from '#core/client/sources.ts';
import { noLimit, position, proposed, type Target, withheld } from '#core/client/target.ts';
import type { WastingState } from '#core/client/wastingState.ts';
import { interval } from '#core/quantity/interval.ts';

/** A day's phosphorus in mg. Facts section 3.5: by the blood result; KDOQI 2020 gives no mg figure, the older number is shown as such. */
export function phosphorusTarget(facts: ClientFacts, { blocks }: WastingState): Target {
  const older = {
    ...position('Older number: 800-1000 mg when phosphate or PTH is high', [fromMemory(kdoqi2003())], { limit: 'within' }),
    range: interval(800, 1000),
  };
  const noFigure = position('KDOQI 2020: enough change to bring phosphate into the normal range; no mg figure', [kdoqi2020('1B')]);
  const cap = position('European 2007: at most 1000 mg', [asQuoted(ebpg2007())], { range: interval(0, 1000), limit: 'at-most' });
  const state = phosphateState(facts);
  if (state.kind === 'missing') {
    return withheld(
      'phosphorus',
      `There is no phosphate result of the last ${state.atMostDays} days.`,
      ['A phosphate result.'],
      [ownRule],
      [noFigure],
    );
  }
  const told = `${labWords(state.lab, facts.today)}.`;
  if (state.kind === 'low') {
    return transplantAge(facts) === undefined || transplantAge(facts) === 'stable'
      ? noLimit('phosphorus', [told, 'Low: nothing is limited; look for poor intake and refeeding.'], [asQuoted(kdigoMbd2017())])
      : noLimit(
          'phosphorus',
          [told, 'Early after transplant with low phosphate: high-phosphorus food or a supplement.'],
          [kdoqi2020('OPINION')],
        );
  }
  if (state.kind === 'in-range') {
    return noLimit(
      'phosphorus',
      [told, 'Normal: no limit; it is not treated to prevent.'],
      [asQuoted(kdigoMbd2017())],
      state.pthHigh ? [older] : [],
    );
  }
  if (state.kind === 'above-normal') {
    const differ = 'Over 4.5, within the older dialysis range of 3.5-5.5 mg/dL: KDIGO 2017 aims toward normal, no figure is proposed.';
    return noLimit('phosphorus', [told, differ], [asQuoted(kdigoMbd2017()), fromMemory(kdoqi2003())], [noFigure, older]);
  }
  if (blocks.length > 0) {
    return withheld(
      'phosphorus',
      `${told} ${blocks.map(({ why }) => why).join(' ')}`,
      blocks.map(({ whatToCheck }) => whatToCheck),
      [kdoqi2020(), ...blocks.map(({ source }) => source)],
      [noFigure, older],
    );
  }
  if (facts.setting === 'transplant') {
    return withheld(
      'phosphorus',
      `${told} No figure for transplants is on record.`,
      ['A figure set by the dietitian with the team.'],
      [kdoqi2020()],
    );
  }
  return proposed(
    'phosphorus',
    older,
    [told, 'High: additives first, then animal, then plant sources, by what is absorbed (KDOQI 2020, OPINION).'],
    [noFigure, cap],
  );
}
