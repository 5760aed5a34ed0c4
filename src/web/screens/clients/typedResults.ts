import type { AssessmentJson } from '#core/client/assessment/assessment.ts';
import type { DrawnTime, WeightKind } from '#core/client/assessment/vocabularies.ts';
import type { Analyte } from '#core/client/labs/analytes.ts';

type LabResult = AssessmentJson['labs'][number];
type Weighing = AssessmentJson['weighings'][number];
type Bag = NonNullable<Extract<AssessmentJson['treatment'], { setting: 'peritoneal-dialysis' }>['bags']>[number];

/** Every figure as it is typed, with its unit beside it. */
export interface TypedWeighing {
  readonly value: string;
  readonly unit: Weighing['weight']['unit'];
  readonly kind: WeightKind;
  readonly on: string;
  readonly unitConfirmed: boolean;
}

export interface TypedLab {
  readonly analyte: Analyte;
  readonly value: string;
  readonly unit: string;
  readonly takenOn: string;
  readonly takenAt: string;
  /** Before or after dialysis; empty when not known. */
  readonly drawn: DrawnTime | '';
  readonly lowerNormal: string;
  readonly upperNormal: string;
  readonly hemolyzed: boolean;
  /** The person has answered that value and unit are right. */
  readonly confirmed: boolean;
}

/** A dialysate bag of the day. */
export interface TypedBag {
  readonly liters: string;
  readonly percent: string;
  readonly labeledAs: Bag['labeledAs'];
}

/** Rows without a value are no result and no weight. */
export function isTyped({ value }: { readonly value: string }): boolean {
  return value.trim() !== '';
}

export function typedWeighing({ weight, kind, on, unitConfirmed }: Weighing): TypedWeighing {
  return { value: text(weight.value), unit: weight.unit, kind, on, unitConfirmed: unitConfirmed === true };
}

export function weighingsOf(rows: readonly TypedWeighing[]): readonly Weighing[] {
  return rows.filter(isTyped).map(({ value, unit, kind, on, unitConfirmed }) => ({
    weight: { value: Number(value), unit },
    kind,
    on,
    ...(unitConfirmed ? { unitConfirmed } : {}),
  }));
}

/** A result as a file or an earlier assessment has it, ready to be changed. */
export function typedLab(lab: Omit<LabResult, 'value'> & { readonly value?: number }): TypedLab {
  const { analyte, value, unit, takenOn, takenAt = '', drawn = '', lowerNormal, upperNormal, hemolyzed, confirmed } = lab;
  return {
    ...{ analyte, value: text(value), unit, takenOn, takenAt, drawn },
    ...{ lowerNormal: text(lowerNormal), upperNormal: text(upperNormal) },
    ...{ hemolyzed: hemolyzed === true, confirmed: confirmed === true },
  };
}

export function blankWeighing(today: string): TypedWeighing {
  return { value: '', unit: 'kg', kind: 'actual', on: today, unitConfirmed: false };
}

export function blankBag(): TypedBag {
  return { liters: '', percent: '', labeledAs: 'dextrose' };
}

/** A row to begin with. */
export function blankLab(today: string): TypedLab {
  return typedLab({ analyte: 'potassium', unit: 'mmol/L', takenOn: today });
}

export function labsOf(rows: readonly TypedLab[]): readonly LabResult[] {
  return rows.filter(isTyped).map(({ analyte, value, unit, takenOn, takenAt, drawn, lowerNormal, upperNormal, hemolyzed, confirmed }) => ({
    ...{ analyte, value: Number(value), unit, takenOn },
    ...(takenAt.trim() === '' ? {} : { takenAt: takenAt.trim() }),
    ...(drawn === '' ? {} : { drawn }),
    ...(lowerNormal.trim() === '' ? {} : { lowerNormal: Number(lowerNormal) }),
    ...(upperNormal.trim() === '' ? {} : { upperNormal: Number(upperNormal) }),
    ...(hemolyzed ? { hemolyzed } : {}),
    ...(confirmed ? { confirmed } : {}),
  }));
}

export function typedBag({ liters, percent, labeledAs }: Bag): TypedBag {
  return { liters: text(liters), percent: text(percent), labeledAs };
}

/** Undefined where nothing is typed. */
export function bagsOf(rows: readonly TypedBag[]): readonly Bag[] | undefined {
  const filled = rows.filter(({ liters, percent }) => `${liters}${percent}`.trim() !== '');
  if (filled.length === 0) return undefined;
  return filled.map(({ liters, percent, labeledAs }) => ({ liters: figure(liters), percent: figure(percent), labeledAs }));
}

function text(value: number | undefined): string {
  return value === undefined ? '' : String(value);
}

/** As typed; what is empty is not zero: it travels as no number and is refused with its place. */
function figure(typed: string): number {
  return typed.trim() === '' ? Number.NaN : Number(typed);
}
