import { absenceKind } from './absenceKind.ts';

/** An ingredient or one of its kin: garlic, onion, wheat, grapefruit. */
export const ingredient = absenceKind(zod => zod.object({ kind: zod.literal('ingredient'), kin: zod.string().min(1) }))({
  title: 'no ingredient named',
  usual: () => ({ kind: 'ingredient', kin: '' }),
  subject: ({ kin }) => kin,
  oneOfIt: ({ kin }) => kin.replaceAll('-', ' '),
});
