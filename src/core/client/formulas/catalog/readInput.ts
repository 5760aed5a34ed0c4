import { ceilTo, cleanFloat, floorTo } from '#core/quantity/rounding.ts';
import { withUnit } from './formulaResult.ts';

/** Why an input is not taken. Closed list. */
export const inputFaultCodes = [
  'input-missing',
  'input-not-known',
  'not-a-number',
  'no-unit',
  'unit-not-known',
  'impossible',
  'choice-not-known',
] as const;

export type InputFaultCode = (typeof inputFaultCodes)[number];

/** What stands in the way of an input, in the person's words. */
interface InputFault {
  readonly code: InputFaultCode;
  readonly found: string;
  readonly expected: string;
}

export type Read<Value> = { readonly ok: true; readonly value: Value } | { readonly ok: false; readonly fault: InputFault };

export const taken = <Value>(value: Value): Read<Value> => ({ ok: true, value });
export const notTaken = (code: InputFaultCode, found: string, expected: string): Read<never> => ({
  ok: false,
  fault: { code, found, expected },
});

/** A figure: the units it comes in, the first of them the one that the formula takes, each with its factor to that one. */
export interface FigureAsked<Unit extends string = string> {
  readonly label: string;
  readonly units: readonly (readonly [unit: Unit, factor: number])[];
  /** What a living adult or a real plan can have, in the first unit, both ends allowed. */
  readonly lo: number;
  readonly hi: number;
  readonly help?: string;
}

export interface Figure<Unit extends string> {
  readonly entered: number;
  readonly unit: Unit;
  /** In the first unit. */
  readonly canonical: number;
}

/** Feet with inches, as a height is told: a unit of its own whose figure is inches. */
export const feetAndInches = 'ft in';

/** What was given, to be quoted; an object in it may have no words of its own. */
export function asText(json: unknown): string {
  return typeof json === 'string' ? json : (JSON.stringify(json) ?? '');
}

export function isNothing(json: unknown): boolean {
  return json === undefined || json === null || (typeof json === 'string' && json.trim() === '');
}

/**
 * A figure from `72`, `"72 kg"`, `"5 ft 9 in"` or `{ "value": 72, "unit": "kg" }`. Where it may come in several units the unit is asked for,
 * never assumed. Commas are refused: 1,500 and 1,5 cannot be told apart.
 */
export function readFigure<Unit extends string>(json: unknown, asked: FigureAsked<Unit>): Read<Figure<Unit>> {
  const { text, unit: unitText } = partsOf(json);
  const shown = (typeof json === 'string' ? json.trim() : [text, unitText].filter(Boolean).join(' ')).slice(0, 40);
  if (text === '') return notTaken('input-missing', 'nothing', `a number${unitWords(asked)}`);
  const only = asked.units.length === 1 ? asked.units[0] : undefined;
  const found = unitText === '' ? only : asked.units.find(([unit]) => sameUnit(unit) === sameUnit(unitText));
  const value = found?.[0] === feetAndInches ? inchesOf(text) : numberOf(text);
  if (value === undefined) {
    return notTaken(
      'not-a-number',
      shown,
      found?.[0] === feetAndInches ? 'feet and inches, such as 5 ft 9 in' : 'a number, with a point for decimals',
    );
  }
  if (found === undefined) {
    const units = asked.units.map(([unit]) => unit || 'no unit').join(' or ');
    return unitText === '' ? notTaken('no-unit', shown, `its unit: ${units}`) : notTaken('unit-not-known', shown, `a figure in ${units}`);
  }
  const canonical = cleanFloat(value * found[1]);
  if (canonical >= asked.lo && canonical <= asked.hi) return taken({ entered: value, unit: found[0], canonical });
  const other = asked.units.find(([, factor]) => value * factor >= asked.lo && value * factor <= asked.hi)?.[0];
  return notTaken('impossible', shown, `${rangeWords(asked, found)}${other === undefined ? '' : `; was it ${other}?`}`);
}

/** The possible range in one of the units, its ends rounded inward: "20 to 400 kg", "44.1 to 881.8 lb". */
export function rangeWords({ lo, hi }: Pick<FigureAsked, 'lo' | 'hi'>, [unit, factor]: readonly [string, number]): string {
  const ends = (value: number, round: (value: number, decimals: number) => number) => {
    const inUnit = cleanFloat(value / factor);
    return factor === 1 ? inUnit : round(inUnit, Math.abs(inUnit) < 1 ? 3 : 1);
  };
  if (unit === feetAndInches) return `${feetWords(Math.ceil(lo / factor))} to ${feetWords(Math.floor(hi / factor))}`;
  return withUnit(`${ends(lo, ceilTo)} to ${ends(hi, floorTo)}`, unit);
}

function feetWords(inches: number): string {
  return `${Math.floor(inches / 12)} ft ${inches % 12} in`;
}

function unitWords({ units }: FigureAsked): string {
  return units.length === 1 && units[0]![0] === '' ? '' : ` in ${units.map(([unit]) => unit || 'no unit').join(' or ')}`;
}

function partsOf(json: unknown): { readonly text: string; readonly unit: string } {
  if (typeof json === 'number') return { text: String(json), unit: '' };
  if (typeof json === 'object' && json !== null && 'value' in json) {
    const unit = 'unit' in json && typeof json.unit === 'string' ? json.unit.trim() : '';
    const text = isNothing(json.value) ? '' : asText(json.value).trim();
    // Whoever types "72 kg" beside a unit that says kg has said it twice.
    const typed = typeof json.value === 'string' && unit !== feetAndInches ? partsOf(json.value) : undefined;
    return typed !== undefined && typed.unit !== '' && sameUnit(typed.unit) === sameUnit(unit) ? typed : { text, unit };
  }
  if (typeof json !== 'string') return { text: isNothing(json) ? '' : asText(json), unit: '' };
  const text = json.trim();
  if (/^\d+\s*(?:ft|')/.test(text)) return { text, unit: feetAndInches };
  const [, figure = text, unit = ''] = /^([+-]?\d*\.?\d+(?:e[+-]?\d+)?)\s*([^\d\s.,].*)?$/i.exec(text) ?? [];
  return { text: figure, unit: unit.trim() };
}

function numberOf(text: string): number | undefined {
  return /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i.test(text) && Number.isFinite(Number(text)) ? Number(text) : undefined;
}

/** "5 ft 9 in", "5' 9\"", "5 9" and "5 ft" in inches. */
function inchesOf(text: string): number | undefined {
  const [, feet, inches = '0'] = /^(\d{1,2})\s*(?:ft|')?\s*(?:(\d{1,2}(?:\.\d+)?)\s*(?:in|")?)?$/.exec(text) ?? [];
  return feet === undefined || Number(inches) >= 12 ? undefined : Number(feet) * 12 + Number(inches);
}

/** Letters as they come from a keyboard: µmol/L is umol/L, mg/dl is mg/dL. */
function sameUnit(unit: string): string {
  return unit.toLowerCase().replace(/[µμ]/g, 'u').replaceAll('²', '2').replaceAll('³', '3').replace(/\s+/g, '');
}
