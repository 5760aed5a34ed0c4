import type { Formula } from '../../api.ts';
import layout from '../../ui/layout.module.css';
import text from '../../ui/text.module.css';
import styles from './Calculators.module.css';

/** How it is worked out, one worked result, where it comes from, and when not to believe it. */
export function AboutFormula({ formula }: { readonly formula: Formula }) {
  const { inputs, example, sources, cautions } = formula;
  const given = Object.entries(example.inputs).map(([name, value]) => [inputs.find(one => one.name === name), value] as const);
  return (
    <div className={styles.about}>
      <section className={layout.sheet} aria-labelledby="math-title">
        <h2 id="math-title">The formula</h2>
        {formula.formula.map(line => (
          <p key={line} className={styles.math}>
            {line}
          </p>
        ))}
      </section>
      <section className={layout.sheet} aria-labelledby="example-title">
        <h2 id="example-title">Worked example</h2>
        <ul>
          {given.map(([input, value]) => (
            <li key={input?.name}>
              {input?.label}: <b>{exampleWords(input, value)}</b>
            </li>
          ))}
        </ul>
        <p className={styles.math}>gives</p>
        <ul>
          {example.results.map(({ name, label, text }) => (
            <li key={name}>
              {label}: <b>{text}</b>
            </li>
          ))}
        </ul>
        <p className={text.why}>{example.source}</p>
      </section>
      <section className={layout.sheet} aria-labelledby="cautions-title">
        <h2 id="cautions-title">When not to believe it</h2>
        <ul>
          {cautions.map(one => (
            <li key={one}>{one}</li>
          ))}
        </ul>
      </section>
      <section className={layout.sheet} aria-labelledby="sources-title">
        <h2 id="sources-title">Where it comes from</h2>
        <ul>
          {sources.map(one => (
            <li key={one}>{one}</li>
          ))}
        </ul>
      </section>
    </div>
  );
}

function exampleWords(input: Formula['inputs'][number] | undefined, value: string): string {
  if (input === undefined) return value;
  if (input.kind === 'figure') {
    const only = input.units.length === 1 ? input.units[0]!.unit : '';
    return only === '' || value.endsWith(only) ? value : `${value} ${only}`;
  }
  return input.options.find(one => one.key === value)?.words ?? value;
}
