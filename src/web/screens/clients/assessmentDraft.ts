import { type Analyte, analyteKeys, analytes } from '#core/client/labs/analytes.ts';

/** The form of an assessment: every figure as it is typed, with its unit beside it. */
export interface AssessmentDraft {
  readonly fields: Readonly<Record<string, string>>;
  readonly weighings: readonly {
    readonly value: string;
    readonly unit: string;
    readonly kind: string;
    readonly on: string;
    readonly unitConfirmed: boolean;
  }[];
  readonly labs: readonly LabDraft[];
  /** Dialysate bags of a day: liters and percent as typed. */
  readonly bags: readonly { readonly liters: string; readonly percent: string; readonly labeledAs: string }[];
  readonly ticked: Readonly<Record<'conditions' | 'medicines' | 'supplements' | 'symptoms' | 'missingParts', readonly string[]>>;
}

export interface LabDraft {
  readonly analyte: string;
  readonly value: string;
  readonly unit: string;
  readonly takenOn: string;
  readonly takenAt: string;
  /** Before or after dialysis; empty when not known. */
  readonly drawn: string;
  readonly lowerNormal: string;
  readonly upperNormal: string;
  readonly hemolyzed: boolean;
  /** The person has answered that value and unit are right. */
  readonly confirmed: boolean;
}

type Json = Readonly<Record<string, unknown>>;

/** Rows without a value are no result and no weight. */
function isTyped({ value }: { readonly value: string }): boolean {
  return value.trim() !== '';
}

/** What is asked of each row, by its place in the draft: an answer counts the rows that have a value. */
export function questionsByRow(
  rows: readonly { readonly value: string }[],
  list: 'labs' | 'weighings',
  issues: readonly Asked[],
  before = 0,
): ReadonlyMap<number, string> {
  const places = rows.flatMap((row, at) => (isTyped(row) ? [at] : []));
  return new Map(
    issues.flatMap(({ told, answeredBy }) => {
      const place = answeredBy?.list === list ? places[answeredBy.at - before] : undefined;
      return place === undefined ? [] : [[place, told] as const];
    }),
  );
}

interface Asked {
  readonly told: string;
  readonly answeredBy?: { readonly list: 'labs' | 'weighings'; readonly at: number } | undefined;
}

/** A result as a file or an earlier assessment has it, ready to be changed. */
export function labDraftOf(lab: Json): LabDraft {
  return {
    analyte: text(lab.analyte),
    value: text(lab.value),
    unit: text(lab.unit),
    takenOn: text(lab.takenOn),
    hemolyzed: lab.hemolyzed === true,
    takenAt: text(lab.takenAt),
    drawn: text(lab.drawn),
    lowerNormal: text(lab.lowerNormal),
    upperNormal: text(lab.upperNormal),
    confirmed: lab.confirmed === true,
  };
}

/** Names and units of the laboratory results, as the core reads them. */
export const labChoices: readonly { readonly key: string; readonly name: string; readonly units: readonly string[] }[] = analyteKeys.map(
  (key: Analyte) => ({ key, name: analytes[key].name, units: [analytes[key].unit, ...Object.keys(analytes[key].from)] }),
);

/** A draft from an assessment that is kept; a new one begins with today and what seldom changes. */
export function draftOf(assessment: Json | undefined, today: string): AssessmentDraft {
  const given = assessment ?? {};
  const treatment = (given.treatment ?? {}) as Json;
  const age = (given.age ?? {}) as Json;
  const height = given.height as Json | undefined;
  const dated = (key: string): [string, string] => {
    const value = given[key] as Json | undefined;
    return [text(value?.value), text(value?.on)];
  };
  const [stage, stageOn] = dated('stage');
  const [urine, urineOn] = dated('urineMlPerDay');
  const loss = (given.weightLoss ?? {}) as Json;
  const muscle = (given.muscleLoss ?? {}) as Json;
  const intake = (given.intake ?? {}) as Json;
  const steps = (given.potassiumSteps ?? {}) as Json;
  const list = (key: string): string => ((given[key] ?? []) as readonly string[]).join(', ');
  const ticked = (key: string): readonly string[] => (given[key] ?? []) as readonly string[];
  return {
    fields: {
      on: today,
      sex: text(given.sex),
      bornOn: text(age.bornOn),
      years: text(age.years),
      setting: text(treatment.setting),
      place: text(treatment.place) || 'in-center',
      method: text(treatment.method) || 'capd',
      startedOn: text(treatment.startedOn),
      sessionsPerWeek: text(treatment.sessionsPerWeek),
      sessionHours: text(treatment.sessionHours),
      transplantedOn: text(treatment.transplantedOn),
      conservative: text(treatment.conservative),
      diabetes: text(given.diabetes),
      pregnant: text(given.pregnant),
      breastfeeding: text(given.breastfeeding),
      icodextrin: text(treatment.icodextrin),
      absorbedShare: text(treatment.absorbedShare),
      ultrafiltrationLimit: text(treatment.ultrafiltrationLimitMlPerKgH),
      raasChangedOn: text(given.raasChangedOn),
      acuteKidneyInjury: text(given.acuteKidneyInjury),
      stage,
      stageOn,
      heightUnit: height === undefined ? 'cm' : 'feet' in height ? 'ft' : text(height.unit),
      height: height === undefined ? '' : 'feet' in height ? text(height.feet) : text(height.value),
      inches: text(height?.inches),
      urine,
      urineOn,
      appetite: text(given.appetite),
      loss3: text(loss.percent3Months),
      loss6: text(loss.percent6Months),
      lossCause: text(loss.cause),
      muscle3: text(muscle.percent3Months),
      muscle6: text(muscle.percent6Months),
      littleForDays: text(intake.littleForDays),
      energyKcal: text(intake.energyKcal),
      proteinG: text(intake.proteinG),
      foodAccess: text(given.foodAccess),
      goals: list('goals'),
      allergies: list('allergies'),
      avoidedFoods: list('avoidedFoods'),
      causesCheckedOn: text(steps.causesCheckedOn),
      additivesCutOn: text(steps.additivesCutOn),
      lastScreenedOn: text(given.lastScreenedOn),
      lastFullAssessmentOn: text(given.lastFullAssessmentOn),
    },
    weighings: ((given.weighings ?? []) as readonly Json[]).map(one => {
      const weight = one.weight as Json;
      return {
        value: text(weight.value),
        unit: text(weight.unit),
        kind: text(one.kind),
        on: text(one.on),
        unitConfirmed: one.unitConfirmed === true,
      };
    }),
    labs: ((given.labs ?? []) as readonly Json[]).map(labDraftOf),
    bags: ((treatment.bags ?? []) as readonly Json[]).map(one => ({
      liters: text(one.liters),
      percent: text(one.percent),
      labeledAs: text(one.labeledAs),
    })),
    ticked: {
      conditions: ticked('conditions'),
      medicines: ticked('medicines'),
      supplements: ticked('supplements'),
      symptoms: ticked('symptoms'),
      missingParts: ticked('missingParts'),
    },
  };
}

/** The draft as assessment JSON. What is empty is left out: not known, never filled in. */
export function assessmentOf({ fields, weighings, labs, bags, ticked }: AssessmentDraft): Record<string, unknown> {
  const f = (key: string): string => (fields[key] ?? '').trim();
  const some = (key: string, value: unknown): Json => (value === undefined ? {} : { [key]: value });
  const number = (key: string): number | undefined => (f(key) === '' ? undefined : Number(f(key)));
  const day = (key: string): string | undefined => f(key) || undefined;
  const list = (key: string): readonly string[] =>
    f(key)
      .split(',')
      .map(word => word.trim())
      .filter(Boolean);
  const object = (value: Json): Json | undefined => (Object.keys(value).length === 0 ? undefined : value);
  return {
    on: f('on'),
    sex: f('sex'),
    age: f('bornOn') !== '' ? { bornOn: f('bornOn') } : { ...some('years', number('years')) },
    treatment: treatmentOf(f, number, day, bags),
    ...some('raasChangedOn', day('raasChangedOn')),
    diabetes: f('diabetes') === 'true',
    ...some('pregnant', f('pregnant') === 'true' ? true : undefined),
    ...some('breastfeeding', f('breastfeeding') === 'true' ? true : undefined),
    ...some('acuteKidneyInjury', f('acuteKidneyInjury') === 'true' ? true : undefined),
    ...some('stage', f('stage') === '' ? undefined : { value: f('stage'), on: f('stageOn') }),
    ...some('height', heightOf(f, number)),
    weighings: weighings.filter(isTyped).map(({ value, unit, kind, on, unitConfirmed }) => ({
      weight: { value: Number(value), unit },
      kind,
      on,
      ...some('unitConfirmed', unitConfirmed || undefined),
    })),
    ...some('urineMlPerDay', f('urine') === '' ? undefined : { value: Number(f('urine')), on: f('urineOn') }),
    labs: labs.filter(isTyped).map(lab => ({
      analyte: lab.analyte,
      value: Number(lab.value),
      unit: lab.unit,
      takenOn: lab.takenOn,
      ...some('takenAt', lab.takenAt.trim() || undefined),
      ...some('drawn', lab.drawn || undefined),
      ...some('lowerNormal', typed(lab.lowerNormal)),
      ...some('upperNormal', typed(lab.upperNormal)),
      ...some('hemolyzed', lab.hemolyzed || undefined),
      ...some('confirmed', lab.confirmed || undefined),
    })),
    ...ticked,
    allergies: list('allergies'),
    avoidedFoods: list('avoidedFoods'),
    goals: list('goals'),
    ...some('appetite', day('appetite')),
    ...some('muscleLoss', object({ ...some('percent3Months', number('muscle3')), ...some('percent6Months', number('muscle6')) })),
    ...some(
      'weightLoss',
      object({
        ...some('percent3Months', number('loss3')),
        ...some('percent6Months', number('loss6')),
        ...some('cause', day('lossCause')),
      }),
    ),
    ...some(
      'intake',
      object({
        ...some('littleForDays', number('littleForDays')),
        ...some('energyKcal', number('energyKcal')),
        ...some('proteinG', number('proteinG')),
      }),
    ),
    ...some('foodAccess', day('foodAccess')),
    ...some(
      'potassiumSteps',
      object({ ...some('causesCheckedOn', day('causesCheckedOn')), ...some('additivesCutOn', day('additivesCutOn')) }),
    ),
    ...some('lastScreenedOn', day('lastScreenedOn')),
    ...some('lastFullAssessmentOn', day('lastFullAssessmentOn')),
  };
}

function treatmentOf(
  f: (key: string) => string,
  number: (key: string) => number | undefined,
  day: (key: string) => string | undefined,
  bags: AssessmentDraft['bags'],
): Json {
  const some = (key: string, value: unknown): Json => (value === undefined ? {} : { [key]: value });
  switch (f('setting')) {
    case 'hemodialysis':
      return {
        setting: 'hemodialysis',
        place: f('place'),
        ...some('startedOn', day('startedOn')),
        ...some('sessionsPerWeek', number('sessionsPerWeek')),
        ...some('sessionHours', number('sessionHours')),
        ...some('ultrafiltrationLimitMlPerKgH', number('ultrafiltrationLimit')),
      };
    case 'peritoneal-dialysis': {
      const filled = bags.filter(({ liters, percent }) => `${liters}${percent}`.trim() !== '');
      return {
        setting: 'peritoneal-dialysis',
        method: f('method'),
        ...some('startedOn', day('startedOn')),
        ...some(
          'bags',
          filled.length === 0
            ? undefined
            : filled.map(({ liters, percent, labeledAs }) => ({ liters: typed(liters), percent: typed(percent), labeledAs })),
        ),
        ...some('icodextrin', f('icodextrin') === 'true' ? true : undefined),
        ...some('absorbedShare', number('absorbedShare')),
      };
    }
    case 'transplant':
      return { setting: 'transplant', transplantedOn: f('transplantedOn') };
    default:
      return { setting: 'ckd-not-on-dialysis', ...some('conservative', f('conservative') === 'true' ? true : undefined) };
  }
}

function heightOf(f: (key: string) => string, number: (key: string) => number | undefined): Json | undefined {
  const value = number('height');
  if (value === undefined) return undefined;
  return f('heightUnit') === 'ft' ? { feet: value, inches: number('inches') ?? 0 } : { value, unit: f('heightUnit') };
}

function text(value: unknown): string {
  return value === undefined || value === null ? '' : String(value);
}

/** A figure as typed; what is empty is not zero and is refused in words. */
function typed(value: string): number | undefined {
  return value.trim() === '' ? undefined : Number(value);
}
