import { type ClientFacts, type Lab, labWords } from '#core/client/assessment/clientFacts.ts';
import { isInDate, latest, weightInDate } from '#core/client/assessment/factAges.ts';
import { interdialyticGain } from '#core/client/formulas/interdialyticGain.ts';
import { type Analyte, analyteFacts } from '#core/client/labs/analytes.ts';
import { type TargetBand, targetBands } from '#core/client/labs/targetBands.ts';
import { rangeWords } from '#core/client/prescription/targetWords.ts';
import type { DecidedTarget } from '#core/client/record/record.ts';
import { careFigure } from '#core/client/rules/careRules.ts';
import { chartSources } from '#core/client/rules/source.ts';
import { amountWords, eatenADay } from '#core/client/states/eaten.ts';
import { potassiumState } from '#core/client/states/potassiumState.ts';
import { sessionsInDate } from '#core/client/states/sessions.ts';
import { type Interval, isOpenEnded } from '#core/quantity/interval.ts';
import { roundHalfUp } from '#core/quantity/rounding.ts';

export type Outcome = 'met' | 'partly met' | 'not met' | 'not known yet';

/** A figure that is followed: how far its goal is met, with the numbers that say so. */
export interface Followed {
  readonly what: string;
  readonly outcome: Outcome;
  readonly because: string;
}

const alwaysFollowed: readonly Analyte[] = ['potassium', 'phosphate', 'bicarbonate', 'albumin'];
const followedWhenKnown: readonly Analyte[] = ['correctedCalcium', 'pth', 'hba1c', 'spKtV'];

/**
 * Every figure that has a goal in this setting, judged only from what is on record and in date. Met: within the first band, or the target.
 * Partly met (own decision): outside it, and within a band of another source, or nearer than the last figure of `then`. Potassium 5.5 after 5.8
 * on hemodialysis, band 4.6 to 5.3: partly met; 5.8 after 5.5: not met; a hemolyzed sample alone: not known yet.
 */
export function followedFigures(facts: ClientFacts, then: ClientFacts | undefined, targets: readonly DecidedTarget[]): readonly Followed[] {
  const analytes = [...alwaysFollowed, ...followedWhenKnown.filter(one => facts.labs.some(({ analyte }) => analyte === one))];
  return [
    ...analytes.flatMap(analyte => followedResult(facts, then, analyte)),
    ...weightGain(facts, then),
    ...eaten(facts, then, targets, 'protein'),
    ...eaten(facts, then, targets, 'energy'),
  ];
}

function followedResult(facts: ClientFacts, then: ClientFacts | undefined, analyte: Analyte): readonly Followed[] {
  const { name: what, unit } = analyteFacts(analyte);
  const lab = countedResult(facts, analyte);
  const upperNormal = facts.labs.find(one => one.analyte === analyte && one.upperNormal !== undefined)?.upperNormal;
  const [goal, ...others] = targetBands(analyte, facts.setting, upperNormal);
  if (goal === undefined) return analyte === 'potassium' ? [potassiumByState(facts, what)] : [];
  if (typeof lab === 'string') return [{ what, outcome: 'not known yet', because: lab }];
  if (analyte === 'pth' && upperNormal === undefined) {
    const because = `${labWords(lab, facts.today)}, goal 2 to 9 times the upper end of the laboratory, which is not on record`;
    return [{ what, outcome: 'not known yet', because }];
  }
  const before = then?.labs.find(one => one.analyte === analyte && isPlain(one) && !isSameSample(one, lab));
  const outcome = outcomeOf(lab.value, goal.range, others, before?.value);
  const converted = lab.entered.unit === unit ? '' : `, which is ${roundHalfUp(lab.value, 2)} ${unit}`;
  const last =
    before === undefined ? '' : `; before ${roundHalfUp(before.value, 2)}${unit === '{ratio}' ? '' : ` ${unit}`} on ${before.takenOn}`;
  return [{ what, outcome, because: `${labWords(lab, facts.today)}${converted}, goal ${bandWords(goal, unit)}${last}` }];
}

/** A marked sample is nothing to compare with. */
function isPlain({ analyte, hemolyzed, drawn }: Lab): boolean {
  return !hemolyzed && (analyte !== 'potassium' || drawn !== 'after-dialysis');
}

function isSameSample(a: Lab, b: Lab): boolean {
  return a.takenOn === b.takenOn && a.takenAt === b.takenAt;
}

/** The newest result that may be judged, or why there is none. */
function countedResult(facts: ClientFacts, analyte: Analyte): Lab | string {
  if (analyte !== 'potassium') return latest(facts, analyte) ?? 'no result in date on record';
  const state = potassiumState(facts);
  return state.kind === 'unknown' ? withoutStop(state.why) : state.lab;
}

/** Where no source gives a band: by the range of the laboratory. */
function potassiumByState(facts: ClientFacts, what: string): Followed {
  const state = potassiumState(facts);
  if (state.kind === 'unknown') return { what, outcome: 'not known yet', because: withoutStop(state.why) };
  const outcomes = { low: 'not met', 'in-range': 'met', 'once-above': 'partly met', high: 'not met' } as const;
  const side = state.kind === 'low' ? 'below range' : `upper end ${state.upper} mmol/L`;
  return { what, outcome: outcomes[state.kind], because: `${labWords(state.lab, facts.today)}, ${side}` };
}

function withoutStop(sentence: string): string {
  return sentence.replace(/\.$/u, '');
}

function outcomeOf(value: number, goal: Interval, others: readonly Pick<TargetBand, 'range'>[], before: number | undefined): Outcome {
  const away = outside(value, goal);
  if (away === 0) return 'met';
  const isNearer = before !== undefined && away < outside(before, goal) - 1e-9;
  return isNearer || others.some(({ range }) => outside(value, range) === 0) ? 'partly met' : 'not met';
}

/** How far outside; a billionth is rounding. */
function outside(value: number, { lo, hi }: Interval): number {
  const away = Math.max(lo - value, value - hi, 0);
  return away < 1e-9 ? 0 : away;
}

function bandWords({ range, source }: TargetBand, unit: string): string {
  const { lo, hi } = range;
  const words = isOpenEnded(range) ? `at least ${lo}` : lo === 0 ? `under ${hi}` : lo === hi ? `${lo}` : `${lo} to ${hi}`;
  return `${words}${unit === '{ratio}' ? '' : ` ${unit}`}${chartSources([source])}`;
}

interface Gain {
  readonly percent: number;
  readonly words: string;
  readonly on: string;
}

/** On hemodialysis: of the newest treatment, else the newest weight before a session over the dry weight, both in date, with no later one after it. */
function gainOf(facts: ClientFacts): Gain | undefined {
  const [before, dry, after] = [weightInDate(facts, 'before-dialysis'), weightInDate(facts, 'dry'), weightInDate(facts, 'after-dialysis')];
  const [session] = sessionsInDate(facts).filter(({ gainPercent }) => gainPercent !== undefined);
  if (dry !== undefined && session?.gainPercent !== undefined && (before === undefined || session.on >= before.on))
    return {
      percent: session.gainPercent,
      words: `${session.gainKg?.toFixed(1)} kg, ${session.gainPercent.toFixed(1)} % of dry ${dry.kg.toFixed(1)} kg`,
      on: session.on,
    };
  if (before === undefined || dry === undefined || (after !== undefined && after.on > before.on)) return undefined;
  const gain = interdialyticGain(before.kg, dry.kg);
  if (gain.kind === 'refused') return undefined;
  const { gainKg, gainPercent } = gain.value;
  return {
    percent: gainPercent,
    words: `${gainKg.toFixed(1)} kg, ${gainPercent.toFixed(1)} % of dry ${dry.kg.toFixed(1)} kg`,
    on: before.on,
  };
}

function weightGain(facts: ClientFacts, then: ClientFacts | undefined): readonly Followed[] {
  if (facts.setting !== 'hemodialysis') return [];
  const what = 'weight gain between treatments';
  const gain = gainOf(facts);
  if (gain === undefined)
    return [{ what, outcome: 'not known yet', because: 'it needs a dry weight and a newer weight before dialysis, both in date' }];
  const line = careFigure(facts.rules, 'contact.weight-gain-hemodialysis');
  const known = then === undefined ? undefined : gainOf(then);
  const before = known?.on === gain.on ? undefined : known;
  const outcome = outcomeOf(gain.percent, { lo: Number.NEGATIVE_INFINITY, hi: line }, [], before?.percent);
  const last = before === undefined ? '' : `; before ${before.words} on ${before.on}`;
  return [{ what, outcome, because: `${gain.words} on ${gain.on}, goal ${line} % or less${last}` }];
}

function eaten(
  facts: ClientFacts,
  then: ClientFacts | undefined,
  targets: readonly DecidedTarget[],
  item: 'protein' | 'energy',
): readonly Followed[] {
  const target = targets.find(one => one.item === item);
  if (target?.range === undefined) return [];
  const of = (one: ClientFacts) => eatenADay(one, item === 'protein' ? 'proteinG' : 'energyKcal');
  const what = `${item} eaten`;
  const now = of(facts);
  if (now === undefined || !isInDate(facts, 'intake', facts.assessment.on))
    return [{ what, outcome: 'not known yet', because: now === undefined ? 'nothing told on record' : 'what was told is too old' }];
  const before = then === undefined || then.assessment.on === facts.assessment.on ? undefined : of(then);
  const last = before === undefined ? '' : `; before ${amountWords(before, target.unit)} on ${then?.assessment.on}`;
  const goal = rangeWords(target.unit, target.range, target.limit);
  const because = `${amountWords(now, target.unit)} a day${(facts.assessment.addedFoods ?? []).length > 0 ? ' with what is taken beside it' : ''}, as told on ${facts.assessment.on}, target ${goal}${last}`;
  // What was told may have the added foods in it: a goal is met or not where both ends say so.
  const outcomes = [now.lo, now.hi].map(one => outcomeOf(one, target.range!, [], before?.lo === before?.hi ? before?.lo : undefined));
  return [{ what, outcome: outcomes[0] === outcomes[1] ? outcomes[0]! : 'not known yet', because }];
}
