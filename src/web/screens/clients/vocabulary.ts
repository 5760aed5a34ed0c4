import { factWords } from '#core/client/assessment/factWords.ts';
import { missingPartPercent } from '#core/client/formulas/amputation.ts';

/** Words of the assessment form: keys as docs/formats.md has them, names as a dietitian reads them. */
export const settings = [
  ['ckd-not-on-dialysis', 'CKD not on dialysis'],
  ['hemodialysis', 'hemodialysis'],
  ['peritoneal-dialysis', 'peritoneal dialysis'],
  ['transplant', 'transplant'],
] as const;
export function settingName(key: string): string {
  return settings.find(([one]) => one === key)?.[1] ?? key;
}

export const weightKinds = [
  ['actual', 'actual'],
  ['dry', 'dry'],
  ['estimated-dry', 'estimated dry'],
  ['before-dialysis', 'before dialysis'],
  ['after-dialysis', 'after dialysis'],
  ['after-drain', 'after drain'],
  ['usual', 'usual'],
  ['before-admission', 'before admission'],
  ['goal', 'goal'],
  ['standard', 'standard (NHANES II)'],
] as const;
export const conditions = words(
  'edema, ascites, nephrotic-syndrome, overload, hypertension, hypotension, heart-failure, salt-losing-kidney-disease, ileostomy, calcium-oxalate-stones, frail, sarcopenia, acute-illness, critically-ill, alcohol-misuse, metabolically-unstable, peritonitis, in-hospital, new-feeding, fasting-for-faith, low-carbohydrate-diet',
);
export const missingParts = words(Object.keys(missingPartPercent).join(', '));
export const medicines = words(
  'raas-inhibitor, mineralocorticoid-antagonist, potassium-sparing-diuretic, tacrolimus, ciclosporin, sirolimus-or-everolimus, other-immunosuppressant, high-dose-steroid, vitamin-k-antagonist, digoxin, trimethoprim, heparin, nsaid, non-selective-beta-blocker, phosphate-binder, active-vitamin-d, calcimimetic, ketoanalogs, sglt2-inhibitor, insulin-or-sulfonylurea, insulin, diuretic, chemotherapy, potassium-salt',
);
export const supplements = words(
  'herbal, salt-substitute, high-dose-vitamin-c, vitamin-a, vitamin-k, magnesium-or-aluminum-antacid, creatine, sports-or-slimming-product, protein-powder, calcium',
);
export const symptoms = words(
  'palpitations, weakness, ecg-change, swelling, breathlessness, missed-or-shortened-session, ketones, cloudy-drain, abdominal-pain, fever, vomiting, diarrhea, missed-doses, constipation',
);

function words(list: string): readonly (readonly [string, string])[] {
  return list.split(', ').map(key => [key, factWords(key)]);
}
