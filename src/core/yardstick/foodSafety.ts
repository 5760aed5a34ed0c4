import type { PlateFood } from '#core/plate/plate.ts';
import table from '#data/food-safety.json' with { type: 'json' };

/** A food that needs a word while the immune system is held down: heated to steaming, or never. */
export interface UnsafeFood {
  readonly id: string;
  readonly rule: 'heat' | 'never';
  readonly line: { readonly en: string; readonly es: string };
}

interface Row extends UnsafeFood {
  readonly names: RegExp;
  readonly coldOnly: RegExp | undefined;
  readonly inStatementToo: boolean;
  readonly needs: RegExp;
  readonly needsIn: string;
  readonly notNames: RegExp;
  readonly notCategories: readonly string[];
}

const rows: readonly Row[] = table.rows.map(row => ({
  id: row.id,
  rule: row.rule === 'never' ? 'never' : 'heat',
  line: row.line,
  names: wholeWords(row.names),
  coldOnly: row.coldOnly.length === 0 ? undefined : wholeWords(row.coldOnly),
  inStatementToo: row.inStatementToo,
  needs: wholeWords(row.needs),
  needsIn: row.needsIn,
  notNames: wholeWords(row.notNames),
  notCategories: row.notCategories,
}));

/** Where whole cuts are eaten cold, as their category or reference amount (21 CFR 101.12(b)) says. */
const eatenCold = /\b(?:deli|slices?|sliced|cold cuts?|lunch ?meats?|luncheon|sandwich|fiambres?|carnes frias)\b/;

/**
 * The word that a food needs for somebody whose immune system is held down (care rules 4), told from its name, category and statement; undefined for
 * every other. The worst rule first: `smoked salmon` is never eaten, `bologna` only heated, `turkey soup` and canned smoked salmon need none.
 */
export function unsafeFood(food: PlateFood, category?: string): UnsafeFood | undefined {
  const { name, label } = food;
  const { category: printedCategory, referenceAmount } = label.printed;
  const kind = plain(category ?? printedCategory ?? '');
  const called = `${plain(name)} | ${plain(label.printed.name ?? '')}`;
  const statement = plain(label.statement?.text ?? '');
  const isCold = referenceAmount === 'deli-meat' || eatenCold.test(kind) || eatenCold.test(called);
  const met = rows.filter(row => {
    if (row.notNames.test(`${called} | ${kind}`) || row.notCategories.includes(kind)) return false;
    const where = row.inStatementToo ? `${called} | ${statement}` : called;
    const bare = row.coldOnly === undefined || isCold ? where : where.replace(everyOne(row.coldOnly), ' ');
    return (row.names.test(bare) || row.names.test(kind)) && row.needs.test(neededIn(row, `${called} | ${kind}`, statement));
  });
  const worst = met.find(({ rule }) => rule === 'never') ?? met[0];
  return worst && { id: worst.id, rule: worst.rule, line: worst.line };
}

/** A statement that was read decides what a food is made of: soy slices in bologna style are no cold cuts. */
function neededIn({ needsIn }: Row, name: string, statement: string): string {
  if (needsIn === 'anywhere') return `${name} | ${statement}`;
  return needsIn === 'statement' && statement !== '' ? statement : name;
}

function plain(text: string): string {
  return text
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[\u0300-\u036f]/g, '')
    .replace(/[-–’']+/g, match => (/[’']/.test(match) ? "'" : ' '))
    .replace(/\s+/g, ' ')
    .trim();
}

function wholeWords(names: readonly string[]): RegExp {
  return new RegExp(`(?<![a-z])(?:${names.map(name => name.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')).join('|')})(?:es|s)?(?![a-z])`);
}

function everyOne(words: RegExp): RegExp {
  return new RegExp(words.source, 'g');
}
