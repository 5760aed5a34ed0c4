/** What a word beside a food's name says about 100 g of it. */

function words(text: string): ReadonlySet<string> {
  return new Set(text.trim().split(/\s+/));
}

/** Says nothing about the composition, or nothing that the table tells apart: quality, origin, size, cut. */
export const empty = words(`
  organic natural naturally pure purely fresh raw real premium select selected quality fancy choice grade aa gourmet certified
  fair trade kosher halal imported domestic local locally grown usa us american california californian idaho florida texas
  italian italy spanish mexican thai greek turkish french indian atlantic pacific alaska alaskan australian canadian wisconsin
  wild caught harvested farm farmed raised sustainable sustainably rspo traditional authentic artisan classic homestyle style
  pasteurized unpasteurized pstrzd homogenized unbleached bleached unenriched filtered refined unrefined
  virgin deodorized bromated unbromated untreated boneless skinless pitted peeled unpeeled seedless shelled hulled
  diced chopped sliced minced shredded grated cut cubed halved quartered trimmed cleaned washed large small medium extra jumbo
  mini petite baby tender young mature ripe ripened fine finely coarse coarsely uncooked frozen thawed
  chilled refrigerated iqf blanched aged sifted milled og org organically cultivated handpicked unsulfured unsulphured unblanched
  long medium short heirloom native winter spring summer wholesome clean simple finest best hearty crunchy creamy smooth
  super ultra granny smith fuji gala hass roma kentucky oregon maine jersey wildflower liquid pressed expeller rendered
  carbonated sparkling purified mountain artesian micron usda arabica colombian
`);

/** A color, "whole", "ground": mostly nothing, but a name that keeps it is better. */
export const slight = words(
  'whole wholegrain grain ground white red green yellow black brown golden purple blue dark hot mild tart unsweetened unsalted enriched fortified',
);

/** Heat and what it drives off. The raw food is a guess. */
export const heat = words(`
  cooked precooked roasted toasted grilled baked steamed boiled broiled fried sauteed caramelized fire flame char charred seared
  braised canned prepared heated popped puffed parboiled sprouted stewed simmered rotisserie oven fully soaked rehydrated
`);

/** Behind a name: a piece of the same food. */
export const pieces = words(
  'floret half piece fillet slice chunk strip spear wedge cube portion stem stalk tip tidbit nugget bit dice section part',
);

/** From here on a name tells what goes with the food or where it comes from. */
export const tailStarts = words('with in from for to by treated added made packed grown containing contain including include sufficient');

/** Makes another food of it, whatever the table knows. The words of the table's own names do so too. */
export const changing = words(`
  flavored imitation substitute analog analogue plant vegetarian dairy free reduced low lowfat light lite nonfat skim fat lean
  dried instant hydrolyzed hydrogenated fermented cultured smoked cured pickled salted sweetened candied glazed coated
  breaded battered stuffed filled seasoned marinated brined condensed evaporated reconstituted diluted textured defatted pregelatinized
  extract essence distillate concentrate powder flake granule granulated crystal paste puree pulp juice oil butter milk syrup
  sugar flour starch meal bran germ fiber protein isolate solid peel zest rind skin seed leaf root flower blossom sprout shell hull
  husk gum malt malted wine vinegar sauce broth stock soup gravy base bouillon seasoning dressing mix blend crumb jam jelly nectar
  cocktail water spread filling topping icing crust dough batter cake bread cookie cracker hemp cactus aloe argan noni and or
  trace brine deproteinized vegan sweet sea custard prickly rose wax bitter tiger horse wood swamp elephant no without less bean product type modified dextrinized
`);

/** Words that many different foods end in: "X milk" is not milk because X is a word nobody knows. */
export const manyFoods = words(`
  milk butter cheese cream oil flour juice syrup sugar starch meal vinegar tea bread sauce water seed nut bean fish wine nectar
  paste puree protein powder fat extract gum fiber bran chip spread dressing stock broth jam jelly noodle mustard vegetable malt
  leaf root skin salt sausage roe berry fruit pepper concentrate
`);
