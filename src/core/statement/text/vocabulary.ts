/** Word lists that tell a clause, a heading, a note or a remark from an ingredient. Drawn from measurements of real statements. */

/** The words of a list, as `token.text` gives them. */
const words = (list: string): ReadonlySet<string> => new Set(list.split(/\s+/).filter(word => word !== ''));

// --- Clauses -----------------------------------------------------------------------------------------------------------------

/** Words that may stand before a percentage in "contains 2% or less of", and after it. */
export const thresholdLead = words('and also plus contains contain containing with each at');
/** What may stand before "not exceed". */
export const boundAuxiliaries = words('does do shall must may');
export const clauseTail = words('of each the following by weight ingredients ingredient these all any total');
export const numberWords: ReadonlyMap<string, number> = new Map([
  ['one', 1],
  ['two', 2],
  ['three', 3],
  ['five', 5],
  ['half', 0.5],
]);

export const fractionWords: ReadonlyMap<string, number> = new Map([
  ['half', 1 / 2],
  ['quarter', 1 / 4],
  ['fourth', 1 / 4],
  ['tenth', 1 / 10],
  ['twentieth', 1 / 20],
  ['hundredth', 1 / 100],
]);

/** Words that may stand before "one or more of". */
export const choiceLead = words('contains contain containing and and/or with any from at least of');

/** Words that may stand before and after the percentage in "contains up to 12% of a solution of". */
export const solutionLead = words(
  'contains containing contain with in enhanced injected marinated up to approximately about and added an a',
);
export const solutionMiddle = words('of a an added flavor flavoring seasoning brine marinade water');

/** A heading that ends in one of these tells how the food was treated: its list is a group, not a component. */
export const treatments = words(`
  cured fried breaded battered coated seasoned marinated glazed rubbed dusted cooked made prepared sweetened smoked basted filled topped injected treated tenderized`);

// --- Remarks -----------------------------------------------------------------------------------------------------------------

/** "this product may have been | made | in a | facility". */
export const facilityLead = words('this these product products was were is are may can have has been be also and');
export const facilityOpeners = words('manufactured produced processed packed packaged made prepared');
export const facilityWords = words('facility facilities equipment plant line lines machinery shared kitchen');

/** Words that open a claim, whatever follows. */
export const claimOpeners = words('no adds does keep distributed this these percent');

/** What follows the mark of a footnote. */
export const footnoteWords = words(`
  organic certified fair adds trivial negligible dietarily not contributes ingredient ingredients source daily non naturally rainforest rain
  indicates denotes sustainably cage an a`);

/** Words that show a "Contains …" line really is about allergens, not about an ingredient that shares a connecting word. */
export const allergenNames = words(`
  milk egg eggs fish shellfish crustacean crustaceans crustacea shrimp crab lobster nut nuts almond almonds cashew cashews walnut walnuts
  pecan pecans pistachio pistachios hazelnut hazelnuts filberts macadamia coconut coconuts wheat peanut peanuts soy soya soybean soybeans
  sesame gluten dairy mustard sulfites sulphites celery lupin barley rye oats lactose anchovy anchovies tuna salmon cod pollock tilapia
  clam clams oyster oysters scallops squid`);

/** Allergens as a "Contains:" line names them (21 USC 321(qq) and usual plant names), and the words between them. */
export const allergenWords: ReadonlySet<string> = new Set([
  ...allergenNames,
  ...words(`
  tree filbert macadamias brazil pine chestnut sulfite mollusk mollusks molluscs bass flounder haddock halibut
  and or other ingredients ingredient product products derivatives derivative in from including the following allergens allergen
  traces trace of possible may contain contains by as a an seeds seed protein`),
]);

// --- Notes and groups --------------------------------------------------------------------------------------------------------

/** Words that name what an additive does. A bracket of only these is a note; a heading of only these is a function group. */
export const functionWords = words(`
  acid acidifier acidifiers acidity acidulant acidulants agent agents anticaking antioxidant antioxidants antifoaming binder binders buffer
  buffers bulking caking clarifying color colors colorant colorants coloring colorings colour colours colouring colourings conditioner
  conditioners correctors corrector cure curing cultures culture dough electrolyte electrolytes emulsifier emulsifiers emulsifying enhancer
  enhancers enzyme enzymes extractives fat fillers filler firming flavor flavoring flavorings flavors flavour flavouring flavours food foods
  foaming gelling glazing humectant humectants improver improvers leavener leaveners leavening mineral minerals moisture nutrient nutrients
  preservative preservatives raising regulator regulators replacer retainer salt salts sequestrant sequestrants stabiliser stabilisers
  stabilizer stabilizers stabilizing starter sweetener sweeteners texturizer thickener thickeners thickening vitamin vitamins yeast
  artificial natural vegetable anti and a an the added blend mix or of for`);

/** Function words that make a heading a function group; the others only accompany them. */
export const functionHeads = words(`
  acidifier acidulant acidulants acidifiers regulator regulators corrector correctors agent agents anticaking antioxidant antioxidants
  binder binders buffer buffers colors coloring colorings colours colouring colourings color colour colorant colorants conditioner
  conditioners cultures electrolytes electrolyte emulsifier emulsifiers enhancer enhancers enzymes firming humectant humectants improver
  improvers leavening leavener leaveners minerals nutrient nutrients preservative preservatives raising sequestrant sequestrants
  stabiliser stabilisers stabilizer stabilizers sweetener sweeteners thickener thickeners vitamins texturizer`);

/** A heading with one of these is a group of nutrients or cultures. */
export const nutrientGroupWords = words('vitamins minerals mineral cultures electrolytes');

/** One-word notes in brackets beyond the function words. */
export const noteWords = words(`
  b1 b2 b3 b5 b6 b7 b9 b12 c d d2 d3 e k k1 k2 a niacin thiamin thiamine riboflavin folate folacin biotin milk soy soya wheat egg eggs fish
  shellfish peanut peanuts sesame derivative derived dairy vegan vegetarian organic fresh frozen dried dehydrated color colour raw roasted
  ground whole sulfite sulfites unbleached bleached milkfat gluten free gmo non`);

/** A bracket or an item that opens with one of these says why or whence, not what. */
export const noteOpeners = words(`
  to for as from used adds added helps flow aid maintains preserves protects retains prevents promotes provides a an source not ie eg contains if`);

/** What a bracket ends with that praises: "(dairy and soy free)", "(sea certified)". */
export const noteEndings = words('free certified');

/** Verbs after "to" that make "X to …" a note: "to preserve freshness", "to prevent caking". */
export const purposeVerbs = words(`
  preserve preserves protect prevent retain maintain promote improve enhance help keep stabilize stabilise retard reduce control provide
  inhibit ensure color colour increase give assist extend aid prolong thicken sweeten acidify adjust add balance make delay`);

/** Words that follow "for" or "as" in a note without brackets: "for color", "as a preservative". */
export const purposeNouns = words(`
  color colour coloring freshness flavor flavour preservative preservatives leavening sweetness stabilizer emulsifier antioxidant thickener
  texture acidity acidulant moisture tartness processing anticaking stability clarity nutrition dusting quality protection firmness retention
  fermentation flavoring conditioner anti a an`);

/** "freshness | preserved by BHT", "colored with annatto". */
export const leadVerbs = words('preserved protected maintained colored coloured retained stabilized');
export const leadSubjects = words('freshness color colour flavor quality freshly');

// --- Names -------------------------------------------------------------------------------------------------------------------

/** Words and signs that join an item to its neighbors, and are no part of its name at either end. */
export const leadJoints = words('and or and/or & plus also - /');
export const trailJoints = words('and or and/or & - / plus');

/** Left sides of "and" that need the right side's noun: "natural and …", "hydrolyzed and …". */
export const adjectives = words(`
  natural artificial red green black white yellow blue brown wild ripe dried fresh frozen roasted sweet sour hot mild live salted smoked skim
  whole nonfat corn wheat rice hydrolyzed hydrolysed hydrogenated vegetable fruit mono di tri citric malic lactic phosphoric`);

/** Names in which "and" or "or" joins parts of one name. */
export const inseparable =
  /^(?:(?:distilled\s+)?mono[\s-]*(?:-\s*)?(?:and|&|and\/or|or|\/)\s*di[\s-]?glycerides?|natural\s*(?:and|&|and\/or|or)\s*artificial\b.*|artificial\s*(?:and|&|and\/or|or)\s*natural\b.*|fats?\s+(?:and|&)\s+(?:fatty|oils?).*|salt\s+(?:and|&)\s+pepper|sweet\s+(?:and|&)\s+sour.*|vitamins?\s+(?:and|&)\s+minerals?.*|half\s+(?:and|&)\s+half.*|mac(?:aroni)?\s+(?:and|&)\s+cheese.*|live\s+and\s+active.*|fd\s*&\s*c\b.*|d\s*&\s*c\b.*|i\s*&\s*g|extra\s+virgin.*and.*blend)$/;

/** Words after a closing bracket that go on with the same ingredient: "cocoa (processed with alkali) powder". */
export const continuesAfterBracket = words(`
  powder mix blend flavor flavored color with from for to as added in concentrate puree juice oil oils solids extract syrup and or and/or
  phosphate phosphates flour protein starch milk cheese sauce used seasoning acid by solution lactate pyrophosphate`);

/** Words before a period that are abbreviations, so that the period ends nothing. Single letters are, without a list. */
export const abbreviations = words('no st vit vits ssp spp sp dr mt var inc co approx lb lbs oz fl pt qt tsp tbsp mfg fd gr ft');

// --- What a word may do ------------------------------------------------------------------------------------------------------

/**
 * Two bits, kept on each token, so that one look-up tells what most words do: nothing but name something.
 * - `opens`: a clause, a treatment or a remark may start with it.
 * - `shapes`: an item that holds it is more than one name: it joins, gives a reason, or says "organic".
 */
export const wordRole = { opens: 1, shapes: 2 } as const;

const roles = new Map<string, number>();
function give(role: number, list: Iterable<string>): void {
  for (const word of list) roles.set(word, (roles.get(word) ?? 0) | role);
}
give(wordRole.opens, [...treatments, ...facilityOpeners, ...claimOpeners, ...boundAuxiliaries]);
give(
  wordRole.opens,
  words(`
  contains contain containing less not no and also may can one two with in any some at plus each under enhanced injected up half a below maximum max
  product certified free ingredients ingredient gluten added`),
);
give(wordRole.shapes, [...leadJoints, ...trailJoints, ...leadVerbs]);
give(wordRole.shapes, words('to for as added used organic a an no if'));

/** The bits of `wordRole` for a word in lower case. */
export function roleOf(word: string): number {
  return roles.get(word) ?? 0;
}
