import type { Label } from '../../api.ts';
import layout from '../../ui/layout.module.css';
import text from '../../ui/text.module.css';
import styles from './RangeBar.module.css';

const shownFirst = ['energyKcal', 'sodiumMg', 'potassiumMg', 'phosphorusMg', 'proteinG', 'calciumMg', 'fatG', 'carbohydrateG'];

/** The range that each printed figure stands for, as a bar on a scale from zero. Unknown has no bar. */
export function Amounts({ label }: { readonly label: Label }) {
  const amounts = shownFirst.flatMap(key => label.read.amounts.filter(({ nutrient }) => nutrient === key));
  return (
    <section className={layout.sheet} aria-labelledby="amounts-title">
      <div className={layout.spread}>
        <h2 id="amounts-title">In {label.read.servingText ?? 'a serving'}</h2>
        <span className={`${text.small} ${text.soft}`}>dark: printed, with its rounding · gray: computed</span>
      </div>
      {amounts.map(amount => (
        <div className={styles.range} key={amount.nutrient}>
          <span>{upper(amount.name)}</span>
          <Bar range={amount.range} source={amount.source} />
          <span>{amount.text}</span>
        </div>
      ))}
      <p className={`${text.small} ${text.soft}`}>
        The range covers rounding only, not the 20 % that compliance allows (21 CFR 101.9(g)). What is not printed is unknown, not zero.
      </p>
    </section>
  );
}

function Bar({
  range,
  source,
}: {
  readonly range: readonly [number | null, number | null] | undefined;
  readonly source: string | undefined;
}) {
  const lo = range?.[0] ?? 0;
  const hi = range?.[1] ?? lo * 2;
  // The bar's scale ends at one and a half times the figure, so that its width shows how wide the rounding is.
  const most = Math.max(hi * 1.5, 1e-9);
  return (
    <svg viewBox="0 0 400 20" preserveAspectRatio="none" aria-hidden="true">
      <line className={styles.track} x1="0" x2="400" y1="10" y2="10" />
      {range !== undefined && (
        <rect
          className={source === 'computed' ? styles.computed : styles.printed}
          x={(lo / most) * 400}
          y="4"
          width={Math.max(3, ((hi - lo) / most) * 400)}
          height="12"
        />
      )}
    </svg>
  );
}

function upper(name: string): string {
  return name.charAt(0).toUpperCase() + name.slice(1);
}
