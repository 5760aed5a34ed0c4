import type { Assessment } from '#core/client/assessment/assessment.ts';
import { checkAssessment } from '#core/client/assessment/checkAssessment.ts';
import { weightWords } from '#core/client/assessment/clientFacts.ts';
import { analyteFacts } from '#core/client/labs/analytes.ts';
import type { Day } from '#core/quantity/calendarDay.ts';
import { roundHalfUp } from '#core/quantity/rounding.ts';

/** What the newest assessment says otherwise than the one before: weight, labs of both, appetite, treatment. */
export function changesBetween(before: Assessment, after: Assessment, today: Day): string[] {
  const [earlier, later] = [checkAssessment(before, today).facts, checkAssessment(after, today).facts];
  const sentences: string[] = [];
  const [weightBefore, weightNow] = [earlier.weights[0], later.weights[0]];
  if (weightBefore !== undefined && weightNow !== undefined && weightBefore.kg !== weightNow.kg) {
    sentences.push(`Weight ${weightWords(weightBefore)} on ${weightBefore.on}, ${weightWords(weightNow)} on ${weightNow.on}.`);
  }
  for (const lab of later.labs) {
    const same = earlier.labs.find(({ analyte }) => analyte === lab.analyte);
    if (same === undefined || same.takenOn === lab.takenOn || same.value === lab.value) continue;
    const { name, unit } = analyteFacts(lab.analyte);
    sentences.push(
      `${name}: ${roundHalfUp(same.value, 2)} ${unit} on ${same.takenOn}, ${roundHalfUp(lab.value, 2)} ${unit} on ${lab.takenOn}.`,
    );
  }
  if (before.appetite !== after.appetite && after.appetite !== undefined) sentences.push(`Appetite is ${after.appetite} now.`);
  if (before.treatment.setting !== after.treatment.setting)
    sentences.push(`Treatment is another one: ${after.treatment.setting.replaceAll('-', ' ')}.`);
  return sentences;
}
