import { measureName } from '#core/plate/measureName.ts';
import type { Portion } from '#core/plate/plate.ts';
import { countText } from '#core/plate/portionText.ts';
import { figure } from './numbers.ts';

/** Measures as bilingual US labels and kitchens say them; one that is not here stays as the label prints it. */
const measures: ReadonlyMap<string, readonly [one: string, many: string]> = new Map([
  ['serving', ['porción', 'porciones']],
  ['slice', ['rebanada', 'rebanadas']],
  ['piece', ['pieza', 'piezas']],
  ['cup', ['taza', 'tazas']],
  ['tablespoon', ['cucharada', 'cucharadas']],
  ['teaspoon', ['cucharadita', 'cucharaditas']],
  ['ounce', ['onza', 'onzas']],
  ['fluid ounce', ['onza líquida', 'onzas líquidas']],
  ['box', ['caja', 'cajas']],
  ['package', ['paquete', 'paquetes']],
  ['container', ['envase', 'envases']],
  ['packet', ['sobre', 'sobres']],
  ['bag', ['bolsa', 'bolsas']],
  ['can', ['lata', 'latas']],
  ['bottle', ['botella', 'botellas']],
  ['jar', ['frasco', 'frascos']],
  ['bar', ['barra', 'barras']],
  ['patty', ['torta de carne', 'tortas de carne']],
  ['bowl', ['tazón', 'tazones']],
  ['cookie', ['galleta', 'galletas']],
]);

/** "4 rebanadas", "1 1/2 tazas", "56 g". */
export function spanishPortion(one: Portion): string {
  if ('grams' in one) return `${figure(one.grams)} g`;
  if ('milliliters' in one) return `${figure(one.milliliters)} mL`;
  const [count, measure] = 'servings' in one ? [one.servings, 'serving'] : [one.count, measureName(one.measure)];
  const named = measures.get(measure);
  return `${countText(count)} ${named === undefined ? measure : named[count > 1 ? 1 : 0]}`;
}
