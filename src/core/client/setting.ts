/** How kidney disease is treated. Acute kidney injury, pregnancy and children are refused for now. */
export const settings = ['ckd-not-on-dialysis', 'hemodialysis', 'peritoneal-dialysis', 'transplant'] as const;

export type Setting = (typeof settings)[number];

/** As forms and notes have it. */
export const settingWords: Readonly<Record<Setting, string>> = {
  'ckd-not-on-dialysis': 'CKD not on dialysis',
  hemodialysis: 'hemodialysis',
  'peritoneal-dialysis': 'peritoneal dialysis',
  transplant: 'transplant',
};
