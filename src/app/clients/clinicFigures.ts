import { careFigureIds, careFigures } from '#core/client/rules/careFigures.ts';
import { type CareRules, usualCareRules } from '#core/client/rules/careRules.ts';
import { careRulesFromJson } from '#core/client/rules/careRulesJson.ts';
import { type KeptCareRules, keptCareRulesFromJson, keptCareRulesToJson } from '#core/client/rules/keptCareRules.ts';
import { Fault } from '#core/errors.ts';
import { isNewerForm } from '#core/json/presentForm.ts';
import type { ClientJson, ClientVault } from '../clientVault.ts';

/** The one record of the vault that is no client: sealed, exported and erased with them. */
const clinicFiguresId = 'clinic-figures';

export function isClient({ id }: ClientJson): boolean {
  return id !== clinicFiguresId;
}

/** What the clinic has set, oldest first; the usual figures where nothing is. @throws Fault clients-locked, client-record-damaged */
export async function clinicFigures(vault: ClientVault): Promise<KeptCareRules> {
  const record = await vault.get(clinicFiguresId);
  return record === undefined ? { version: 0, rules: usualCareRules } : wholeCareRules(record);
}

/** @throws Fault client-record-damaged, client-record-newer */
function wholeCareRules(json: unknown): KeptCareRules {
  const { value, issues } = keptCareRulesFromJson(json);
  if (isNewerForm(issues)) throw new Fault('client-record-newer', 'The figures of the clinic were written by a newer program.');
  if (value === undefined) throw new Fault('client-record-damaged', 'The figures of the clinic cannot be read.');
  return value;
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
  await vault.put(keptCareRulesToJson({ version: 0, rules: [...rules, ...value] }), seenVersion === 0 ? null : seenVersion);
}

/** Every figure with its usual value and, where the clinic has set one, that value with who and when. */
export function describeClinicFigures({ version, rules }: KeptCareRules) {
  return {
    version,
    figures: careFigureIds.map(id => {
      const set = rules.findLast(one => one.id === id);
      return { id, ...careFigures[id], ...(set === undefined ? {} : { set: { value: set.value, by: set.by, on: set.on } }) };
    }),
  };
}
