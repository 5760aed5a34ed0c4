import type { Setting } from '#core/yardstick/yardstick.ts';

/** Settings as readers know them, in the order in which a guide goes through them. */
export const settingWords: Readonly<Record<Setting, string>> = {
  'ckd-not-on-dialysis': 'Not on dialysis',
  hemodialysis: 'Hemodialysis',
  'peritoneal-dialysis': 'Peritoneal dialysis',
  transplant: 'Transplant',
};
