import type { Assessment } from '#core/client/assessment/assessment.ts';
import { checkAssessment } from '#core/client/assessment/checkAssessment.ts';
import { ageWords, type ClientFacts, labWords, weightWords } from '#core/client/assessment/clientFacts.ts';
import { conditions, medicines, supplements, symptoms, weightKinds } from '#core/client/assessment/vocabularies.ts';
import { nextChecks } from '#core/client/cautions/nextChecks.ts';
import { type Proposal, proposePrescription, standingNotice } from '#core/client/prescription/proposePrescription.ts';
import { type Target, targetItems } from '#core/client/prescription/target.ts';
import { decidedWords, householdWords, rangeWords, targetNames } from '#core/client/prescription/targetWords.ts';
import { type ClientRecord, contactsMade, currentAssessment, type Prescription } from '#core/client/record/record.ts';
import { type CareRules, usualCareRules } from '#core/client/rules/careRules.ts';
import { chartSources } from '#core/client/rules/source.ts';
import { basisWords } from '#core/client/states/weightBasis.ts';
import type { Interval } from '#core/quantity/interval.ts';
import { roundHalfUp } from '#core/quantity/rounding.ts';
import { type Day, isDay, yearsBetween } from '../calendarDay.ts';
import { settingWords } from '../setting.ts';
import { problemStatements } from './problemStatements.ts';

/** A note as plain data: every way of writing it says the same. */
export interface ChartNote {
  readonly title: string;
  readonly sections: readonly NoteSection[];
}

export interface NoteSection {
  readonly heading: string;
  readonly paragraphs: readonly string[];
  /** A table, its first row the headings. */
  readonly rows?: readonly (readonly string[])[];
}

/**
 * A note by assessment, diagnosis, intervention, monitoring and evaluation, from the newest assessment and the prescription
 * that stands. Undefined without an assessment. `clinicStatements` are the clinic's own, added as they are; there is no
 * licensed term set in it.
 */
export function chartNote(
  record: ClientRecord,
  today: Day,
  clinicStatements: readonly string[] = [],
  rules: CareRules = usualCareRules,
): ChartNote | undefined {
  const kept = currentAssessment(record);
  if (kept === undefined) return undefined;
  const newest = kept.assessment;
  const { facts } = checkAssessment(newest, today, rules);
  const [prescription] = record.prescriptions;
  const isForNewest = prescription?.assessmentId === kept.id;
  // What was picked at the signature holds for the assessment it was picked for.
  const proposal = proposePrescription(newest, today, isForNewest ? prescription?.weightBasis : undefined, rules);
  return cleaned({
    title: `Nutrition note, ${record.name}, ${today}`,
    sections: [
      { heading: 'Assessment', paragraphs: [...personWords(newest, today), ...weightParagraphs(facts, proposal), ...otherFacts(newest)] },
      ...labSection(facts, today, proposal),
      { heading: 'Diagnosis', paragraphs: diagnosis(facts, proposal, clinicStatements) },
      interventionSection(prescription, proposal, isForNewest ? undefined : assessedOn(record, prescription)),
      ...disagreement(prescription, proposal),
      { heading: 'Cautions', paragraphs: cautionWords(record, proposal) },
      ...toldSection(record),
      {
        heading: 'Monitoring and evaluation',
        paragraphs: proposal.kind === 'barred' ? ['Not planned until what bars a target is answered.'] : monitoring(newest, today, rules),
      },
      { heading: 'Notice', paragraphs: [standingNotice] },
    ],
  });
}

/** No control character gets into a note: an Office document with one cannot be opened, and a text field would act on it. */
function cleaned({ title, sections }: ChartNote): ChartNote {
  return {
    title: clean(title),
    sections: sections.map(({ heading, paragraphs, rows }) => ({
      heading,
      paragraphs: paragraphs.map(clean),
      ...(rows === undefined ? {} : { rows: rows.map(cells => cells.map(clean)) }),
    })),
  };
}

function clean(text: string): string {
  return text.toWellFormed().replace(/[\p{Cc}\uFFFE\uFFFF]/gu, ' ');
}

function monitoring(newest: Assessment, today: Day, rules: CareRules): string[] {
  return nextChecks(newest, today, rules).map(
    ({ item, every, lastOn, dueBy, state }) =>
      `${item}: ${state === 'overdue' ? 'overdue since' : 'due by'} ${dueBy} (${every}; ${lastOn === undefined ? 'no earlier one on record' : `last ${lastOn}`}).`,
  );
}

function personWords({ sex, age, treatment, stage, diabetes, on, ...rest }: Assessment, today: Day): string[] {
  const years =
    'years' in age
      ? `${age.years} years`
      : isDay(age.bornOn)
        ? `${yearsBetween(age.bornOn, today)} years`
        : `born ${age.bornOn}, which is no day`;
  const setting = settingWords[treatment.setting];
  return [
    `Assessed ${on}. ${sex === 'female' ? 'Female' : 'Male'}, ${years}; ${setting}${stage === undefined ? '' : `, stage ${stage.value} set on ${stage.on}`}${diabetes ? ', diabetes' : ''}.`,
    ...(rest.conditions.length === 0 ? [] : [`Conditions: ${rest.conditions.map(conditions.words).join(', ')}.`]),
    ...(rest.medicines.length === 0 ? [] : [`Medicines by class: ${rest.medicines.map(medicines.words).join(', ')}.`]),
    ...(rest.supplements.length === 0 ? [] : [`Supplements: ${rest.supplements.map(supplements.words).join(', ')}.`]),
  ];
}

function weightParagraphs({ weights, today }: ClientFacts, proposal: Proposal): string[] {
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

function otherFacts({
  appetite,
  intake,
  urineMlPerDay,
  allergies,
  avoidedFoods,
  foodAccess,
  goals,
  symptoms: symptomsTold,
}: Assessment): string[] {
  return [
    ...(appetite === undefined ? [] : [`Appetite: ${appetite}.`]),
    ...(intake?.energyKcal === undefined ? [] : [`Energy eaten, as told: ${intake.energyKcal} kcal a day.`]),
    ...(intake?.proteinG === undefined ? [] : [`Protein eaten, as told: ${intake.proteinG} g a day.`]),
    ...(urineMlPerDay === undefined ? [] : [`Urine: ${urineMlPerDay.value} mL a day (${urineMlPerDay.on}).`]),
    ...(symptomsTold.length === 0 ? [] : [`Symptoms: ${symptomsTold.map(symptoms.words).join(', ')}.`]),
    ...(allergies.length === 0 ? [] : [`Allergies: ${allergies.join(', ')}.`]),
    ...(avoidedFoods.length === 0 ? [] : [`Avoids: ${avoidedFoods.join(', ')}.`]),
    ...(foodAccess === undefined ? [] : [`Access to food: ${foodAccess}.`]),
    ...(goals.length === 0 ? [] : [`Goals: ${goals.join('; ')}.`]),
  ];
}

function labSection({ labs, questioned }: ClientFacts, today: Day, proposal: Proposal): NoteSection[] {
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

function diagnosis(facts: ClientFacts, proposal: Proposal, clinicStatements: readonly string[]): string[] {
  const own = [...problemStatements(facts, proposal), ...clinicStatements];
  if (own.length > 0) return own;
  return [
    proposal.kind === 'barred'
      ? 'Not stated until what bars a target is answered.'
      : 'No statement is made from the numbers alone: the dietitian writes what was found.',
  ];
}

/** The day of the assessment that a prescription was signed for; "an assessment that is not on record" where it is gone. */
function assessedOn({ assessments }: ClientRecord, prescription: Prescription | undefined): string | undefined {
  if (prescription === undefined) return undefined;
  const on = assessments.find(({ id }) => id === prescription.assessmentId)?.assessment.on;
  return on === undefined ? 'an assessment that is not on record' : `the assessment of ${on}`;
}

/** `earlier` says for which earlier assessment the prescription was signed, where it was not the newest. */
function interventionSection(prescription: Prescription | undefined, proposal: Proposal, earlier?: string): NoteSection {
  const heading = 'Intervention: nutrition prescription';
  if (prescription === undefined) {
    if (proposal.kind === 'barred') return { heading, paragraphs: ['Nothing is proposed:', ...proposal.issues.map(({ told }) => told)] };
    return {
      heading,
      paragraphs: ['Proposed, not signed.'],
      rows: [['Target', 'A day', 'Why'], ...targetItems.map(item => proposedRow(proposal.targets[item]))],
    };
  }
  const { by, credentials, at } = prescription.signed;
  return {
    heading,
    paragraphs: [
      `Signed by ${by}${credentials === '' ? '' : `, ${credentials}`}, ${at.slice(0, 10)}.`,
      ...(earlier === undefined ? [] : [`It was signed for ${earlier}, not for the newest one: look whether it still holds.`]),
    ],
    rows: [
      ['Target', 'A day', 'Basis and reason'],
      ...prescription.targets.map(({ from, reason, says, ...target }) => [
        targetNames[target.item],
        aDay(decidedWords(target), target),
        `${from === 'proposal' ? 'As proposed' : from === 'alternative' ? 'Another guideline chosen' : 'Own figure'}: ${says}${reason === undefined ? '' : ` Reason: ${reason}`}`,
      ]),
    ],
  };
}

/** A signed prescription says what was chosen; here stands what other guidelines say of the same assessment. */
function disagreement(prescription: Prescription | undefined, proposal: Proposal): NoteSection[] {
  if (prescription === undefined || proposal.kind === 'barred') return [];
  const paragraphs = targetItems.flatMap(item =>
    proposal.targets[item].alternatives.map(({ says, sources }) => `${targetNames[item]}: ${says}${chartSources(sources)}.`),
  );
  return paragraphs.length === 0 ? [] : [{ heading: 'Where guidelines disagree', paragraphs }];
}

function proposedRow(target: Target): readonly string[] {
  const sources = chartSources(target.sources);
  const elsewhere = target.alternatives.map(({ says, sources: from }) => ` Elsewhere: ${says}${chartSources(from)}.`).join('');
  switch (target.kind) {
    case 'proposed':
      return [
        targetNames[target.item],
        aDay(
          rangeWords(target.unit, target.range, target.limit) + (target.item === 'fluid' ? householdWords(target.range, target.limit) : ''),
          target,
        ),
        `${target.says}${basisOf(target)}${sources}.${elsewhere}`,
      ];
    case 'no-limit':
      return [targetNames[target.item], 'no limit proposed', `${target.reasons.join(' ')}${sources}${elsewhere}`];
    case 'withheld':
      return [
        targetNames[target.item],
        'not proposed',
        `${target.why} To check: ${target.whatToCheck.map(one => one.replace(/\.$/u, '')).join('; ')}${sources}.${elsewhere}`,
      ];
  }
}

/** Amounts are for a day; what is named on a label is no amount. */
function aDay(figure: string, { unit, range }: { readonly unit: string; readonly range?: Interval }): string {
  return range === undefined || unit === 'named on the label' ? figure : `${figure} a day`;
}

/** The weight that a figure per kg was set on. */
function basisOf({ perKg, weightBasis }: Extract<Target, { kind: 'proposed' }>): string {
  return perKg === undefined || weightBasis === undefined ? '' : `, on the ${weightBasis.replaceAll('-', ' ')} weight`;
}

function cautionWords(record: ClientRecord, { cautions }: Proposal): string[] {
  if (cautions.length === 0) return ['None is met.'];
  return cautions.map(caution => {
    const { told, because, source, sameDay } = caution;
    const made = contactsMade(record, caution).map(one => ` Told: ${one.told}, ${one.at.slice(0, 16).replace('T', ' ')} UTC.`);
    const open = sameDay && made.length === 0 ? ' Nobody is noted as told.' : '';
    return `${told} Why: ${because.replace(/\.$/, '')}${chartSources([source])}.${made.join('')}${open}`;
  });
}

/** Everybody who was told of a value, also when a newer one has come since: a contact is part of the record. */
function toldSection({ contacts }: ClientRecord): NoteSection[] {
  if (contacts.length === 0) return [];
  const paragraphs = contacts.map(
    ({ told, at, about, note }) =>
      `${at.slice(0, 16).replace('T', ' ')} UTC: ${told}${about === undefined ? '' : ` told of ${about}`}${note === undefined ? '' : `. ${note}`}.`,
  );
  return [{ heading: 'Who was told', paragraphs }];
}
