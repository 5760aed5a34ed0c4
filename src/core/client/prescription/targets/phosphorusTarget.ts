import { type ClientFacts, labWords, transplantAge } from '#core/client/assessment/clientFacts.ts';
import { phosphorusMgFromProteinG } from '#core/client/formulas/phosphorus.ts';
import type { Source } from '#core/client/rules/source.ts';
import { asQuoted, ebpg2007, fromMemory, kdigoMbd2017, kdoqi2003, kdoqi2020, ownRule } from '#core/client/rules/sources.ts';
import { phosphateCauses } from '#core/client/states/phosphateCauses.ts';
import { phosphateState } from '#core/client/states/phosphateState.ts';
import { causeWords } from '#core/client/states/potassiumCauses.ts';
import type { WastingState } from '#core/client/states/wastingState.ts';
import { hull, type Interval, interval } from '#core/quantity/interval.ts';
import { noLimit, position, proposed, type Target, withheld } from '../target.ts';

/** A day's phosphorus in mg. Facts section 3.5: by the blood result; KDOQI 2020 gives no mg figure, the older number is shown as such. */
export function phosphorusTarget(facts: ClientFacts, { blocks }: WastingState, protein: Target): Target {
  const older = {
    ...position('Older number: 800-1000 mg when phosphate or PTH is high', [fromMemory(kdoqi2003())], { limit: 'within' }),
    range: interval(800, 1000),
  };
  const noFigure = position('KDOQI 2020: enough change to bring phosphate into the normal range; no mg figure', [kdoqi2020('1B')]);
  const cap = position('European 2007: at most 1000 mg', [asQuoted(ebpg2007())], { range: interval(0, 1000), limit: 'at-most' });
  const state = phosphateState(facts);
  if (state.kind === 'missing') {
    return withheld('phosphorus', 'no result in date', state.why, ['A phosphate result.'], [ownRule], [noFigure]);
  }
  const told = `${labWords(state.lab, facts.today)}.`;
  if (state.kind === 'low') {
    return transplantAge(facts) === undefined || transplantAge(facts) === 'stable'
      ? noLimit(
          'phosphorus',
          'low: nothing is limited',
          [told, 'Low: nothing is limited; look for poor intake and refeeding.'],
          [asQuoted(kdigoMbd2017())],
        )
      : noLimit(
          'phosphorus',
          'low: more phosphorus is eaten',
          [told, 'Early after transplant with low phosphate: high-phosphorus food or a supplement.'],
          [kdoqi2020('OPINION')],
        );
  }
  if (state.kind === 'in-range') {
    return noLimit(
      'phosphorus',
      'in range',
      [told, 'Normal: no limit; it is not treated to prevent.'],
      [asQuoted(kdigoMbd2017())],
      state.pthHigh ? [older] : [],
    );
  }
  if (state.kind === 'above-normal') {
    const differ = 'Over 4.5, within the older dialysis range of 3.5-5.5 mg/dL: KDIGO 2017 aims toward normal, no figure is proposed.';
    return noLimit(
      'phosphorus',
      'above normal, older range holds it',
      [told, differ],
      [asQuoted(kdigoMbd2017()), fromMemory(kdoqi2003())],
      [noFigure, older],
    );
  }
  if (state.kind === 'once-above') {
    return noLimit(
      'phosphorus',
      'above range once: additives first',
      [told, 'Above range once: additives first; a figure takes serial results (KDIGO CKD-MBD 2017, as quoted).'],
      [asQuoted(kdigoMbd2017())],
      [noFigure],
    );
  }
  const serial = `${state.series.map(lab => labWords(lab, facts.today)).join('; ')}: persistently raised.`;
  const causes = phosphateCauses(facts).map(causeWords);
  const hold = (inShort: string, why: string, checks: readonly string[], ...sources: readonly Source[]) =>
    withheld('phosphorus', inShort, `${serial} ${why}`, [...causes, ...checks], [kdoqi2020(), ...sources], [noFigure, older, cap]);
  if (blocks.length > 0) {
    return hold(
      'wasting not ruled out',
      blocks.map(({ why }) => why).join(' '),
      blocks.map(({ whatToCheck }) => whatToCheck),
      ...blocks.map(({ source }) => source),
    );
  }
  if (facts.setting === 'transplant')
    return hold('a figure for the team to set', 'No figure for transplants is on record.', [
      'A figure set by the dietitian with the team.',
    ]);
  const before = 'First no phosphate additives, protein foods with less phosphorus, and a review of binders.';
  if (protein.kind !== 'proposed')
    return hold(
      'the protein target comes first',
      `What the protein brings is not known, so no figure is proposed. ${before}`,
      ['The protein target.'],
      ownRule,
    );
  const brought = phosphorusBrought(protein.range);
  if (older.range.hi < brought.hi) {
    const apart = `Up to ${older.range.hi} mg against about ${Math.round(brought.lo)} to ${Math.round(brought.hi)} mg that the protein target brings: as much as ${Math.round(brought.hi - older.range.hi)} mg apart.`;
    return hold(
      'protein alone brings more',
      `${apart} ${before}`,
      ['A figure set by the dietitian, with protein kept.'],
      kalantarZadeh,
      ownRule,
    );
  }
  return proposed(
    'phosphorus',
    'persistently raised',
    older,
    [serial, 'High: additives first, then animal, then plant sources, by what is absorbed (KDOQI 2020, OPINION).', ...causes],
    [noFigure, cap],
  );
}

const kalantarZadeh: Source = { kind: 'paper', text: 'CJASN 2010;5:519; Boaz and Smetana 1996', toBeConfirmed: true };

/** The phosphorus in mg that a range of protein in g brings: by the two regressions (facts 5, F16) and at 10 to 14 mg/g (6.2). 70 to 84 g: 700 to 1304 mg. */
function phosphorusBrought({ lo, hi }: Interval): Interval {
  const most = Number.isFinite(hi) ? hi : lo;
  const told = [lo, most].flatMap(grams => {
    const byPapers = phosphorusMgFromProteinG(grams);
    const byRatio = interval(10 * grams, 14 * grams);
    return byPapers.kind === 'computed' ? [byPapers.value, byRatio] : [byRatio];
  });
  return told.reduce(hull);
}
