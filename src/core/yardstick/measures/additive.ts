import { additiveClasses } from '#core/additive/additive.ts';
import { absenceKind } from './absenceKind.ts';

/** An additive class that counts, named on the label. */
export const additive = absenceKind(zod => zod.object({ kind: zod.literal('additive'), class: zod.enum(additiveClasses) }))({
  title: 'no additive named',
  usual: () => ({ kind: 'additive', class: 'phosphate' }),
  subject: measure => `${measure.class} additives`,
  oneOfIt: measure => `a ${measure.class} additive`,
});
