import { useQuery } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import { useEffect, useRef, useState } from 'react';
import { isSameJson } from '#core/json/isSameJson.ts';
import { answer, api, type Formula, type FormulaWorked } from '../../api.ts';
import button from '../../ui/Button.module.css';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import { useSettled } from '../../ui/useSettled.ts';
import { AboutFormula } from './AboutFormula.tsx';
import styles from './Calculators.module.css';
import { HandOn } from './HandOn.tsx';
import { InputField } from './InputField.tsx';
import { Result } from './Result.tsx';
import { emptyInputs, exampleInputs, inputsOf } from './typedInputs.ts';
import { useFormulas } from './useFormulas.ts';

const route = getRouteApi('/calculators/$name');

/** One formula: its fields, the result beside them at once, and everything that a reader needs to judge it. */
export function CalculatorScreen() {
  const { name } = route.useParams();
  const formulas = useFormulas();
  const formula = formulas.data?.find(one => one.name === name);
  if (formula !== undefined) return <Worksheet key={name} formula={formula} />;
  return (
    <>
      <h1>Calculators</h1>
      <Told error={formulas.error} />
      {formulas.data === undefined ? (
        <p role="status">Reading …</p>
      ) : (
        <p className={layout.notice} role="alert">
          There is no formula of this name. Go back to <Link to="/calculators">Calculators</Link> and choose one.
        </p>
      )}
    </>
  );
}

function Worksheet({ formula }: { readonly formula: Formula }) {
  const { name, title, subject, purpose, inputs } = formula;
  const [typed, setTyped] = useState(() => emptyInputs(inputs));
  const [isAsked, setAsked] = useState(false);
  const form = useRef<HTMLFormElement>(null);
  // Whoever asks for a result that cannot be is taken to the field that stands in its way.
  const [times, setTimes] = useState(0);
  useEffect(() => {
    if (times > 0) form.current?.querySelector<HTMLElement>('[aria-invalid]')?.focus();
  }, [times]);
  const given = inputsOf(inputs, typed);
  const settled = useSettled(given, 150);
  const isBegun = Object.keys(given).length > 0;
  const worked = useQuery({
    queryKey: ['formula', name, settled],
    queryFn: () => answer(api.formulas[':name'].$post({ param: { name }, json: { inputs: settled } })),
    // What was typed is nobody else's: it goes as soon as it is not shown.
    gcTime: 0,
  });
  const isCurrent = isSameJson(settled, given);
  const data = isCurrent ? worked.data : undefined;
  const issues = data?.issues ?? [];
  const wrongOf = (input: string): string | undefined => {
    const issue = issues.find(({ place }) => place.heading === input);
    if (issue === undefined || (issue.code === 'input-missing' && !isAsked)) return undefined;
    return issueWords(issue);
  };
  const missing = issues
    .filter(({ code }) => code === 'input-missing')
    .map(({ place }) => inputs.find(one => one.name === place.heading)?.label);
  const together = issues.filter(({ place }) => place.heading === undefined).map(({ expected }) => `These figures together: ${expected}`);
  return (
    <>
      <div>
        <span className={text.soft}>
          <Link to="/calculators">Calculators</Link> · {subject}
        </span>
        <h1>{title}</h1>
        <p className={text.soft}>{purpose}</p>
      </div>
      <div className={styles.columns}>
        <form
          ref={form}
          className={`${layout.sheet} ${layout.stack}`}
          aria-label={title}
          noValidate
          onSubmit={event => {
            event.preventDefault();
            setAsked(true);
            setTimes(times + 1);
          }}
        >
          <div className={styles.inputs}>
            {inputs.map(input => (
              <InputField
                key={input.name}
                input={input}
                typed={typed[input.name] ?? { text: '', unit: '' }}
                wrong={wrongOf(input.name)}
                onChange={next => setTyped({ ...typed, [input.name]: next })}
              />
            ))}
          </div>
          <p className={`${layout.row} ${layout.noprint}`}>
            <button type="submit" className={button.act}>
              Work it out
            </button>
            <button type="button" className={button.quiet} onClick={() => setTyped(exampleInputs(formula))}>
              Use the example
            </button>
            <button
              type="button"
              className={button.quiet}
              disabled={!isBegun}
              onClick={() => {
                setAsked(false);
                setTyped(emptyInputs(inputs));
              }}
            >
              Clear
            </button>
          </p>
        </form>
        <div className={`${layout.stack} ${layout.beside}`}>
          <Result
            results={data?.results ?? null}
            missing={missing.filter(one => one !== undefined)}
            together={together}
            isWrong={issues.some(({ code }) => code !== 'input-missing')}
            isBegun={isBegun}
          />
          <Told error={worked.error} />
          {data?.results != null && <HandOn formula={formula} results={data.results} />}
        </div>
      </div>
      <AboutFormula formula={formula} />
    </>
  );
}

function issueWords({ code, found, expected }: FormulaWorked['issues'][number]): string {
  if (code === 'input-missing') return 'Still needed.';
  if (code === 'impossible') return `${found} is out of range: expected ${expected}`;
  if (code === 'not-a-number') return `“${found}” cannot be read: expected ${expected}`;
  return `Expected ${expected}`;
}
