import type { DrawnTime } from '#core/client/assessment/vocabularies.ts';
import { type Analyte, analyteFacts, analyteKeys } from './analytes.ts';
import { drawnFromWords } from './readLabResult.ts';

/**
 * What laboratories print beside the key and the name of an analyte, parted by " | " (common practice, no source). Three stand nowhere: urea is no urea nitrogen, Kt/V alone
 * is of a session or of a week, and a spot urine is no urine of a day.
 */
const printed: Readonly<Record<Analyte, string>> = {
  potassium: 'K | potassium, whole blood',
  sodium: 'Na',
  chloride: 'Cl',
  bicarbonate:
    'HCO3 | bicarb | CO2 | total CO2 | TCO2 | CO2, total | carbon dioxide | carbon dioxide, total | total carbon dioxide | bicarbonate (CO2)',
  phosphate:
    'P | phos | PO4 | phosphorus | inorganic phosphorus | phosphorus, inorganic | inorganic phosphate | phosphate, inorganic | phosphate (phosphorus)',
  calcium: 'Ca | calcium | total calcium | Ca, total',
  correctedCalcium:
    'corrected calcium | adjusted calcium | calcium, adjusted | corrected Ca | Ca, corrected | albumin corrected calcium | calcium, albumin corrected | calcium, corrected for albumin',
  ionizedCalcium:
    'ionized calcium | ionised calcium | calcium, ionised | iCa | Ca, ionized | free calcium | calcium ionized, whole blood | calcium.ionized',
  pth: 'iPTH | intact PTH | parathyroid hormone | parathyroid hormone, intact | intact parathyroid hormone | parathyrin, intact | parathyrin.intact',
  albumin: 'Alb',
  prealbumin: 'pre-albumin | PAB | transthyretin',
  cholesterol: 'cholesterol | total cholesterol | chol | chol, total',
  ureaNitrogen: 'BUN | urea nitrogen | blood urea nitrogen | urea nitrogen, blood',
  creatinine: 'creat | Cr | SCr',
  egfr: 'GFR | GFR, estimated | estimated GFR | est GFR | GFR, est | eGFR CKD-EPI | eGFR (CKD-EPI 2021) | eGFRcr | glomerular filtration rate, estimated | estimated glomerular filtration rate',
  hba1c: 'A1c | Hgb A1c | hemoglobin A1c | haemoglobin A1c | glycated hemoglobin | glycohemoglobin | hemoglobin A1c/hemoglobin.total',
  glucose: 'Glu | Gluc | glucose, fasting | fasting glucose | glucose, random | random glucose | blood glucose | glucose, blood',
  hemoglobin: 'Hb | Hgb | haemoglobin',
  ferritin: 'ferritin level',
  transferrinSaturation:
    'TSAT | transferrin sat | transferrin saturation % | iron saturation | iron saturation % | % iron saturation | iron % saturation | TSAT %',
  magnesium: 'Mg | Mag',
  cReactiveProtein: 'CRP | hs-CRP | CRP, high sensitivity | C reactive protein, high sensitivity',
  urate: 'uric acid',
  vitaminD25:
    '25-OH vit D | vitamin D 25-OH | vitamin D, 25-hydroxy | 25-hydroxy vitamin D | 25-hydroxyvitamin D | vit D 25-OH | 25(OH)D | vitamin D, 25-OH, total | 25-hydroxyvitamin D3+D2',
  urineAcr:
    'ACR | UACR | urine ACR | albumin/creatinine ratio | albumin/creatinine ratio, urine | urine albumin/creatinine ratio | microalbumin/creatinine ratio | microalbumin/creatinine ratio, urine | albumin/creat ratio | microalb/creat ratio | urine albumin/creat ratio',
  urineSodium: 'sodium, 24 h urine | 24 h urine sodium | sodium, urine 24 h',
  urinePotassium: 'potassium, 24 h urine | 24 h urine potassium | potassium, urine 24 h',
  urineUreaNitrogen: 'urea nitrogen, 24 h urine | 24 h urine urea nitrogen | urea nitrogen, urine 24 h | UUN, 24 h',
  spKtV: 'spKt/V, single pool | Kt/V, single pool | single pool Kt/V | Kt/V (sp) | spKt/V (Daugirdas)',
  weeklyKtV: 'weekly Kt/V | total weekly Kt/V | Kt/V, weekly | Kt/V weekly total | weekly Kt/V, total',
  ureaReduction: 'URR',
  proteinCatabolicRate: 'normalized PCR | nPNA | protein catabolic rate, normalized | normalized protein catabolic rate',
};

const byName: ReadonlyMap<string, Analyte> = new Map(
  analyteKeys.flatMap(key => [key, analyteFacts(key).name, ...printed[key].split(' | ')].map(words => [bare(words), key] as const)),
);

export interface NamedAnalyte {
  readonly analyte: Analyte;
  /** The name says when the sample was drawn. */
  readonly drawn?: DrawnTime;
}

/**
 * The analyte that a laboratory names: "K+", "Potassium, Serum", "PHOS", "Pre BUN" (drawn before dialysis), "Potassium [Moles/volume] in Serum or Plasma" (LOINC's long name).
 * Undefined for any other name: "Potassium, Urine" is none of the blood, "Ca x P" is a product.
 */
export function analyteNamed(words: string): NamedAnalyte | undefined {
  const plain = words
    .normalize('NFKC')
    // LOINC: what is measured, then [kind of quantity], then "in" what.
    .replace(/\s*\[[^\]]*\](?=\s+in\b)/u, ' ')
    .replace(/\s+in serum(?:,? plasma)?(?: or (?:plasma|blood))*\s*$|\s+in blood\s*$/iu, '')
    // The charge of an ion: K+, Ca++, Ca2+, HCO3-.
    .replace(/^([A-Za-z]{1,3}3?)\s*(?:2\s?[+]|[+]{1,2}|[-−])$/u, '$1');
  const whole = named(plain);
  if (whole !== undefined) return { analyte: whole };
  const drawn = drawnFromWords(plain);
  if (drawn === undefined) return undefined;
  const analyte = named(
    plain.replace(/\b(?:pre|post|before|after|predialysis|postdialysis)\b[-\s]*(?:hemodialysis|dialysis|HD|treatment|tx)?/iu, ' '),
  );
  return analyte === undefined ? undefined : { analyte, drawn };
}

/** By the whole name, or by it without the specimen that is understood. */
function named(words: string): Analyte | undefined {
  return byName.get(bare(words)) ?? byName.get(bare(words.replace(/\b(?:serum|plasma|ser\/plas|level)\b|,\s*S$/giu, ' ')));
}

function bare(words: string): string {
  return words.toLowerCase().replace(/[^\p{L}\p{N}%]/gu, '');
}
