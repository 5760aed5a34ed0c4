import type { AdditiveFinding } from '#core/additive/additive.ts';
import { type AdditiveRow, additiveTable } from '#core/additive/additiveTable.ts';
import type { LargerReference } from '#core/reference/largerReference.ts';
import { matchFood } from '#core/reference/matchFood.ts';
import { namesNoFood } from '#core/reference/noFood.ts';
import type { Ingredient } from '#core/statement/statement.ts';
import { additiveContent, anyFood, type Content, referenceContent, salt, spices, trifle, water } from './content.ts';

/** What a leaf was taken for. */
export type Taken = 'reference' | 'additive' | 'trifle' | 'salt' | 'unknown';

/** An ingredient without parts, or one that is looked at as a whole: an unknown of the model. */
export interface Leaf {
  readonly name: string;
  readonly taken: Taken;
  readonly content: Content;
  /** Group of the composition table, or the family of the additive. */
  readonly group: string;
  /** Row of the additive table. */
  readonly additive?: AdditiveRow;
  /** Grams in 100 g that such an additive or trifle typically is; from memory, for the prior only. */
  readonly typicalG?: number;
}

/** A node of the statement as the model sees it: the leaves under it, and the levels within. */
export interface RecipeNode {
  readonly name: string;
  readonly leaves: readonly number[];
  /** One of several that the label leaves open, or only allowed: it may be absent. */
  readonly isOpen: boolean;
  readonly atMostPercent?: number;
  readonly declaredPercent?: number;
  readonly parts: readonly RecipeNode[];
  /** Parts of a component or of several products stand in no order with their neighbours. */
  readonly isComponent: boolean;
}

export interface RecipeTree {
  readonly leaves: readonly Leaf[];
  readonly nodes: readonly RecipeNode[];
}

/**
 * The statement as unknowns: a compound that the composition table knows is one leaf ("enriched flour (…)", "cheddar
 * cheese (…)"), unless an additive that counts is named inside; one it does not know is its parts.
 * `larger` are imported tables for names without parts that our own table does not know; a compound is what its parts say.
 */
export function recipeTree(
  ingredients: readonly Ingredient[],
  additives: readonly AdditiveFinding[],
  larger?: LargerReference,
): RecipeTree {
  const leaves: Leaf[] = [];
  const rows = additives.map(finding => ({ finding, row: rowById.get(finding.id) }));
  const inside = ({ start, end }: Ingredient) => rows.filter(({ finding }) => finding.start >= start && finding.end <= end);

  const toNode = (ingredient: Ingredient, heading: string): RecipeNode => {
    const { name, parts, kind, presence, atMostPercent, declaredPercent } = ingredient;
    const common = {
      name,
      isOpen: presence !== 'certain',
      ...(atMostPercent === undefined ? {} : { atMostPercent }),
      ...(declaredPercent === undefined ? {} : { declaredPercent }),
      isComponent: kind === 'component',
    };
    const whole = kind === 'ingredient' && parts.length > 0 ? wholeCompound(ingredient) : undefined;
    if (parts.length > 0 && whole === undefined) {
      const nodes = parts.map(part => toNode(part, name));
      return { ...common, leaves: nodes.flatMap(node => node.leaves), parts: nodes };
    }
    leaves.push(whole ?? leafOf(ingredient, heading));
    return { ...common, leaves: [leaves.length - 1], parts: [] };
  };

  const wholeCompound = (ingredient: Ingredient): Leaf | undefined => {
    const match = nearestFood(ingredient.name, '');
    if (match === undefined || match.confidence < 0.5) return undefined;
    const addsMinerals = inside(ingredient).some(
      ({ finding, row }) => finding.counts && finding.class !== 'sodium' && row?.kind === 'additive' && !namesItself(ingredient, finding),
    );
    if (addsMinerals && !wholeInSpiteOfAdditives.has(match.food.group)) return undefined;
    return { name: ingredient.name, taken: 'reference', content: referenceContent(match.food, match.certainty), group: match.food.group };
  };

  const leafOf = (ingredient: Ingredient, heading: string): Leaf => {
    const { name } = ingredient;
    const found = inside(ingredient).find(({ row }) => row?.kind === 'additive' || row?.formula);
    const row = found?.row;
    if (row !== undefined && row.kind === 'additive') {
      const others = row.unspecified || row.formula === null ? rowsOfFamily(row) : [];
      const typicalG = row.typicalPercentFromMemory ?? 0.2;
      return { name, taken: 'additive', content: additiveContent(row, others), group: row.family, additive: row, typicalG };
    }
    if (isWater.test(name)) return { name, taken: 'reference', content: water, group: 'water' };
    const match = nearestFood(name, heading, larger);
    if (match !== undefined && match.confidence >= 0.4) {
      return { name, taken: 'reference', content: referenceContent(match.food, match.certainty), group: match.food.group };
    }
    if (/\b(?:spices?|seasonings?|herbs?)\b/i.test(name))
      return { name, taken: 'reference', content: spices, group: 'spice', typicalG: 0.5 };
    if (/calcium/i.test(name)) return { name, taken: 'salt', content: salt(0.4), group: 'salt', typicalG: 0.3 };
    if (/\bacids?\b|vinegar powder/i.test(name)) return { name, taken: 'salt', content: salt(0), group: 'acid', typicalG: 0.3 };
    if (namesNoFood(name) || isTrifle.test(name)) return { name, taken: 'trifle', content: trifle, group: 'trifle', typicalG: 0.2 };
    return { name, taken: 'unknown', content: anyFood, group: 'unknown' };
  };

  const nodes = ingredients.map(ingredient => toNode(ingredient, ''));
  return { leaves, nodes };
}

/** The food of a name, or the one it is a leaner kind of: a reduced fat cheese is near the cheese, with a wider spread. */
function nearestFood(name: string, heading: string, larger?: LargerReference) {
  const match = matchFood(name, heading, larger);
  // Nobody looked at the names of an imported table: its figures get the wider spread.
  const isNamed = match !== undefined && match.confidence >= 0.8 && match.how !== 'larger';
  if (match !== undefined) return { ...match, certainty: isNamed ? ('named' as const) : ('near' as const) };
  const plain = name.replace(leaner, ' ').trim();
  const near = plain === name.trim() ? undefined : matchFood(plain, heading);
  return near && { ...near, certainty: 'near' as const };
}

const leaner = /\b(?:reduced|low|lower|less|light|lite|part|fat|sodium|salt|free|skim|non-?fat|lean|unsalted|no|added)\b[ -]*/gi;

const rowById: ReadonlyMap<string, AdditiveRow> = new Map(additiveTable.map(row => [row.id, row]));
const isWater = /^(?:filtered |purified |carbonated |spring |sparkling |drinking |deionized |reverse osmosis )*water\b/i;
const isTrifle = /\b(?:gum|starch|flavou?r|colou?r|extract|enzymes?|cultures?|vitamins?|minerals?|yeast food|smoke)\b/i;

/** Groups whose reference rows hold the usual additives already: bread has its leavening, cereal its fortification. */
const wholeInSpiteOfAdditives: ReadonlySet<string> = new Set(['bread', 'sweet']);

function namesItself({ start, name }: Ingredient, finding: AdditiveFinding): boolean {
  return finding.start === start && finding.end - finding.start >= name.length - 1;
}

/** "Sodium phosphates" may be any of the family's salts. */
function rowsOfFamily({ family, kind }: AdditiveRow): readonly AdditiveRow[] {
  return additiveTable.filter(row => row.family === family && row.kind === kind && row.formula !== null);
}
