import type { Yardstick } from '#core/yardstick/yardstick.ts';

export const proteinLight: Yardstick = {
  id: 'protein-light',
  title: 'light in protein',
  purpose: 'Foods that bring energy and little protein, for a prescribed low-protein diet.',
  tests: [
    {
      id: 'protein-at-most',
      measure: { kind: 'nutrient', nutrient: 'proteinG' },
      basis: 'as-eaten',
      atMost: 2,
      slack: 1,
      source: { kind: 'own-table', text: 'own table, no publication' },
    },
  ],
  classScales: [
    {
      id: 'protein-class',
      nutrient: 'proteinG',
      basis: 'as-eaten',
      classes: [{ name: 'light', upTo: 2 }, { name: 'moderate', upTo: 6 }, { name: 'rich' }],
      source: { kind: 'own-table', text: 'own table, no publication' },
    },
  ],
  settings: 'any',
  cautions: [
    'Only under a prescription for a low-protein diet: dialysis, illness, frailty and weight loss need more protein.',
    'The cut-offs are an own table, not a guideline.',
  ],
};
