import { z } from 'zod';
import { panelLines } from './panelLines.ts';

/** How a maker prints. Real labels differ in these things and in little else. */
const printStyleSchema = z.strictObject({
  letters: z.enum(['upper', 'title', 'sentence', 'lower']),
  /** The clause before the small ingredients, with its limit (21 CFR 101.4(a)(2) allows 2, 1.5, 1 and 0.5); none lists all in order. */
  clause: z.strictObject({ words: z.string().min(1), percent: z.literal([2, 1.5, 1, 0.5]) }).exactOptional(),
  /** Brackets inside brackets. */
  innerBrackets: z.enum(['round', 'square']),
  opening: z.enum(['', 'Ingredients: ']),
  ending: z.enum(['', '.']),
  allergenWords: z.enum(['Contains', 'Contains:', 'CONTAINS:']),
  /** Which lines carry a %DV: none, or the vitamins and minerals. */
  percents: z.enum(['none', 'minerals']),
  lessThan: z.enum(['<', 'less than ']),
  /** The lines of the panel, where not all are printed. */
  lines: z.array(z.enum(panelLines)).exactOptional(),
});

/** A file of makers by their keys: the name, five digits of the GTIN, and the style. */
export const makersSchema = z.record(
  z.string(),
  z.strictObject({ name: z.string().min(1), number: z.int().positive().max(99_999), style: printStyleSchema }),
);

export type PrintStyle = z.infer<typeof printStyleSchema>;
export type Makers = z.infer<typeof makersSchema>;
export type Maker = Makers[string];
