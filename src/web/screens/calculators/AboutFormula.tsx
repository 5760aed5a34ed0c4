import type { Formula } from '../../api.ts';
import styles from './Calculators.module.css';

/** How it is worked out, one worked result, where it comes from, and when not to believe it. */
export function AboutFormula({ formula }: { readonly formula: Formula }) {
  const { inputs, example, results, sources, cautions } = formula;
  const given = Object.entries(example.inputs).map(([name, value]) => [inputs.find(one => one.name === name), value] as const);
  return (
    <div className={styles.about}>
      <section className="sheet" aria-labelledby="math-title">
        <h2 id="math-title">The formula</h2>
        {formula.formula.map(line => (
          <p key={line} className={styles.math}>
            {line}
          </p>
        ))}
      </section>
      <section className="sheet" aria-labelledby="example-title">
        <h2 id="example-title">Worked example</h2>
        <ul>
          {given.map(([input, value]) => (
            <li key={input?.name}>
              {input?.label}: <b>{exampleWords(input, value)}</b>
            </li>
          ))}
        </ul>
        <p>
          gives{' '}
          {example.results.map(({ name, value }, at) => {
            const { label = name, unit = '' } = results.find(one => one.name === name) ?? {};
            const figure = typeof value === 'object' ? value.join(' – ') : String(value).replace('-', '−');
            return (
              <span key={name}>
                {at === 0 ? '' : '; '}
                {label}{' '}
                <b>
                  {figure}
                  {unit === '' ? '' : ` ${unit}`}
                </b>
              </span>
            );
          })}
          <span className="why">{example.source}</span>
        </p>
      </section>
      <section className="sheet" aria-labelledby="cautions-title">
        <h2 id="cautions-title">When not to believe it</h2>
        <ul>
          {cautions.map(one => (
            <li key={one}>{one}</li>
          ))}
        </ul>
      </section>
      <section className="sheet" aria-labelledby="sources-title">
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
  return value
    .split(',')
    .map(key => input.options.find(one => one.key === key)?.words ?? key)
    .join(', ');
}
