import { useQuery } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import { useEffect, useState } from 'react';
import { isSameJson } from '#core/json/isSameJson.ts';
import { answer, api, type Formula, type FormulaWorked } from '../../api.ts';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { ActionForm } from '../../ui/action/ActionForm.tsx';
import { useOffered } from '../../ui/action/offered.ts';
import { typedOf } from '../../ui/form/typed.ts';
import layout from '../../ui/layout.module.css';
import { Empty } from '../../ui/page/Empty.tsx';
import { Page } from '../../ui/page/Page.tsx';
import { Told } from '../../ui/Told.tsx';
import { useSettled } from '../../ui/useSettled.ts';
import { AboutFormula } from './AboutFormula.tsx';
import { calculatorActions } from './actions.ts';
import styles from './Calculators.module.css';
import { HandOn } from './HandOn.tsx';
import { InputField } from './InputField.tsx';
import { Result } from './Result.tsx';
import { emptyInputs, inputsOf } from './typedInputs.ts';
import { useFormulas } from './useFormulas.ts';

const route = getRouteApi('/calculators/$name');

/** One formula: its fields, the result beside them at once, and everything that a reader needs to judge it. */
export function CalculatorScreen() {
  const { name } = route.useParams();
  const formulas = useFormulas();
  const formula = formulas.data?.find(one => one.name === name);
  if (formula !== undefined) return <Worksheet key={name} formula={formula} />;
  return (
    <Page title="Calculators" isReading={formulas.isPending} fault={formulas.error}>
      {formulas.data !== undefined && (
        <div role="alert">
          <Empty>
            There is no formula of this name. Go back to <Link to="/calculators">Calculators</Link> and choose one.
          </Empty>
        </div>
      )}
    </Page>
  );
}

/** Nothing that is typed here is kept, in no draft either: it may be a client's. */
function Worksheet({ formula }: { readonly formula: Formula }) {
  const { name, title, subject, purpose, inputs } = formula;
  const [values, setValues] = useState(() => emptyInputs(inputs));
  const [isAsked, setAsked] = useState(false);
  const [form, setForm] = useState<HTMLFormElement | null>(null);
  // Whoever asks for a result that cannot be is taken to the field that stands in its way.
  const [times, setTimes] = useState(0);
  useEffect(() => {
    if (times > 0) form?.querySelector<HTMLElement>('[aria-invalid]')?.focus();
  }, [times, form]);
  const given = inputsOf(inputs, values);
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
  const wrongAt = (input: string): string | undefined => {
    const issue = issues.find(({ place }) => place.heading === input);
    if (issue === undefined || (issue.code === 'input-missing' && !isAsked)) return undefined;
    return issueWords(issue);
  };
  const typed = typedOf(values, setValues, wrongAt);
  const missing = issues
    .filter(({ code }) => code === 'input-missing')
    .map(({ place }) => inputs.find(one => one.name === place.heading)?.label);
  const together = issues.filter(({ place }) => place.heading === undefined).map(({ expected }) => `These figures together: ${expected}`);
  const ask = (): void => {
    setAsked(true);
    setTimes(times + 1);
  };
  const actions = calculatorActions(formula, typed, { isBegun, ask, forgetAsking: () => setAsked(false) });
  useOffered([actions.example, actions.clear]);
  return (
    <Page
      title={title}
      above={
        <>
          <Link to="/calculators">Calculators</Link> · {subject}
        </>
      }
      about={purpose}
    >
      <div className={styles.columns}>
        <ActionForm action={actions.work} className={`${layout.sheet} ${layout.stack}`} label={title} formRef={setForm}>
          <div className={styles.inputs}>
            {inputs.map(input => (
              <InputField key={input.name} input={input} field={typed.field(input.name)} />
            ))}
          </div>
          <p className={`${layout.row} ${layout.noprint}`}>
            <ActionButton action={actions.work} isMain submits />
            <ActionButton action={actions.example} />
            <ActionButton action={actions.clear} />
          </p>
        </ActionForm>
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
    </Page>
  );
}

function issueWords({ code, found, expected }: FormulaWorked['issues'][number]): string {
  if (code === 'input-missing') return 'Still needed.';
  if (code === 'impossible') return `${found} is out of range: expected ${expected}`;
  if (code === 'not-a-number') return `“${found}” cannot be read: expected ${expected}`;
  return `Expected ${expected}`;
}
