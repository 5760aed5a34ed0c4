/** Word lists that tell a heading, a note or a remark from an ingredient. Drawn from shared measurements of real statements. */

const words = (list: string): ReadonlySet<string> => new Set(list.split(/\s+/).filter(word => word !== ''));

/** Words that name what an additive does. A bracket of only these is a note; a heading of only these is a function group. */
export const functionWords = words(`
  acid acidifier acidifiers acidity acidulant acidulants agent agents anticaking antioxidant antioxidants antifoaming binder binders buffer buffers
  bulking caking clarifying color colors colorant colorants coloring colorings colour colours colouring colourings conditioner conditioners correctors corrector
  cure curing cultures culture dough electrolyte electrolytes emulsifier emulsifiers emulsifying enhancer enhancers enzyme enzymes extractives
  fat fillers filler firming flavor flavoring flavorings flavors flavour flavouring flavours food foods foaming gelling glazing humectant humectants
  improver improvers leavener leaveners leavening mineral minerals moisture nutrient nutrients preservative preservatives raising regulator regulators
  replacer retainer salt salts sequestrant sequestrants stabiliser stabilisers stabilizer stabilizers stabilizing starter sweetener sweeteners texturizer
  thickener thickeners thickening vitamin vitamins yeast artificial natural vegetable anti and a an the added blend mix or of for`);

/** Function words that make a heading a function group; the others only accompany them. */
export const functionHeads = words(`
  acidifier acidulant acidulants acidifiers regulator regulators corrector correctors agent agents anticaking antioxidant antioxidants binder binders buffer buffers
  colors coloring colorings colours colouring colourings color colour colorant colorants conditioner conditioners cultures electrolytes electrolyte emulsifier emulsifiers enhancer enhancers
  enzymes firming humectant humectants improver improvers leavening leavener leaveners minerals nutrient nutrients preservative preservatives raising sequestrant sequestrants
  stabiliser stabilisers stabilizer stabilizers sweetener sweeteners thickener thickeners vitamins texturizer`);

/** One-word notes in brackets beyond the function words. */
export const noteWords = words(`
  b1 b2 b3 b5 b6 b7 b9 b12 c d d2 d3 e k k1 k2 a niacin thiamin thiamine riboflavin folate folacin biotin milk soy soya wheat egg eggs fish shellfish peanut peanuts
  sesame derivative derived dairy vegan vegetarian organic fresh frozen dried dehydrated color colour raw roasted ground whole sulfite sulfites unbleached bleached
  milkfat gluten free gmo non`);

/** A bracket or an item that opens with one of these says why or whence, not what. */
export const noteOpeners = words(
  'to for as from used adds added helps flow aid maintains preserves protects retains prevents promotes provides a an source not ie eg contains',
);

/** Verbs after "to" that make "X to …" a note: "to preserve freshness", "to prevent caking". */
export const purposeVerbs = words(`
  preserve preserves protect prevent retain maintain promote improve enhance help keep stabilize stabilise retard reduce control provide inhibit ensure
  color colour increase give assist extend aid prolong thicken sweeten acidify adjust add balance make delay`);

/** Words that follow "for" or "as" in a note without brackets: "for color", "as a preservative". */
export const purposeNouns = words(`
  color colour coloring freshness flavor flavour preservative preservatives leavening sweetness stabilizer emulsifier antioxidant thickener texture acidity acidulant
  moisture tartness processing anticaking stability clarity nutrition dusting quality protection firmness retention fermentation flavoring conditioner anti a an`);

/** Allergens as a "Contains:" line names them (21 USC 321(qq) and usual plant names), and the words between them. */
export const allergenWords = words(`
  milk egg eggs fish shellfish crustacean crustaceans crustacea shrimp crab lobster tree nut nuts almond almonds cashew cashews walnut walnuts pecan pecans pistachio pistachios
  hazelnut hazelnuts filbert filberts macadamia macadamias brazil coconut coconuts pine chestnut wheat peanut peanuts soy soya soybean soybeans sesame gluten dairy mustard sulfites
  sulphites sulfite celery lupin mollusk mollusks molluscs barley rye oats lactose anchovy anchovies tuna salmon cod pollock tilapia bass flounder haddock halibut clam clams oyster oysters scallops squid
  and or other ingredients ingredient products product derivatives derivative in from including the following allergens allergen traces trace of possible may contain contains by as a an
  seeds seed protein`);

/** Words that show a "Contains …" line really is about allergens, not about an ingredient that shares a connecting word. */
export const allergenNames = words(`
  milk egg eggs fish shellfish crustacean crustaceans crustacea shrimp crab lobster nut nuts almond almonds cashew cashews walnut walnuts pecan pecans pistachio pistachios
  hazelnut hazelnuts filberts macadamia coconut coconuts wheat peanut peanuts soy soya soybean soybeans sesame gluten dairy mustard sulfites sulphites celery lupin barley rye oats lactose
  anchovy anchovies tuna salmon cod pollock tilapia clam clams oyster oysters scallops squid`);

/** A heading that ends in one of these tells how the food was treated: its list is a group, not a component. */
export const processHeads = words(
  'cured fried breaded battered coated seasoned marinated glazed rubbed dusted cooked made prepared sweetened smoked basted filled topped injected',
);

/** Sentence openers of facility remarks. */
export const facilityOpeners = words('manufactured produced processed packed packaged made prepared');
export const facilityWords = words('facility facilities equipment plant line lines machinery shared kitchen');

/** Words before a period that are abbreviations, so that the period ends nothing. */
export const abbreviations = words(
  'no st vit vits ssp spp sp dr mt u.s s l b c d e i u var inc co approx lb lbs oz fl pt qt tsp tbsp mfg fd & gr ft',
);

/** Class words before a bare additive code in brackets: "emulsifier (322)", "colours (102, 133)". */
export const codeClassWords = words(`
  emulsifier emulsifiers stabiliser stabilisers stabilizer stabilizers acid acids regulator regulators acidulant preservative preservatives antioxidant antioxidants thickener thickeners
  agent agents salt salts sweetener sweeteners colour colours color colors enhancer enhancers humectant humectants starch gum firming anticaking`);

/** Names in which "and" or "or" joins parts of one name. */
export const inseparable =
  /^(?:(?:distilled\s+)?mono[\s-]*(?:-\s*)?(?:and|&|and\/or|or|\/)\s*di[\s-]?glycerides?|natural\s*(?:and|&|and\/or|or)\s*artificial\b.*|artificial\s*(?:and|&|and\/or|or)\s*natural\b.*|fats?\s+(?:and|&)\s+(?:fatty|oils?).*|salt\s+(?:and|&)\s+pepper|sweet\s+(?:and|&)\s+sour.*|vitamins?\s+(?:and|&)\s+minerals?.*|half\s+(?:and|&)\s+half.*|mac(?:aroni)?\s+(?:and|&)\s+cheese.*|live\s+and\s+active.*|fd\s*&\s*c\b.*|d\s*&\s*c\b.*|i\s*&\s*g|extra\s+virgin.*and.*blend)$/;
