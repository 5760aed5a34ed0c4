import { type ClientFacts, latest } from './clientFacts.ts';
import { bmiOf } from './weightBasis.ts';

/** Lower ends for "low" here: potassium 3.5 mmol/L, phosphate 2.5 mg/dL, magnesium 1.7 mg/dL (usual ranges, from memory). */
const lows = { potassium: 3.5, phosphate: 2.5, magnesium: 1.7 } as const;

/** The signs of refeeding risk that are met. Facts section 8 after NICE CG32 (from memory). */
export function refeedingSigns(facts: ClientFacts): readonly string[] {
  const { weightLoss, intake } = facts.assessment;
  const bmi = bmiOf(facts);
  const signs: string[] = [];
  if (bmi !== undefined && bmi < 18.5) signs.push(`BMI ${bmi.toFixed(1)}`);
  if (Math.max(weightLoss?.percent3Months ?? 0, weightLoss?.percent6Months ?? 0) > 10) signs.push('weight loss over 10 %');
  if ((intake?.littleForDays ?? 0) >= 5) signs.push('little intake for 5 days or more');
  for (const [analyte, low] of Object.entries(lows) as [keyof typeof lows, number][]) {
    const lab = latest(facts, analyte, 35);
    if (lab !== undefined && lab.value < low) signs.push(`low ${analyte}`);
  }
  return signs;
}
