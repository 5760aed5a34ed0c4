import type { ClientFacts, Lab } from '#core/client/assessment/clientFacts.ts';
import { egfr } from '#core/client/formulas/egfr.ts';
import { type GfrCategory, gfrCategories, gfrCategory } from '#core/client/formulas/gfrCategory.ts';
import { careFigure } from '#core/client/rules/careRules.ts';
import { daysBetween } from '#core/quantity/calendarDay.ts';

/** The GFR stage: for what restricts, and for cautions and next checks; both the same while nothing is in question. */
export interface Stage {
  readonly restricting?: GfrCategory;
  readonly cautioning?: GfrCategory;
  /** A newer creatinine tells another category than the stage that was typed: both are shown, and it is asked. */
  readonly question?: string;
}

const milderOf = (a: GfrCategory, b: GfrCategory): GfrCategory => (gfrCategories.indexOf(a) < gfrCategories.indexOf(b) ? a : b);
const lowerOf = (a: GfrCategory, b: GfrCategory): GfrCategory => (gfrCategories.indexOf(a) < gfrCategories.indexOf(b) ? b : a);

/**
 * The stage that the kidney team has set, else what two eGFRs at least 90 days apart agree on at the least (the milder). One result never
 * makes a stage (KDIGO CKD 2024, as quoted). Where a creatinine or eGFR from after the day of the typed stage tells another category,
 * the milder one decides restrictions, the lower one cautions and checks, and it is asked (care rules 1). Typed G4, newer eGFR 38: G3b and G4.
 */
export function stageFacts(facts: ClientFacts): Stage {
  if (facts.setting === 'hemodialysis' || facts.setting === 'peritoneal-dialysis') return {};
  const rates = filtrationRates(facts);
  const [newest] = rates;
  const typed = facts.assessment.stage;
  if (typed === undefined) {
    // An eGFR that this program computed makes no stage.
    const [last, ...before] = rates.filter(({ lab }) => lab.analyte === 'egfr');
    const earlier = last && before.find(({ lab }) => daysBetween(lab.takenOn, last.lab.takenOn) >= 90);
    if (last === undefined || earlier === undefined || !isInDate(facts, last)) return {};
    const agreed = milderOf(last.category, earlier.category);
    return { restricting: agreed, cautioning: agreed };
  }
  const isNewer = newest !== undefined && daysBetween(typed.on, newest.lab.takenOn) > 0 && isInDate(facts, newest);
  if (!isNewer || newest.category === typed.value) return { restricting: typed.value, cautioning: typed.value };
  return {
    restricting: milderOf(typed.value, newest.category),
    cautioning: lowerOf(typed.value, newest.category),
    question: `Stage ${typed.value} was set on ${typed.on}; the eGFR of ${newest.lab.takenOn} is ${newest.shown}, ${newest.category}. One result makes no stage: which holds? Enter the stage with its day.`,
  };
}

/** The newest eGFR in date, of the laboratory or computed from its creatinine: for cautions, never a stage. */
export function newestRate(facts: ClientFacts): number | undefined {
  if (facts.setting === 'hemodialysis' || facts.setting === 'peritoneal-dialysis') return undefined;
  return filtrationRates(facts).find(rate => isInDate(facts, rate))?.shown;
}

/** The stage that restricts. */
export function stageOf(facts: ClientFacts): GfrCategory | undefined {
  return stageFacts(facts).restricting;
}

interface Rate {
  readonly lab: Lab;
  readonly shown: number;
  readonly category: GfrCategory;
}

/** eGFRs of the laboratory, else computed from its creatinine; newest first, of one day the laboratory's own. */
function filtrationRates(facts: ClientFacts): readonly Rate[] {
  if (facts.assessment.acuteKidneyInjury) return [];
  const own = facts.labs.filter(({ analyte }) => analyte === 'egfr');
  const days = new Set(own.map(({ takenOn }) => takenOn));
  const computed = facts.labs.filter(({ analyte, takenOn }) => analyte === 'creatinine' && !days.has(takenOn));
  return [...own, ...computed]
    .flatMap(lab => {
      if (lab.analyte === 'egfr') return [{ lab, shown: Math.round(lab.value), category: gfrCategory(lab.value) }];
      const { sex } = facts.assessment;
      const rate = egfr({ sex, ageYears: facts.ageYears, creatinineMgPerDl: lab.value });
      return rate.kind === 'computed' ? [{ lab, shown: rate.value.shownMlPerMin173, category: rate.value.category }] : [];
    })
    .sort((a, b) => daysBetween(a.lab.takenOn, b.lab.takenOn) || b.shown - a.shown);
}

function isInDate(facts: ClientFacts, { lab, category }: Rate): boolean {
  const late = gfrCategories.indexOf(facts.assessment.stage?.value ?? category) >= gfrCategories.indexOf('G4');
  const id = facts.setting === 'transplant' ? 'age.creatinine.transplant' : late ? 'age.creatinine.G4-G5' : 'age.creatinine.G1-G3';
  return daysBetween(lab.takenOn, facts.today) <= careFigure(facts.rules, id);
}
