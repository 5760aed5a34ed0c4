/**
 * The figures that a clinic may set by its own policy: how long a fact may be used, and from which value somebody is told. Each is an
 * own decision or a published value; its usual figure stands here, with what a clinic may set at the most and at the least.
 */
export interface CareFigure {
  readonly title: string;
  readonly unit: string;
  readonly usual: number;
  readonly lo: number;
  readonly hi: number;
  /** The published figure in the other unit, which is rounded apart: a result in that unit is held to it while the usual figure stands. */
  readonly si?: { readonly unit: string; readonly value: number };
}

const days = (title: string, usual: number): CareFigure => ({ title, unit: 'days', usual, lo: 1, hi: 1_000 });
const value = (title: string, unit: string, usual: number, lo: number, hi: number, siMmolPerL?: number): CareFigure => ({
  ...{ title, unit, usual, lo, hi },
  ...(siMmolPerL === undefined ? {} : { si: { unit: 'mmol/L', value: siMmolPerL } }),
});
const mmol = (title: string, usual: number, lo: number, hi: number): CareFigure => value(title, 'mmol/L', usual, lo, hi);

/** Care rules 1 and 2. A fact older than its age is shown and not used. */
export const careFigures = {
  'age.potassium.hemodialysis': days('Potassium, bicarbonate, sodium, urea: hemodialysis', 45),
  'age.potassium.peritoneal-dialysis': days('Potassium, bicarbonate, sodium, urea: peritoneal dialysis', 60),
  'age.potassium.ckd-not-on-dialysis': days('Potassium, bicarbonate, sodium, urea: not on dialysis', 100),
  'age.potassium.transplant': days('Potassium, bicarbonate, sodium, urea: transplant', 45),
  'age.potassium.new-transplant': days('Potassium, bicarbonate, sodium, urea: first 3 months of a transplant', 14),
  'age.phosphate.hemodialysis': days('Phosphorus, calcium, magnesium: hemodialysis', 60),
  'age.phosphate.peritoneal-dialysis': days('Phosphorus, calcium, magnesium: peritoneal dialysis', 60),
  'age.phosphate.G3': days('Phosphorus, calcium, magnesium: not on dialysis, G1 to G3', 400),
  'age.phosphate.G4': days('Phosphorus, calcium, magnesium: not on dialysis, G4', 200),
  'age.phosphate.G5': days('Phosphorus, calcium, magnesium: not on dialysis, G5 or stage not known', 100),
  'age.phosphate.transplant': days('Phosphorus, calcium, magnesium: transplant', 100),
  'age.phosphate.new-transplant': days('Phosphorus, calcium, magnesium: first 3 months of a transplant', 14),
  'age.albumin.hemodialysis': days('Albumin: hemodialysis', 60),
  'age.albumin.peritoneal-dialysis': days('Albumin: peritoneal dialysis', 100),
  'age.albumin.ckd-not-on-dialysis': days('Albumin: not on dialysis', 200),
  'age.albumin.transplant': days('Albumin: transplant', 200),
  'age.pth.hemodialysis': days('PTH: hemodialysis', 200),
  'age.pth.peritoneal-dialysis': days('PTH: peritoneal dialysis', 200),
  'age.pth.G3-G4': days('PTH: not on dialysis, G1 to G4', 400),
  'age.pth.G5': days('PTH: not on dialysis, G5 or stage not known', 200),
  'age.pth.transplant': days('PTH: transplant', 400),
  'age.hba1c': days('HbA1c', 200),
  'age.creatinine.G1-G3': days('Creatinine and eGFR for the stage: not on dialysis, G1 to G3', 200),
  'age.creatinine.G4-G5': days('Creatinine and eGFR for the stage: not on dialysis, G4 and G5', 100),
  'age.creatinine.transplant': days('Creatinine and eGFR for the stage: transplant', 100),
  'age.other-results': days('Results without an age of their own', 100),
  'age.weight.hemodialysis': days('Weight: hemodialysis', 14),
  'age.weight.peritoneal-dialysis': days('Weight: peritoneal dialysis', 45),
  'age.weight.ckd-not-on-dialysis': days('Weight: not on dialysis', 100),
  'age.weight.transplant': days('Weight: transplant', 45),
  'age.dry-weight': days('Prescribed dry weight', 60),
  'age.urine.hemodialysis': days('Urine volume: hemodialysis', 100),
  'age.urine.peritoneal-dialysis': days('Urine volume: peritoneal dialysis', 100),
  'age.urine.ckd-not-on-dialysis': days('Urine volume: not on dialysis', 200),
  'age.urine.transplant': days('Urine volume: transplant', 100),
  'age.intake.hemodialysis': days('Appetite, intake, eating difficulties: hemodialysis', 45),
  'age.intake.peritoneal-dialysis': days('Appetite, intake, eating difficulties: peritoneal dialysis', 45),
  'age.intake.ckd-not-on-dialysis': days('Appetite, intake, eating difficulties: not on dialysis', 100),
  'age.intake.transplant': days('Appetite, intake, eating difficulties: transplant', 45),
  'age.assessment.hemodialysis': days('Whole assessment: hemodialysis', 100),
  'age.assessment.peritoneal-dialysis': days('Whole assessment: peritoneal dialysis', 100),
  'age.assessment.ckd-not-on-dialysis': days('Whole assessment: not on dialysis', 400),
  'age.assessment.transplant': days('Whole assessment: transplant', 100),

  'alarm.now': days('A value that needs contact is told as of now for', 7),
  'alarm.glucose-now': days('A glucose that needs contact is told as of now for', 2),
  'alarm.asked': days('After that it is asked whether it was acted on, up to', 45),
  'alarm.hemoglobin-drop': days('A drop of hemoglobin counts within', 60),

  'contact.potassium-emergency': mmol('Potassium: emergency from', 6.5, 5.5, 8),
  'contact.potassium-same-day': mmol('Potassium: same day from', 6, 5, 7.5),
  'contact.potassium-within-days': mmol('Potassium, not on hemodialysis: repeat within days from', 5.5, 5, 7),
  'contact.potassium-hemodialysis': mmol('Potassium before hemodialysis: look for causes from', 5.6, 5, 7),
  'contact.potassium-low': mmol('Potassium: same day under', 3, 2.5, 3.5),
  'contact.potassium-very-low': mmol('Potassium: emergency under', 2.5, 2, 3),
  'contact.calcium-high': value('Corrected calcium: same day over', 'mg/dL', 12, 10.5, 14, 3),
  'contact.calcium-low': value('Corrected calcium: same day under', 'mg/dL', 7.5, 6, 8.4, 1.9),
  'contact.phosphate-low': value('Phosphorus: same day under', 'mg/dL', 1, 0.6, 2, 0.32),
  'contact.phosphate-low-new-feeding': value('Phosphorus with new feeding: same day under', 'mg/dL', 2, 1, 2.5),
  'contact.magnesium-low': value('Magnesium: same day under', 'mg/dL', 1, 0.6, 1.6, 0.4),
  'contact.magnesium-high': value('Magnesium: same day over', 'mg/dL', 4.9, 3, 7, 2),
  'contact.bicarbonate-low': mmol('Bicarbonate: same day under', 15, 10, 20),
  'contact.sodium-very-low': mmol('Sodium: emergency under', 120, 110, 125),
  'contact.sodium-low': mmol('Sodium: same day under', 125, 115, 134),
  'contact.sodium-high': mmol('Sodium: same day over', 155, 146, 165),
  'contact.glucose-low': value('Glucose: treat now, same day under', 'mg/dL', 54, 40, 80, 3),
  'contact.glucose-high': value('Glucose: same day over', 'mg/dL', 360, 180, 500, 20),
  'contact.hemoglobin-low': value('Hemoglobin: same day under', 'g/dL', 7, 6, 9),
  'contact.weight-gain-hemodialysis': value('Weight gain between two hemodialysis treatments: call over', '% of dry weight', 4.5, 2, 7),
  'contact.weight-gain-2-days': value('Weight gain in 2 days, peritoneal dialysis and heart failure: call from', 'kg', 2, 1, 4),
} as const satisfies Readonly<Record<string, CareFigure>>;

export type CareFigureId = keyof typeof careFigures;

export const careFigureIds = Object.keys(careFigures) as readonly CareFigureId[];
