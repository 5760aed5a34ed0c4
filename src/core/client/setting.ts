/** How kidney disease is treated. Acute kidney injury, pregnancy and children are refused for now. */
export type Setting = 'ckd-not-on-dialysis' | 'hemodialysis' | 'peritoneal-dialysis' | 'transplant';

export const settings: readonly Setting[] = ['ckd-not-on-dialysis', 'hemodialysis', 'peritoneal-dialysis', 'transplant'];
