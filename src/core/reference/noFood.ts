import { tailStarts } from './modifiers.ts';
import { nameWords } from './nameWords.ts';

const chemicalPart =
  /phosph|sodium|potassium|calcium|magnesium|ammonium|alumin|chlorid|citrate|lactate|acetate|tartrate|gluconate|carbonate(?!d)|sul[fp]h?(?:ate|ite|ur)|nitrit|nitrat|benzoat|sorbat|propionat|erythorb|ascorb|glutamate|inosinat|guanylat|stearate|lactylate|stearo|hydroxide|dioxide|oxide$|malate|fumar|lecithin|alginat|iodide|glycerid|glycerol|glycerin|polysorb|cellulose|carrageen|amylase|lipase|protease|pectinase|tocopherol|cobalamin|thiamin|niacin|ribofla|pantothen|pyridox|folic|folate|biotin|palmitate|calciferol|carotene|sucralose|aspartam|acesulf|sacchar|lactobac|streptoc|bifido|bacillus|vanillin|polydextrose|benzaldehyde|diacetate/;

export const noFoodWords = new Set(
  `flavor flavoring color coloring culture enzyme rennet oleoresin extractive dye lake vitamin acid artificial
   iron ferrous ferric zinc chromium copper selenium iodine manganese taurine caffeine lutein choline inositol
   xanthan gellan konjac pectin agar sorbitol erythritol xylitol maltitol isomalt mannitol lactitol allulose stevia stevioside monk
   annatto carmine cochineal bht bha tbhq datem pgpr edta msg wax glaze shellac talc nisin natamycin papain lactase
   thermophilus acidophilus bulgaricus lactis casei rhamnosus plantarum animalis bacteria bacterium probiotic probiotics
   inulin oligosaccharide fructooligosaccharide glucono lactone preservative emulsifier stabilizer leavening smoke
   penicillium roqueforti co2 propylene acacia gum essential nicotinamide bromelain
   propellant nitrogen microbial azodicarbonamide curcumin lycopene anthocyanin tartrazine carthamus dha epa collagenase
   mono di cysteine leucine isoleucine valine lysine methionine monk tricalcium dipotassium disodium trisodium
   fd`.split(/\s+/),
);

/**
 * Whether the name tells an additive, vitamin, flavor, color, culture or enzyme: something without a composition in the
 * table, whose weight is small. "Natural flavors" and "thiamine mononitrate" are; "tomato paste" and "spices" are not.
 */
export function namesNoFood(name: string): boolean {
  return tellNoFood(nameWords(name));
}

/** The same of words that `nameWords` gave. What goes with a food does not count: "apples with calcium ascorbate". */
export function tellNoFood(words: readonly string[]): boolean {
  for (const [at, word] of words.entries()) {
    if (at > 0 && tailStarts.has(word)) break;
    if (noFoodWords.has(word) || chemicalPart.test(word)) return true;
  }
  // "Red 40", "Yellow 5 lake": a color and a number.
  return words.length > 1 && /^(?:red|yellow|blue|green)$/.test(words[0]!) && /^\d+$/.test(words[1]!);
}
