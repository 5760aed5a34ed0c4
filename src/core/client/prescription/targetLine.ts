import type { ClientFacts, Lab } from '#core/client/assessment/clientFacts.ts';
import { isInDate } from '#core/client/assessment/factAges.ts';
import type { Source } from '#core/client/rules/source.ts';
import { phosphateState } from '#core/client/states/phosphateState.ts';
import { potassiumState } from '#core/client/states/potassiumState.ts';
import { stageOf } from '#core/client/states/stage.ts';
import type { WeightBasis } from '#core/client/states/weightBasis.ts';
import { shortDay } from '#core/quantity/calendarDay.ts';
import type { Target } from './target.ts';
import { perKgWords } from './targetWords.ts';

/** A target as a line of a table has room for it. */
export interface TargetLine {
  /** What it rests on: "25 – 35 kcal × 74.0 kg", "5.9 mmol/L, Nov 30"; missing where it rests on nothing of this client's. */
  readonly basis?: string;
  /** In about five words: "dialysis takes protein away". */
  readonly why: string;
  /** "KDOQI 2020", "practice" */
  readonly source: string;
}

/** What a target rests on, why, and by whom, in short. The same facts and weight as the target was made from. */
export function targetLine(target: Target, facts: ClientFacts, weight: WeightBasis): TargetLine {
  const basis = basisOf(target, facts, weight);
  return { ...(basis === undefined ? {} : { basis }), why: target.inShort, source: shortSource(target.sources) };
}

function basisOf(target: Target, facts: ClientFacts, weight: WeightBasis): string | undefined {
  const { sex } = facts.assessment;
  switch (target.item) {
    case 'energy':
    case 'protein': {
      if (weight.kind === 'none') return undefined;
      const kg = `${weight.chosen.kg.toFixed(1)} kg`;
      return target.kind === 'proposed' && target.perKg !== undefined
        ? `${perKgWords(target.perKg, target.limit)} ${target.unit} × ${kg}`
        : kg;
    }
    case 'sodium':
      return target.kind === 'proposed' ? 'one figure for all' : undefined;
    case 'potassium':
    case 'potassiumAdditives': {
      const state = potassiumState(facts);
      return state.kind === 'unknown' ? undefined : labInShort(state.lab, facts);
    }
    case 'phosphorus':
    case 'phosphateAdditives': {
      const state = phosphateState(facts);
      return state.kind === 'missing' ? undefined : labInShort(state.lab, facts);
    }
    case 'calcium': {
      const stage = stageOf(facts);
      return stage === undefined ? undefined : `stage ${stage}`;
    }
    case 'fluid': {
      const { urineMlPerDay } = facts.assessment;
      // Only on hemodialysis the figure is made of it.
      return facts.setting !== 'hemodialysis' || urineMlPerDay === undefined || !isInDate(facts, 'urine', urineMlPerDay.on)
        ? undefined
        : `urine ${urineMlPerDay.value} mL, ${shortDay(urineMlPerDay.on, facts.today)}`;
    }
    case 'fiber':
      return `${sex === 'female' ? 'woman' : 'man'} ${Math.floor(facts.ageYears) <= 50 ? 'up to 50' : 'over 50'}`;
  }
}

/** As it was entered: "5.9 mEq/L, Nov 30". */
function labInShort({ entered, takenOn }: Lab, { today }: ClientFacts): string {
  return `${Number(entered.value.toPrecision(4))} ${entered.unit}, ${shortDay(takenOn, today)}`;
}

/** The first source in short. */
function shortSource([first]: readonly Source[]): string {
  return first === undefined ? '' : (first.short ?? first.text);
}
