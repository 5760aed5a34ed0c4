import type { ClientFacts } from '#core/client/assessment/clientFacts.ts';
import { has, takes } from '#core/client/assessment/clientFacts.ts';
import { isInDate, latestLowest } from '#core/client/assessment/factAges.ts';
import { bmiOf } from './weightBasis.ts';
import { weightLoss } from './weightLoss.ts';

/** Lower ends for "low" here: potassium 3.5 mmol/L, phosphate 2.5 mg/dL, magnesium 1.7 mg/dL (usual ranges, from memory). */
const lows = { potassium: 3.5, phosphate: 2.5, magnesium: 1.7 } as const;

/**
 * The signs of refeeding risk, where NICE CG32 (as quoted in PMC8672300, Table 2) is met; empty where it is not. One of: BMI under 16,
 * loss over 15 % in 3-6 months, little intake for over 10 days, low potassium, phosphate or magnesium before feeding is begun or raised
 * after little intake. Or two of: BMI under 18.5, loss over 10 %, little intake for over 5 days, alcohol misuse or one of the drugs.
 */
export function refeedingSigns(facts: ClientFacts): readonly string[] {
  const { intake, supplements, conditions } = facts.assessment;
  const bmi = bmiOf(facts);
  const { percent3Months = 0, percent6Months = 0, isLost } = weightLoss(facts);
  const loss = isLost ? Math.max(percent3Months, percent6Months) : 0;
  const littleDays = isInDate(facts, 'intake', facts.assessment.on) ? (intake?.littleForDays ?? 0) : 0;
  const lost = `weight loss of ${loss.toFixed(1)} %`;
  const little = `little intake for ${littleDays} days`;
  const lowResults =
    littleDays > 0 || has(facts, 'new-feeding')
      ? (Object.keys(lows) as (keyof typeof lows)[]).filter(analyte => {
          const lab = latestLowest(facts, analyte);
          return lab !== undefined && lab.value < (lab.lowerNormal ?? lows[analyte]);
        })
      : [];
  const one = [
    ...(bmi !== undefined && bmi < 16 ? [`BMI ${bmi.toFixed(1)}`] : []),
    ...(loss > 15 ? [lost] : []),
    ...(littleDays > 10 ? [little] : []),
    ...lowResults.map(analyte => `low ${analyte} before feeding`),
  ];
  const diuretics = takes(facts, 'diuretic', 'loop-diuretic', 'thiazide-diuretic', 'potassium-sparing-diuretic');
  const drugs = diuretics || takes(facts, 'insulin', 'insulin-or-sulfonylurea', 'chemotherapy');
  const isOnDrugs = conditions.includes('alcohol-misuse') || drugs || supplements.includes('magnesium-or-aluminum-antacid');
  const two = [
    ...(bmi !== undefined && bmi < 18.5 ? [`BMI ${bmi.toFixed(1)}`] : []),
    ...(loss > 10 ? [lost] : []),
    ...(littleDays > 5 ? [little] : []),
    ...(isOnDrugs ? ['alcohol misuse or a drug of the list (insulin, chemotherapy, antacid, diuretic)'] : []),
  ];
  return [...new Set([...one, ...(two.length > 1 ? two : [])])];
}
