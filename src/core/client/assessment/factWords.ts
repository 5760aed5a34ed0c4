/** Where a key of a condition, medicine, supplement or symptom in small letters is not how it is written. */
const asWritten: Readonly<Record<string, string>> = {
  'ckd-not-on-dialysis': 'CKD not on dialysis',
  'salt-losing-kidney-disease': 'salt-wasting kidney disease',
  'raas-inhibitor': 'RAAS inhibitor',
  ciclosporin: 'cyclosporine',
  'vitamin-k-antagonist': 'vitamin K antagonist',
  nsaid: 'NSAID',
  'non-selective-beta-blocker': 'nonselective beta-blocker',
  'active-vitamin-d': 'active vitamin D',
  'sglt2-inhibitor': 'SGLT2 inhibitor',
  'high-dose-vitamin-c': 'high-dose vitamin C',
  'vitamin-a': 'vitamin A',
  'vitamin-k': 'vitamin K',
  'ecg-change': 'ECG change',
};

/** A key as it is read: `phosphate-binder` is "phosphate binder", `nsaid` "NSAID". */
export function factWords(key: string): string {
  return asWritten[key] ?? key.replaceAll('-', ' ');
}
