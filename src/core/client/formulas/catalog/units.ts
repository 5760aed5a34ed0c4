import { type Analyte, analyteFacts } from '#core/client/labs/analytes.ts';
import { heightCmFrom, kilogramsPerPound } from '../bodyUnits.ts';
import { figure, optionalFigure } from './formulaInput.ts';
import { feetAndInches } from './readInput.ts';

/** Inputs that several formulas ask for, with the units and the possible range they have everywhere. */
export const kilograms = [
  ['kg', 1],
  ['lb', kilogramsPerPound],
] as const;

const centimeters = [
  ['cm', 1],
  [feetAndInches, heightCmFrom({ value: 1, unit: 'in' })],
  ['in', heightCmFrom({ value: 1, unit: 'in' })],
  ['m', heightCmFrom({ value: 1, unit: 'm' })],
] as const;

export const noUnit = [['', 1]] as const;
export const percent = [['%', 1]] as const;
export const hours = [['h', 1]] as const;
export const grams = [['g', 1]] as const;
export const gramsPerDay = [['g/day', 1]] as const;
export const milligrams = [['mg', 1]] as const;
export const liters = [['L', 1]] as const;

export const weight = (label: string, help?: string) => figure(label, kilograms, 20, 400, help);
export const height = (label = 'Height') => figure(label, centimeters, 100, 250);

/** The units that a laboratory result comes in, canonical first. */
export function labUnits(analyte: Analyte): readonly (readonly [string, number])[] {
  const { unit, from } = analyteFacts(analyte);
  return [[unit, 1], ...Object.entries(from)];
}

export const albumin = () => figure('Albumin', labUnits('albumin'), 0.5, 7);
export const optionalAlbumin = (help: string) => optionalFigure('Albumin', labUnits('albumin'), 0.5, 7, help);
export const ureaNitrogenInBlood = (label: string) => figure(label, labUnits('ureaNitrogen'), 1, 300);
