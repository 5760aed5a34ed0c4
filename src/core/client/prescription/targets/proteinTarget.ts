import { ageWords, type ClientFacts, has, isConservative, isG3To5, takes, transplantAge } from '#core/client/assessment/clientFacts.ts';
import { latest } from '#core/client/assessment/factAges.ts';
import type { Source } from '#core/client/rules/source.ts';
import {
  asQuoted,
  commonPractice,
  ebpg2007,
  fromMemory,
  isrnm2013,
  kdigoCkd2024,
  kdigoDiabetes2022,
  kdoqi2020,
  molina2021,
  nice,
} from '#core/client/rules/sources.ts';
import { stageOf } from '#core/client/states/stage.ts';
import type { WastingState } from '#core/client/states/wastingState.ts';
import { otherBases, type WeightBasis } from '#core/client/states/weightBasis.ts';
import { type Interval, interval } from '#core/quantity/interval.ts';
import { cleanFloat } from '#core/quantity/rounding.ts';
import { noLimit, type Position, position, proposed, type Target, withheld } from '../target.ts';

type Figure = Position & { readonly range: Interval };

/** A day's protein in g. Facts section 3.2. On dialysis it is a need and no restriction; elsewhere nothing is restricted while wasting. */
export function proteinTarget(facts: ClientFacts, weight: WeightBasis, wasting: WastingState): Target {
  if (weight.kind === 'none')
    return withheld('protein', 'no weight in date', 'There is no weight to set it on.', [weight.whatToCheck], [kdoqi2020()]);
  const { kg, id, why, on } = weight.chosen;
  const per = (says: string, lo: number, hi: number, sources: readonly Source[]): Figure => {
    const perKg = interval(lo, hi);
    const limit = hi === Number.POSITIVE_INFINITY ? 'at-least' : 'within';
    return { ...position(says, sources, { perKg, limit }), range: interval(cleanFloat(lo * kg), cleanFloat(hi * kg)) };
  };
  const open = Number.POSITIVE_INFINITY;
  const end = (inShort: string, main: Figure, others: readonly Position[], ...reasons: string[]) =>
    proposed(
      'protein',
      inShort,
      main,
      [`${why} ${kg.toFixed(1)} kg (${ageWords(on, facts.today)}).`, ...otherBases(weight), ...reasons],
      others,
      id,
    );
  const isNoCeiling = wasting.blocks.length > 0 || has(facts, 'acute-illness', 'critically-ill', 'metabolically-unstable');
  /** On dialysis while wasting or ill: the usual figure is the least, not the most. */
  const need = (sources: readonly Source[]): Figure =>
    isNoCeiling ? per('KDOQI 2020: 1.0-1.2 g/kg, here the least', 1, open, sources) : per('KDOQI 2020: 1.0-1.2 g/kg', 1, 1.2, sources);
  switch (facts.setting) {
    case 'ckd-not-on-dialysis':
      return notOnDialysis(facts, wasting, per, end);
    case 'hemodialysis':
      if (has(facts, 'critically-ill'))
        return end(
          'illness breaks protein down',
          per('ESPEN 2021, critically ill on intermittent dialysis: 1.3-1.5 g/kg', 1.3, 1.5, [asQuoted(espen2021)]),
          [per('KDIGO AKI 2012: 1.0-1.5 g/kg', 1, 1.5, [asQuoted(kdigoAki2012)])],
          'Illness breaks protein down: this is a need, not a ceiling.',
        );
      return end(
        'dialysis takes protein away',
        need([fromMemory(kdoqi2020('1C'))]),
        [
          per('KDIGO Diabetes 2022: 1.0-1.2 g/kg', 1, 1.2, [asQuoted(kdigoDiabetes2022('practice point'))]),
          per('European 2007: at least 1.1 g/kg', 1.1, open, [asQuoted(ebpg2007())]),
          per('ISRNM: over 1.2 g/kg', 1.2, open, [isrnm2013]),
        ],
        'Dialysis takes amino acids away: this is a need, not a ceiling.',
      );
    case 'peritoneal-dialysis': {
      const others = [
        per('KDIGO Diabetes 2022: 1.0-1.2 g/kg', 1, 1.2, [asQuoted(kdigoDiabetes2022('practice point'))]),
        per('Others: at least 1.2 g/kg', 1.2, open, [fromMemory(commonPractice)]),
      ];
      if (has(facts, 'peritonitis')) others.push(per('Peritonitis: up to 1.5 g/kg', 1, 1.5, [fromMemory(commonPractice)]));
      return end(
        'dialysate takes protein away',
        need([fromMemory(kdoqi2020('OPINION'))]),
        others,
        'Protein is lost into the dialysate: this is a need, not a ceiling.',
      );
    }
    case 'transplant': {
      const age = transplantAge(facts);
      const early = per('At least 1.4 g/kg in the first 4 weeks or with high-dose steroid', 1.4, open, [molina2021]);
      const common = per('Common: 1.3-1.5 g/kg', 1.3, 1.5, [commonPractice]);
      if (age === 'first-4-weeks' || takes(facts, 'high-dose-steroid'))
        return end('surgery and steroids take protein', early, [common], 'After surgery and on steroids more protein is broken down.');
      const stable = per('Stable: 0.8 g/kg', 0.8, 0.8, [molina2021]);
      if (age === 'to-8-weeks') return end('still healing from surgery', common, [stable]);
      const block = blocked(facts, wasting);
      if (block) return block;
      return end(
        'steady after transplant',
        stable,
        isG3To5(stageOf(facts)) ? [per('CKD 3-5 of the graft: 0.6-0.8 g/kg', 0.6, 0.8, [molina2021])] : [],
      );
    }
  }
}

function notOnDialysis(
  facts: ClientFacts,
  wasting: WastingState,
  per: (says: string, lo: number, hi: number, sources: readonly Source[]) => Figure,
  end: (inShort: string, main: Figure, others: readonly Position[], ...reasons: string[]) => Target,
): Target {
  if (isConservative(facts))
    return noLimit(
      'protein',
      'comfort first',
      ['Conservative care puts comfort first: no restriction without a symptom or a laboratory reason.'],
      [commonPractice],
    );
  if (wasting.blocks.length === 0 && has(facts, 'acute-illness', 'critically-ill'))
    return end(
      'illness breaks protein down',
      per('ESPEN 2021, acutely ill without dialysis: begin at 1.0 g/kg, rise to 1.3', 1, Number.POSITIVE_INFINITY, [asQuoted(espen2021)]),
      [],
      'Illness breaks protein down: this is a need, not a ceiling.',
    );
  const block = blocked(facts, wasting);
  if (block) return block;
  const stage = stageOf(facts);
  if (!isG3To5(stage)) {
    const why =
      stage === undefined
        ? 'The stage is not known: one result never makes a stage.'
        : `The statements on low protein are for G3 to G5; this is ${stage}.`;
    const ceiling = position('KDIGO 2024: avoid over 1.3 g/kg when at risk of progression', [asQuoted(kdigoCkd2024('practice point'))]);
    return withheld(
      'protein',
      stage === undefined ? 'stage not known' : 'figures are for G3 to G5',
      why,
      stage === undefined ? ['The stage set by the kidney team, or two eGFRs at least 90 days apart.'] : [],
      [kdigoCkd2024()],
      [ceiling],
    );
  }
  const niceFloor = position('NICE NG203: do not offer under 0.6-0.8 g/kg', [fromMemory(nice())]);
  const ceiling = 'Avoid over 1.3 g/kg when at risk of progression (KDIGO 2024, as quoted).';
  if (facts.assessment.diabetes) {
    return end(
      `${stage}, diabetes`,
      per('KDIGO Diabetes 2022: 0.8 g/kg', 0.8, 0.8, [asQuoted(kdigoDiabetes2022('2C'))]),
      [
        per('KDOQI 2020: 0.6-0.8 g/kg', 0.6, 0.8, [fromMemory(kdoqi2020('OPINION'))]),
        per('A review prints KDOQI as 0.8-0.9 g/kg', 0.8, 0.9, [molina2021]),
        niceFloor,
      ],
      `${stage}, diabetes, not on dialysis.`,
      ceiling,
    );
  }
  const isNephrotic = has(facts, 'nephrotic-syndrome') || (latest(facts, 'urineAcr')?.value ?? 0) > nephroticMgPerG;
  const veryLow = [
    per('KDOQI 2020: 0.28-0.43 g/kg with keto or amino acid analogs', 0.28, 0.43, [kdoqi2020('1A')]),
    per('KDIGO 2024: 0.3-0.4 g/kg with analogs, only if willing, at high risk and supervised', 0.3, 0.4, [kdigoCkd2024('practice point')]),
  ];
  return end(
    `${stage}, stable`,
    per('KDIGO 2024: 0.8 g/kg', 0.8, 0.8, [kdigoCkd2024('2C')]),
    [per('KDOQI 2020: 0.55-0.60 g/kg', 0.55, 0.6, [kdoqi2020('1A')]), ...(isNephrotic ? [] : veryLow), niceFloor],
    `${stage}, no diabetes, stable, not on dialysis.`,
    ceiling,
    ...(isNephrotic ? ['Nephrotic-range loss of protein: no very-low-protein diet.'] : []),
  );
}

/** Nephrotic range, urine albumin to creatinine in mg/g (KDIGO, from memory). */
const nephroticMgPerG = 2220;
const espen2021: Source = { kind: 'guideline', text: 'ESPEN 2021' };
const kdigoAki2012: Source = { kind: 'guideline', text: 'KDIGO AKI 2012' };

function blocked(facts: ClientFacts, { blocks }: WastingState): Target | undefined {
  const higher = position('KDIGO 2024: higher targets for frail older adults; 1.0 g/kg in illness by others', [
    kdigoCkd2024('practice point'),
    molina2021,
  ]);
  const ill = position('ESPEN 2021, acutely ill without dialysis: begin at 1.0 g/kg, rise to 1.3', [asQuoted(espen2021)]);
  const isIll = has(facts, 'acute-illness', 'critically-ill', 'metabolically-unstable');
  const whys = blocks.map(({ why }) => why);
  const checks = blocks.map(({ whatToCheck }) => whatToCheck);
  if (isIll || has(facts, 'frail', 'sarcopenia')) {
    whys.push('Frail, sarcopenia, acute illness or metabolically unstable: no restriction until corrected.');
    checks.push('Correct that first; review then.');
  }
  if (whys.length === 0) return undefined;
  return withheld(
    'protein',
    blocks.length > 0 ? 'wasting not ruled out' : 'no restriction while ill or frail',
    whys.join(' '),
    checks,
    [kdoqi2020(), kdigoCkd2024('practice point'), ...blocks.map(({ source }) => source)],
    isIll ? [higher, ill] : [higher],
  );
}
