import type { Label } from '../../api.ts';
import layout from '../../ui/layout.module.css';
import { RangeOnScale, type ShownRange } from '../../ui/RangeOnScale.tsx';
import text from '../../ui/text.module.css';

const shownFirst = ['energyKcal', 'sodiumMg', 'potassiumMg', 'phosphorusMg', 'proteinG', 'calciumMg', 'fatG', 'carbohydrateG'];

type Amount = Label['read']['amounts'][number];

/** The range that each printed figure stands for, as a bar on a scale from zero. Unknown has no bar. */
export function Amounts({ label }: { readonly label: Label }) {
  const amounts = shownFirst.flatMap(key => label.read.amounts.filter(({ nutrient }) => nutrient === key));
  return (
    <section className={layout.sheet} aria-labelledby="amounts-title">
      <div className={layout.spread}>
        <h2 id="amounts-title">In {label.read.servingText ?? 'a serving'}</h2>
        <span className={`${text.small} ${text.soft}`}>strong: printed, with its rounding · pale: computed</span>
      </div>
      {amounts.map(amount => (
        <RangeOnScale key={amount.nutrient} name={upper(amount.name)} unit={amount.unit} range={rangeOf(amount)} words={amount.text} />
      ))}
      <p className={`${text.small} ${text.soft}`}>
        The range covers rounding only, not the 20 % that compliance allows (21 CFR 101.9(g)). What is not printed is unknown, not zero.
      </p>
    </section>
  );
}

function rangeOf({ range, source }: Amount): ShownRange | undefined {
  if (range === undefined) return undefined;
  const [from, to] = range;
  return { from: from ?? 0, to, kind: source === 'computed' ? 'computed' : 'exact' };
}

function upper(name: string): string {
  return name.charAt(0).toUpperCase() + name.slice(1);
}
