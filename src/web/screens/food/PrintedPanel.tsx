import { type Nutrient, nutrientKeys } from '#core/quantity/nutrients.ts';
import type { Label } from '../../api.ts';
import layout from '../../ui/layout.module.css';
import text from '../../ui/text.module.css';
import styles from './PrintedPanel.module.css';

/** In the order in which a US panel prints them (21 CFR 101.9(c), (d)); energy has a line of its own above. */
const order = nutrientKeys.filter(key => key !== 'energyKcal');
/** Told even where the label is silent: what kidneys are about. */
const always: readonly Nutrient[] = ['sodiumMg', 'potassiumMg', 'phosphorusMg', 'proteinG'];

/** The label as the package printed it: the words that were typed, nothing computed. */
export function PrintedPanel({ label }: { readonly label: Label }) {
  const { panel, readOn, readAt, front } = label.printed;
  const amount = (key: Nutrient) => label.read.amounts.find(({ nutrient }) => nutrient === key);
  const words = (key: Nutrient): string => {
    const figure = panel[key];
    if (figure === undefined) return amount(key)?.asPrinted ?? 'not on the label';
    return typeof figure === 'number' || /^[\d.,\s]+$/.test(figure) ? `${figure} ${amount(key)?.unit ?? ''}` : figure;
  };
  const shown = order.filter(key => key in panel || always.includes(key) || amount(key)?.asPrinted !== undefined);
  return (
    <section className={layout.sheet} aria-labelledby="printed-title">
      <h2 id="printed-title">As printed</h2>
      <p className={`${text.small} ${text.soft}`}>
        {readOn === undefined ? 'day of reading not noted' : `read ${readOn}`}
        {readAt === undefined ? '' : ` at ${readAt}`}
        {label.recheckOn === undefined ? '' : ` · recheck by ${label.recheckOn}`}
        {front?.length ? ` · on the front: ${front.join(', ')}` : ''}
      </p>
      <table className={styles.panel}>
        <caption className={text.unseen}>Nutrition panel as printed</caption>
        <tbody>
          <tr>
            <th scope="row">Serving</th>
            <td className={text.num}>{label.read.servingText ?? 'not on the label'}</td>
          </tr>
          <tr className={styles.big}>
            <th scope="row">Calories</th>
            <td className={text.num}>{panel.energyKcal ?? panel.energyKj ?? 'not on the label'}</td>
          </tr>
          {shown.map(key => (
            <tr key={key}>
              <th scope="row">{upper(amount(key)?.name ?? key)}</th>
              <td className={`${text.num} ${key in panel ? '' : text.soft}`}>{words(key)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function upper(name: string): string {
  return name.charAt(0).toUpperCase() + name.slice(1);
}
