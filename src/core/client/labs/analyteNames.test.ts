import { describe, expect, test } from 'vitest';
import { analyteNamed } from './analyteNames.ts';

describe('the name of a result, as laboratories print it (common practice, no source)', () => {
  test.each([
    ['K+', 'potassium'],
    ['K', 'potassium'],
    ['Potassium, Serum', 'potassium'],
    ['POTASSIUM LEVEL', 'potassium'],
    ['Serum potassium', 'potassium'],
    ['Na+', 'sodium'],
    ['Cl-', 'chloride'],
    ['HCO3-', 'bicarbonate'],
    ['CO2, Total', 'bicarbonate'],
    ['Phosphorus', 'phosphate'],
    ['PHOS', 'phosphate'],
    ['P', 'phosphate'],
    ['Phosphorus, inorganic', 'phosphate'],
    ['PO4', 'phosphate'],
    ['Calcium', 'calcium'],
    ['Ca2+', 'calcium'],
    ['Ca++', 'calcium'],
    ['Calcium, Total', 'calcium'],
    ['Corrected Calcium', 'correctedCalcium'],
    ['Calcium, Ionized', 'ionizedCalcium'],
    ['iPTH', 'pth'],
    ['PTH, Intact', 'pth'],
    ['Intact PTH', 'pth'],
    ['Albumin', 'albumin'],
    ['Pre-albumin', 'prealbumin'],
    ['BUN', 'ureaNitrogen'],
    ['Urea Nitrogen (BUN)', 'ureaNitrogen'],
    ['Creatinine, S', 'creatinine'],
    ['eGFR', 'egfr'],
    ['HbA1c', 'hba1c'],
    ['Hemoglobin A1c', 'hba1c'],
    ['Hgb', 'hemoglobin'],
    ['Glucose, Fasting', 'glucose'],
    ['Iron Saturation %', 'transferrinSaturation'],
    ['Mg2+', 'magnesium'],
    ['Uric Acid', 'urate'],
    ['Vitamin D, 25-Hydroxy', 'vitaminD25'],
    ['Albumin/Creatinine Ratio, Urine', 'urineAcr'],
    ['spKt/V', 'spKtV'],
    ['nPCR', 'proteinCatabolicRate'],
    ['URR', 'ureaReduction'],
    // LOINC's long common names (loinc.org), from memory.
    ['Potassium [Moles/volume] in Serum or Plasma', 'potassium'],
    ['Phosphate [Mass/volume] in Serum or Plasma', 'phosphate'],
    ['Urea nitrogen [Mass/volume] in Serum or Plasma', 'ureaNitrogen'],
    ['Hemoglobin [Mass/volume] in Blood', 'hemoglobin'],
    ['Hemoglobin A1c/Hemoglobin.total in Blood', 'hba1c'],
    ['Parathyrin.intact [Mass/volume] in Serum or Plasma', 'pth'],
  ])('%s is %s', (words, analyte) => {
    expect(analyteNamed(words)).toEqual({ analyte });
  });

  test.each([
    ['Pre BUN', 'ureaNitrogen', 'before-dialysis'],
    ['BUN, Post-dialysis', 'ureaNitrogen', 'after-dialysis'],
    ['Potassium (pre HD)', 'potassium', 'before-dialysis'],
    ['Post K+', 'potassium', 'after-dialysis'],
  ])('%s is %s, %s', (words, analyte, drawn) => {
    expect(analyteNamed(words)).toEqual({ analyte, drawn });
  });

  test.each([
    '',
    'Urea',
    'Kt/V',
    'Potassium, Urine',
    'Creatinine, Urine',
    'Creatinine clearance',
    'Sodium, random urine',
    'Ca x P',
    'Ca*P product',
    'Alkaline Phosphatase',
    'Alk Phos',
    'pCO2',
    'Hemoglobin electrophoresis',
    'Microalbumin',
    'Albumin, Urine',
    'PTH-related peptide',
    'Glucose, Urine',
    'Potassium, Dialysate',
    'Pre weight',
    'Total protein',
    'constructor',
  ])('%j is none of them', words => {
    expect(analyteNamed(words)).toBeUndefined();
  });
});
