import type { Source } from './source.ts';

const guideline =
  (text: string, short?: string) =>
  (grade?: string): Source => ({
    kind: 'guideline',
    text,
    ...(short === undefined ? {} : { short }),
    ...(grade === undefined ? {} : { grade }),
  });

/** KDOQI and the Academy, Nutrition in CKD, 2020 update (Am J Kidney Dis 76(3 S1)). */
export const kdoqi2020 = guideline('KDOQI 2020');
/** KDIGO CKD 2024. PP is an ungraded practice point. */
export const kdigoCkd2024 = guideline('KDIGO CKD 2024', 'KDIGO 2024');
/** KDIGO Diabetes in CKD 2022. */
export const kdigoDiabetes2022 = guideline('KDIGO Diabetes in CKD 2022', 'KDIGO 2022');
/** KDIGO CKD-MBD update 2017. */
export const kdigoMbd2017 = guideline('KDIGO CKD-MBD 2017', 'KDIGO MBD 2017');
/** KDOQI Nutrition 2000, Bone Metabolism 2003, Hemodialysis Adequacy 2006. */
export const kdoqi2000 = guideline('KDOQI Nutrition 2000');
export const kdoqi2003 = guideline('KDOQI Bone Metabolism 2003', 'KDOQI 2003');
export const kdoqi2006 = guideline('KDOQI Hemodialysis Adequacy 2006');
/** European Best Practice Guideline on Nutrition (hemodialysis) 2007; limits as used in the DIET-HD cohort. */
export const ebpg2007 = guideline('European Best Practice Guideline 2007', 'European 2007');
export const ukKidney2023 = guideline('UK Kidney Association acute hyperkalaemia 2023');
export const nice = guideline('NICE NG203');

export const molina2021: Source = {
  kind: 'paper',
  short: 'Molina 2021',
  text: 'Molina, Front Med 2021;8:654250, Table 1',
  secondHand: true,
};
export const ijnrd2016: Source = {
  kind: 'paper',
  short: 'IJNRD 2016',
  text: 'Int J Nephrol Renovasc Dis 2016;9:21, Table 1 (older practice)',
};
export const isrnm2013: Source = { kind: 'guideline', text: 'ISRNM 2013', toBeConfirmed: true };
export const wastingCriteria: Source = {
  kind: 'guideline',
  text: 'ISRNM protein-energy wasting criteria (Fouque 2008), as tabled in Ren Replace Ther 2016, Table 6',
};
export const commonPractice: Source = {
  kind: 'common-practice',
  text: 'common practice, no source',
  short: 'practice',
  saysPractice: true,
};
export const ownRule: Source = { kind: 'own-rule', text: 'Platewright’s own rule', short: 'own rule' };

export function fromMemory(source: Source): Source {
  return { ...source, toBeConfirmed: true };
}

export function asQuoted(source: Source): Source {
  return { ...source, secondHand: true };
}
