import { type CareRules, careFigureIds, careFigures, usualCareRules } from '#core/client/rules/careRules.ts';
import { careRulesFromJson } from '#core/client/rules/careRulesFromJson.ts';
import { Fault } from '#core/errors.ts';
import type { ClientJson, ClientVault } from '../clientVault.ts';

/** The one record of the vault that is no client: sealed, exported and erased with them. */
export const clinicFiguresId = 'clinic-figures';

export function isClient({ id }: ClientJson): boolean {
  return id !== clinicFiguresId;
}

/** What the clinic has set, oldest first; the usual figures where nothing is. @throws Fault clients-locked, client-record-damaged */
export async function clinicFigures(vault: ClientVault): Promise<{ readonly version: number; readonly rules: CareRules }> {
  const record = await vault.get(clinicFiguresId);
  if (record === undefined) return { version: 0, rules: usualCareRules };
  const { value } = careRulesFromJson(record.figures);
  if (value === undefined) throw new Fault('client-record-damaged', 'The figures of the clinic cannot be read.');
  return { version: record.version, rules: value };
}

/** The clinic's figures, while the vault is locked the usual ones: a draft may be typed then. */
export async function rulesOrUsual(vault: ClientVault): Promise<CareRules> {
  return vault.state() === 'open' ? (await clinicFigures(vault)).rules : usualCareRules;
}

/** Adds one figure; what was set before stays on record. @throws Fault care-figure-not-valid, changed-meanwhile, clients-locked */
export async function setClinicFigure(figure: unknown, seenVersion: number, vault: ClientVault): Promise<void> {
  const { value, issues } = careRulesFromJson([figure]);
  if (value === undefined) {
    const told = issues.map(({ place, expected }) => `${place.heading ?? 'the figure'}: expected ${expected}`);
    throw new Fault('care-figure-not-valid', told.join('; '));
  }
  const { rules } = await clinicFigures(vault);
  await vault.put({ id: clinicFiguresId, version: 0, figures: [...rules, ...value] }, seenVersion === 0 ? null : seenVersion);
}

/** Every figure with its usual value and, where the clinic has set one, that value with who and when. */
export function describeClinicFigures({ version, rules }: { readonly version: number; readonly rules: CareRules }) {
  return {
    version,
    figures: careFigureIds.map(id => {
      const set = rules.findLast(one => one.id === id);
      return { id: id as string, ...careFigures[id], ...(set === undefined ? {} : { set: { value: set.value, by: set.by, on: set.on } }) };
    }),
  };
}
