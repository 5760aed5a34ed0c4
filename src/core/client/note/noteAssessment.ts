import type { Assessment } from '#core/client/assessment/assessment.ts';
import { ageWords, type ClientFacts, labWords, weightWords } from '#core/client/assessment/clientFacts.ts';
import { conditions, medicines, supplements, symptoms, weightKinds } from '#core/client/assessment/vocabularies.ts';
import type { Proposal } from '#core/client/prescription/proposePrescription.ts';
import { basisWords } from '#core/client/states/weightBasis.ts';
import { type Day, isDay, yearsBetween } from '#core/quantity/calendarDay.ts';
import { roundHalfUp } from '#core/quantity/rounding.ts';
import { settingWords } from '../setting.ts';
import { isolated, type NoteSection } from './noteSection.ts';
import { takenWords } from './noteTaken.ts';
import { dialysateWords, scheduleWords } from './noteTreatment.ts';

/** Who is assessed, and what is on record of each list. */
export function personWords({ sex, age, treatment, stage, diabetes, on, ...rest }: Assessment, today: Day): string[] {
  const years =
    'years' in age
      ? `${age.years} years`
      : isDay(age.bornOn)
        ? `${yearsBetween(age.bornOn, today)} years`
        : `born ${age.bornOn}, which is no day`;
  const setting = settingWords[treatment.setting];
  const schedule = scheduleWords(treatment);
  return [
    `Assessed ${on}. ${sex === 'female' ? 'Female' : 'Male'}, ${years}; ${setting}${stage === undefined ? '' : `, stage ${stage.value} set on ${stage.on}`}${diabetes ? ', diabetes' : ''}.`,
    ...(schedule === '' ? [] : [`Treatment: ${schedule}.`]),
    ...(rest.conditions.length === 0 ? [] : [`Conditions: ${rest.conditions.map(conditions.words).join(', ')}.`]),
    ...(rest.medicines.length === 0 ? [] : [`Medicines by class: ${rest.medicines.map(medicines.words).join(', ')}.`]),
    ...takenWords(rest),
    ...(rest.supplements.length === 0 ? [] : [`Supplements: ${rest.supplements.map(supplements.words).join(', ')}.`]),
  ];
}

export function weightParagraphs({ weights, today }: ClientFacts, proposal: Proposal): string[] {
  const taken = weights
    .slice(0, 4)
    .map(weight => `${weightWords(weight)} ${weightKinds.words(weight.kind)} (${ageWords(weight.on, today)})`);
  const sentences = taken.length === 0 ? ['No weight on record.'] : [`Weight: ${taken.join('; ')}.`];
  if (proposal.kind === 'proposal' && proposal.weight.kind === 'chosen') {
    const { chosen, bmi } = proposal.weight;
    sentences.push(
      `Weight basis: ${basisWords(chosen)}, ${chosen.id.replaceAll('-', ' ')}${bmi === undefined ? '' : `; BMI ${roundHalfUp(bmi, 1)} kg/m²`}. ${chosen.why}`,
    );
  }
  return sentences;
}

export function otherFacts(assessment: Assessment): string[] {
  const { appetite, intake, urineMlPerDay, allergies, avoidedFoods, foodAccess, goals, symptoms: symptomsTold } = assessment;
  return [
    ...(appetite === undefined ? [] : [`Appetite: ${appetite}.`]),
    ...(intake?.energyKcal === undefined ? [] : [`Energy eaten, as told: ${intake.energyKcal} kcal a day.`]),
    ...(intake?.proteinG === undefined ? [] : [`Protein eaten, as told: ${intake.proteinG} g a day.`]),
    ...dialysateWords(assessment),
    ...(urineMlPerDay === undefined ? [] : [`Urine: ${urineMlPerDay.value} mL a day (${urineMlPerDay.on}).`]),
    ...(symptomsTold.length === 0 ? [] : [`Symptoms: ${symptomsTold.map(symptoms.words).join(', ')}.`]),
    ...(allergies.length === 0 ? [] : [`Allergies: ${allergies.map(isolated).join(', ')}.`]),
    ...(avoidedFoods.length === 0 ? [] : [`Avoids: ${avoidedFoods.map(isolated).join(', ')}.`]),
    ...(foodAccess === undefined ? [] : [`Access to food: ${isolated(foodAccess)}.`]),
    ...(goals.length === 0 ? [] : [`Goals: ${goals.map(isolated).join('; ')}.`]),
  ];
}

export function labSection({ labs, questioned }: ClientFacts, today: Day, proposal: Proposal): NoteSection[] {
  const asked = [...new Set(questioned.map(lab => `${labWords(lab, today)}.`))];
  const notUsed = proposal.kind === 'barred' ? [] : proposal.notUsed.map(({ what, why }) => `On record, not used: ${what}; ${why}.`);
  return [
    {
      heading: 'Laboratory results',
      paragraphs: [
        ...(labs.length + asked.length === 0 ? ['No result on record.'] : labs.map(lab => `${labWords(lab, today)}.`)),
        ...asked,
        ...notUsed,
      ],
    },
  ];
}
