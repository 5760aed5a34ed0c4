import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Session } from '#core/client/assessment/amountsTaken.ts';
import type { Assessment, LabResult } from '#core/client/assessment/assessment.ts';
import { checkAssessment } from '#core/client/assessment/checkAssessment.ts';
import type { ClientFacts } from '#core/client/assessment/clientFacts.ts';
import { clientWith, lab, today } from '#core/client/assessment/clientFixture.ts';
import { addedFoods, binders, type Condition, type MedicineClass, potassiumBinders } from '#core/client/assessment/vocabularies.ts';
import { actedOn } from '#core/client/cautions/caution.ts';
import { nextChecks } from '#core/client/cautions/nextChecks.ts';
import type { GfrCategory } from '#core/client/formulas/gfrCategory.ts';
import { type Analyte, analytes } from '#core/client/labs/analytes.ts';
import { labInUnit, unitsOf } from '#core/client/labs/labValue.ts';
import { stageOf } from '#core/client/states/stage.ts';
import { wastingState } from '#core/client/states/wastingState.ts';
import { addDays } from '#core/quantity/calendarDay.ts';
import { proposePrescription } from './proposePrescription.ts';
import { type Target, type TargetItem, targetItems } from './target.ts';

const runs = process.env.PLATEWRIGHT_LONG === undefined ? 150 : 20_000;

const treatment: fc.Arbitrary<Assessment['treatment']> = fc.oneof(
  fc.constant<Assessment['treatment']>({ setting: 'ckd-not-on-dialysis' }),
  fc.constant<Assessment['treatment']>({ setting: 'hemodialysis', place: 'in-center', sessionHours: 4, ultrafiltrationLimitMlPerKgH: 10 }),
  fc.constant<Assessment['treatment']>({ setting: 'peritoneal-dialysis', method: 'capd' }),
  fc.integer({ min: 1, max: 400 }).map<Assessment['treatment']>(days => ({ setting: 'transplant', transplantedOn: addDays(today, -days) })),
);

/** Values around every cut-off. */
const values: Partial<Record<Analyte, readonly number[]>> = {
  potassium: [2.9, 3.4, 4.5, 5.1, 5.5, 5.6, 6.2, 6.6],
  phosphate: [1.8, 2.6, 4.4, 4.6, 5.4, 5.6, 7],
  albumin: [2.9, 3.7, 3.8, 4.2],
  prealbumin: [20, 29, 31],
  cholesterol: [90, 99, 101, 180],
  pth: [100, 400, 700],
  egfr: [12, 22, 38, 52, 70, 95],
  sodium: [124, 133, 139],
  calcium: [7, 9, 12.2],
  magnesium: [0.9, 1.5, 2],
  bicarbonate: [14, 20, 25],
  creatinine: [0.9, 2, 6],
};

const result: fc.Arbitrary<LabResult> = fc
  .tuple(fc.constantFrom(...(Object.keys(values) as Analyte[])), fc.nat(), fc.constantFrom(2, 20, 34, 36, 80, 100, 150, 200))
  .map(([analyte, at, days]) =>
    lab(analyte, values[analyte]![at % values[analyte]!.length]!, analytes[analyte].unit, addDays(today, -days), { confirmed: true }),
  );

const orNotKnown = <Value>(value: fc.Arbitrary<Value>) => fc.option(value, { nil: undefined });

/** What is taken, eaten beside meals and treated, each also with parts that nobody knows. */
const taken = fc.record({
  binders: fc.array(
    fc.record(
      {
        binder: fc.constantFrom(...binders.keys),
        unitMg: fc.constantFrom(500, 667, 1250),
        unitsPerDay: fc.constantFrom(3, 9),
      },
      { requiredKeys: ['binder'] },
    ),
    { maxLength: 3 },
  ),
  potassiumBinders: fc.array(
    fc.record(
      { binder: fc.constantFrom(...potassiumBinders.keys), gPerDay: fc.constantFrom(5, 15), daysPerWeek: fc.constantFrom(3, 7) },
      { requiredKeys: ['binder'] },
    ),
    { maxLength: 2 },
  ),
  addedFoods: fc.array(
    fc.record(
      {
        food: fc.constantFrom(...addedFoods.keys),
        energyKcal: fc.constantFrom(400, 1500),
        proteinG: fc.constantFrom(10, 60),
        sodiumMg: fc.constantFrom(0, 900),
        potassiumMg: fc.constantFrom(0, 900),
        calciumMg: fc.constantFrom(0, 1200),
        daysPerWeek: fc.constantFrom(2, 7),
      },
      { requiredKeys: ['food'] },
    ),
    { maxLength: 3 },
  ),
  sessions: fc.array(
    fc.record(
      {
        on: fc.constantFrom(2, 2, 9, 20).map(days => addDays(today, -days)),
        gainKg: fc.constantFrom(0.5, 4.5),
        removedL: fc.constantFrom(1, 4),
        hours: fc.constantFrom(3, 8),
      },
      { requiredKeys: ['on'] },
    ),
    { maxLength: 4 },
  ),
});

const client: fc.Arbitrary<Assessment> = fc
  .record({
    treatment,
    taken,
    holdsAdded: orNotKnown(fc.boolean()),
    proteinG: orNotKnown(fc.constantFrom(20, 40, 90)),
    medicines: fc.subarray<MedicineClass>(['phosphate-binder', 'loop-diuretic', 'statin', 'active-vitamin-d']),
    labs: fc.array(result, { maxLength: 14 }),
    kg: fc.integer({ min: 45, max: 110 }),
    cm: fc.integer({ min: 155, max: 190 }),
    diabetes: fc.boolean(),
    conditions: fc.subarray<Condition>([
      ...(['edema', 'frail', 'calcium-oxalate-stones', 'hypotension', 'overload'] as const),
      ...(['gout', 'gastroparesis', 'swallowing-difficulty', 'vegan-eating', 'bariatric-surgery', 'short-of-food'] as const),
    ]),
    stage: fc.option(fc.constantFrom<GfrCategory>('G2', 'G3b', 'G4', 'G5'), { nil: undefined }),
    appetite: fc.constantFrom('good' as const, 'poor' as const),
    energyKcal: fc.option(fc.integer({ min: 900, max: 2400 }), { nil: undefined }),
    twoEgfr: fc.option(fc.tuple(fc.constantFrom(...values.egfr!), fc.constantFrom(...values.egfr!)), { nil: undefined }),
    oldPhosphate: fc.option(fc.constantFrom(100, 200), { nil: undefined }),
    urine: fc.option(fc.oneof(fc.constant(0), fc.integer({ min: 20, max: 2500 })), { nil: undefined }),
    causes: fc.option(fc.constantFrom(1, 30, 60), { nil: undefined }),
    cut: fc.option(fc.constantFrom(1, 30, 60), { nil: undefined }),
  })
  .map(
    ({
      kg,
      cm,
      stage,
      energyKcal,
      proteinG,
      holdsAdded,
      taken: { sessions, ...lists },
      treatment: given,
      urine,
      causes,
      cut,
      twoEgfr,
      oldPhosphate,
      labs,
      ...rest
    }) =>
      clientWith({
        ...rest,
        ...lists,
        treatment: given.setting === 'hemodialysis' ? { ...given, sessions } : given,
        labs: [
          ...labs.filter(({ analyte }) => oldPhosphate === undefined || analyte !== 'phosphate'),
          ...(oldPhosphate === undefined ? [] : [lab('phosphate', 6, 'mg/dL', addDays(today, -oldPhosphate))]),
          ...(twoEgfr ?? []).map((value, at) => lab('egfr', value, analytes.egfr.unit, addDays(today, -20 - 110 * at))),
        ],
        height: { value: cm, unit: 'cm' },
        weighings: (['actual', 'dry', 'estimated-dry'] as const).map(kind => ({
          weight: { value: kg, unit: 'kg' as const },
          kind,
          on: '2026-06-10',
          unitConfirmed: true as const,
        })),
        ...(stage === undefined ? {} : { stage: { value: stage, on: '2026-01-01' } }),
        intake: {
          ...(energyKcal === undefined ? {} : { energyKcal }),
          ...(proteinG === undefined ? {} : { proteinG }),
          ...(holdsAdded === undefined ? {} : { holdsAdded }),
        },
        ...(urine === undefined ? {} : { urineMlPerDay: { value: urine, on: '2026-06-01' } }),
        potassiumSteps: {
          ...(causes === undefined ? {} : { causesCheckedOn: addDays(today, -causes) }),
          ...(cut === undefined ? {} : { additivesCutOn: addDays(today, -cut) }),
        },
      }),
  );

/** The upper end that a client is held to; none where nothing is proposed, nor where a need is. A lower one is stricter. */
function ceiling(target: Target): number {
  return target.kind === 'proposed' && target.limit !== 'at-least' ? target.range.hi : Number.POSITIVE_INFINITY;
}

function targetsOf(assessment: Assessment): Readonly<Record<TargetItem, Target>> {
  const proposal = proposePrescription(assessment, today);
  if (proposal.kind === 'barred') throw new Error(proposal.issues.map(({ told }) => told).join(' '));
  return proposal.targets;
}

const takenLists = ['binders', 'potassiumBinders', 'addedFoods'] as const;

/** What can be left out or grow old: all results of one analyte, or a history. The rule page lists what the law does not hold for. */
const parts = [...(Object.keys(values) as Analyte[]), 'weights', 'urine', 'appetite', 'intake', 'sessions', ...takenLists] as const;
type Part = (typeof parts)[number];

function withSessions(treated: Assessment['treatment'], change: (all: readonly Session[]) => readonly Session[]): Assessment['treatment'] {
  return treated.setting === 'hemodialysis' ? { ...treated, sessions: change(treated.sessions ?? []) } : treated;
}

function without(whole: Assessment, part: Part): Assessment {
  const { urineMlPerDay, appetite, intake, ...rest } = whole;
  switch (part) {
    case 'weights':
      return { ...whole, weighings: [] };
    case 'urine':
      return { ...rest, ...(appetite && { appetite }), ...(intake && { intake }) };
    case 'sessions':
      return { ...whole, treatment: withSessions(whole.treatment, () => []) };
    case 'binders':
    case 'potassiumBinders':
    case 'addedFoods':
      return { ...whole, [part]: [] };
    case 'appetite':
      return { ...rest, ...(urineMlPerDay && { urineMlPerDay }), ...(intake && { intake }) };
    case 'intake':
      return { ...rest, ...(urineMlPerDay && { urineMlPerDay }), ...(appetite && { appetite }) };
    default:
      return { ...whole, labs: whole.labs.filter(({ analyte }) => analyte !== part) };
  }
}

function older(whole: Assessment, part: Part, days: number): Assessment {
  switch (part) {
    case 'weights':
      return { ...whole, weighings: whole.weighings.map(one => ({ ...one, on: addDays(one.on, -days) })) };
    case 'urine':
      return whole.urineMlPerDay === undefined
        ? whole
        : { ...whole, urineMlPerDay: { ...whole.urineMlPerDay, on: addDays(whole.urineMlPerDay.on, -days) } };
    case 'sessions':
      return { ...whole, treatment: withSessions(whole.treatment, all => all.map(one => ({ ...one, on: addDays(one.on, -days) }))) };
    case 'appetite':
    case 'intake':
    case 'binders':
    case 'potassiumBinders':
    case 'addedFoods':
      return { ...whole, on: addDays(whole.on, -days) };
    default:
      return {
        ...whole,
        labs: whole.labs.map(one => (one.analyte === part ? { ...one, takenOn: addDays(one.takenOn, -days) } : one)),
      };
  }
}

/** The exceptions of the rule page: the one fact that stops a restriction, and the result that makes a milder stage. */
function isExcepted(before: Assessment, after: Assessment): boolean {
  const [was, is] = [before, after].map(one => checkAssessment(one, today).facts) as [ClientFacts, ClientFacts];
  const isUnblocked = wastingState(was).blocks.length > 0 && wastingState(is).blocks.length === 0;
  const [milder, stage] = [stageOf(was), stageOf(is)];
  return isUnblocked || (milder !== stage && stage !== undefined);
}

it('[CLT-15] leaving out a measured value or a history never makes a ceiling lower', () => {
  fc.assert(
    fc.property(client, fc.constantFrom(...parts), (whole, part) => {
      const less = without(whole, part);
      if (isExcepted(whole, less)) return;
      const [before, after] = [targetsOf(whole), targetsOf(less)];
      for (const item of targetItems) expect(ceiling(after[item]), `${item} without ${part}`).toBeGreaterThanOrEqual(ceiling(before[item]));
    }),
    { numRuns: runs },
  );
});

it('[CLT-15] making a measured value or a history older never makes a ceiling lower', () => {
  fc.assert(
    fc.property(client, fc.constantFrom(...parts), fc.constantFrom(5, 20, 50, 95), (given, part, days) => {
      // The order of a result and a mark is a mark of its own: it is listed on the rule page.
      const { potassiumSteps: _, ...whole } = given;
      const aged = older(whole, part, days);
      if (stageOf(checkAssessment(whole, today).facts) !== stageOf(checkAssessment(aged, today).facts)) return;
      const [before, after] = [proposePrescription(whole, today), proposePrescription(aged, today)];
      if (before.kind === 'barred' || after.kind === 'barred') return;
      for (const item of targetItems)
        expect(ceiling(after.targets[item]), `${item} with older ${part}`).toBeGreaterThanOrEqual(ceiling(before.targets[item]));
    }),
    { numRuns: runs },
  );
});

it('[CLT-18] the order of facts changes nothing', () => {
  fc.assert(
    fc.property(client, fc.infiniteStream(fc.nat()), (whole, dice) => {
      const shuffled = <One>(list: readonly One[]): One[] =>
        list
          .map(one => ({ one, at: dice.next().value as number }))
          .sort((a, b) => a.at - b.at)
          .map(({ one }) => one);
      const mixed = {
        ...whole,
        labs: shuffled(whole.labs),
        weighings: shuffled(whole.weighings),
        conditions: shuffled(whole.conditions),
        ...{ binders: shuffled(whole.binders ?? []), potassiumBinders: shuffled(whole.potassiumBinders ?? []) },
        ...{ addedFoods: shuffled(whole.addedFoods ?? []), treatment: withSessions(whole.treatment, shuffled) },
      };
      expect(proposePrescription(mixed, today)).toEqual(proposePrescription(whole, today));
      expect(nextChecks(mixed, today)).toEqual(nextChecks(whole, today));
    }),
    { numRuns: runs },
  );
});

const alarming: readonly (readonly [Analyte, number])[] = [
  ['potassium', 6.6],
  ['potassium', 6.1],
  ['potassium', 2.4],
  ['sodium', 118],
  ['bicarbonate', 14],
  ['calcium', 12.6],
  ['magnesium', 0.9],
  ['phosphate', 0.8],
];

it('[CLT-19] an alarm of a value in date is never silenced by older, hemolyzed or after-dialysis results, or by any other fact', () => {
  const older = fc.array(
    fc.tuple(fc.constantFrom(2.3, 4.4, 6.9), fc.constantFrom(1, 20, 46, 90), fc.constantFrom('clean', 'hemolyzed', 'after')),
    {
      maxLength: 4,
    },
  );
  fc.assert(
    fc.property(client, fc.constantFrom(...alarming), fc.nat({ max: 45 }), fc.boolean(), fc.boolean(), older, (whole, ...given) => {
      const [[analyte, value], days, isFollowed, isMarked, before] = given;
      const on = addDays(today, -days);
      const { unit } = analytes[analyte];
      const mark = (how: string): Partial<LabResult> =>
        how === 'hemolyzed' ? { hemolyzed: true } : how === 'after' ? { drawn: 'after-dialysis' } : {};
      const isHighPotassium = analyte === 'potassium' && value > 5;
      // A hemolyzed alarm is one all the same; what came before it, however marked and however old, takes nothing from it.
      const alarm = lab(analyte, value, unit, on, isMarked && isHighPotassium ? { hemolyzed: true } : {});
      const earlier = before.map(([level, age, how]) => lab('potassium', level, 'mmol/L', addDays(on, -age), mark(how)));
      const marked = isFollowed && isHighPotassium ? [lab(analyte, 4.2, unit, addDays(on, Math.min(days, 1)), { hemolyzed: true })] : [];
      const others = whole.labs.filter(one => one.analyte !== 'albumin' && one.analyte !== analyte);
      const hemodialysis = { setting: 'hemodialysis', place: 'in-center' } as const;
      const { cautions } = proposePrescription(
        {
          ...whole,
          ...(before.some(([, , how]) => how === 'after') ? { treatment: hemodialysis } : {}),
          labs: [...others, ...(analyte === 'potassium' ? earlier : []), alarm, ...marked],
        },
        today,
      );
      // The value itself, or the more urgent one of the same analyte that stands beside it.
      const told = cautions.filter(
        ({ id, contact, because }) =>
          contact !== undefined && (because.includes(`${value} ${unit} (on ${on}`) || (id === 'potassium-6.5' && analyte === 'potassium')),
      );
      expect(told.length, `${analyte} ${value} of ${on}`).toBeGreaterThan(0);
      // As of now while it is young, however old what came before it is.
      if (days <= 7) expect(told.some(one => one.told !== actedOn)).toBe(true);
    }),
    { numRuns: runs },
  );
});

/** Kinds, ranges and alarms without the words, which tell each value as it was entered. */
function figuresOf(assessment: Assessment) {
  const proposal = proposePrescription(assessment, today);
  if (proposal.kind === 'barred') return proposal.issues.map(({ code }) => code);
  const targets = targetItems.map(item => {
    const target = proposal.targets[item];
    return target.kind === 'proposed' ? [item, target.range, target.limit, target.says] : [item, target.kind];
  });
  return { targets, cautions: proposal.cautions.map(({ id, contact }) => [id, contact]), blocks: proposal.wasting.blocks.length };
}

it('[CLT-16] changing the units of results, weights and height never changes a result', () => {
  fc.assert(
    fc.property(client, fc.infiniteStream(fc.nat()), (whole, dice) => {
      const roll = (count: number) => dice.next().value % count;
      const labs = whole.labs.map(one => {
        const units = unitsOf(analytes[one.analyte]);
        const unit = units[roll(units.length)]!;
        const value = labInUnit(one.analyte, one.value, unit);
        return value.kind === 'computed' ? { ...one, unit, value: value.value } : one;
      });
      const weighings = whole.weighings.map(one => ({
        ...one,
        weight: roll(2) === 0 ? one.weight : { value: one.weight.value / 0.45359237, unit: 'lb' as const },
      }));
      const cm = (whole.height as { value: number }).value;
      const inches = cm / 2.54;
      const height = [
        { value: cm, unit: 'cm' as const },
        { value: inches, unit: 'in' as const },
        { value: cm / 100, unit: 'm' as const },
        { feet: Math.floor(inches / 12), inches: inches % 12 },
      ][roll(4)]!;
      expect(figuresOf({ ...whole, labs, weighings, height })).toEqual(figuresOf(whole));
    }),
    { numRuns: runs },
  );
});

it('[CLT-11] the stage alone never limits potassium or phosphorus', () => {
  fc.assert(
    fc.property(client, whole => {
      const targets = targetsOf({ ...whole, labs: [] });
      for (const item of ['potassium', 'phosphorus', 'potassiumAdditives', 'phosphateAdditives'] as const) {
        expect(targets[item].kind).not.toBe('proposed');
      }
    }),
    { numRuns: runs },
  );
});

it('[CLT-12] potassium is never limited before the other causes are checked', () => {
  fc.assert(
    fc.property(client, whole => {
      const targets = targetsOf({ ...whole, potassiumSteps: { additivesCutOn: '2026-05-01' } });
      expect(targets.potassium.kind).not.toBe('proposed');
    }),
    { numRuns: runs },
  );
});

it('[CLT-13] while wasting or losing weight, protein, energy, potassium and phosphorus are not restricted', () => {
  fc.assert(
    fc.property(client, whole => {
      const targets = targetsOf({ ...whole, weightLoss: { percent3Months: 6 } });
      expect(targets.potassium.kind).not.toBe('proposed');
      expect(targets.phosphorus.kind).not.toBe('proposed');
      if (whole.treatment.setting === 'ckd-not-on-dialysis') expect(targets.protein.kind).not.toBe('proposed');
      expect(ceiling(targets.energy)).toBe(Number.POSITIVE_INFINITY);
    }),
    { numRuns: runs },
  );
});
