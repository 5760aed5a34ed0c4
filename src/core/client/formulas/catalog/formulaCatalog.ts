import type { Reading } from '#core/errors.ts';
import { binderFormulas } from './binders.ts';
import { dialysisFormulas } from './dialysis.ts';
import { fluidFormulas } from './fluid.ts';
import { type Formula, type FormulaIssueCode, formulaSubjects } from './formula.ts';
import type { FormulaResult } from './formulaResult.ts';
import { kidneyFunctionFormulas } from './kidneyFunction.ts';
import { mineralFormulas } from './minerals.ts';
import { peritonealFormulas } from './peritoneal.ts';
import { proteinNutritionFormulas } from './proteinNutrition.ts';
import { urineFormulas } from './urine.ts';
import { wastingFormula } from './wasting.ts';
import { weightFormulas } from './weights.ts';

/** Every formula that a person may work out, by subject. */
export const formulaCatalog: readonly Formula[] = [
  ...kidneyFunctionFormulas,
  ...weightFormulas,
  ...proteinNutritionFormulas,
  wastingFormula,
  ...mineralFormulas,
  ...binderFormulas,
  ...urineFormulas,
  ...dialysisFormulas,
  ...peritonealFormulas,
  ...fluidFormulas,
].sort((a, b) => formulaSubjects.indexOf(a.subject) - formulaSubjects.indexOf(b.subject));

export function findFormula(name: string): Formula | undefined {
  return formulaCatalog.find(one => one.name === name);
}

/**
 * What a formula gives, or every input that stands in its way, each with its place. One figure an input: several formulas are not monotone
 * (the adjusted edema-free weight jumps), so a range given in would not honestly come out as one; results that are ranges stay ranges.
 * `runFormula('body-mass-index', { weight: '82 kg', height: '175 cm' })` gives "26.8 kg/m²".
 */
export function runFormula(
  name: string,
  inputs: Readonly<Record<string, unknown>>,
): Reading<FormulaResult | undefined, FormulaIssueCode | 'formula-not-found'> {
  const formula = findFormula(name);
  if (formula !== undefined) return formula.run(inputs);
  return {
    value: undefined,
    issues: [{ code: 'formula-not-found', place: {}, found: name, expected: 'the name of a formula' }],
  };
}
