import { useQuery } from '@tanstack/react-query';
import { useDeferredValue, useState } from 'react';
import { answer, api, type ReadLabel } from '../../api.ts';
import { Told } from '../../ui/Told.tsx';

/** The lines of a US panel, in its order (21 CFR 101.9(c), (d)). */
const panelLines = [
  ['energyKcal', 'Calories'],
  ['fatG', 'Total fat (g)'],
  ['saturatedFatG', 'Saturated fat (g)'],
  ['transFatG', 'Trans fat (g)'],
  ['cholesterolMg', 'Cholesterol (mg)'],
  ['sodiumMg', 'Sodium (mg)'],
  ['carbohydrateG', 'Total carbohydrate (g)'],
  ['fiberG', 'Dietary fiber (g)'],
  ['totalSugarsG', 'Total sugars (g)'],
  ['addedSugarsG', 'Added sugars (g)'],
  ['proteinG', 'Protein (g)'],
  ['vitaminDMcg', 'Vitamin D (mcg)'],
  ['calciumMg', 'Calcium (mg)'],
  ['ironMg', 'Iron (mg)'],
  ['potassiumMg', 'Potassium (mg)'],
  ['phosphorusMg', 'Phosphorus (mg or %)'],
] as const;
const nameLines = [
  ['name', 'Name of the food'],
  ['maker', 'Maker'],
  ['category', 'Category'],
  ['gtin', 'Bar code'],
  ['readOn', 'Day read (yyyy-mm-dd)'],
  ['readAt', 'Shop'],
] as const;

type Printed = Readonly<Record<string, unknown>>;

/**
 * One label, typed in the order of a US panel. What is typed is read as it stands; the audit speaks while typing. An
 * entry that could not be saved stays in the form.
 */
export function LabelForm(given: {
  readonly start: Printed;
  readonly asksReason?: boolean;
  readonly onSave: (label: Record<string, unknown>, reason: string) => Promise<void>;
  readonly onCancel?: () => void;
}) {
  const { start, asksReason = false, onSave, onCancel } = given;
  const [fields, setFields] = useState<Readonly<Record<string, string>>>(() => fieldsOf(start));
  const [reason, setReason] = useState('');
  const [error, setError] = useState<unknown>();
  const [busy, setBusy] = useState(false);
  const label = labelOf(fields, start);
  const draft = useDeferredValue(JSON.stringify(label));
  const reading = useQuery({
    queryKey: ['draft', draft],
    queryFn: () => answer<ReadLabel>(api.labels.read.$post({ json: { label: JSON.parse(draft) } })),
    placeholderData: before => before,
    staleTime: Number.POSITIVE_INFINITY,
  });
  const input = (key: string, name: string, required = false) => (
    <label className="field" key={key}>
      <span>{name}</span>
      <input
        type="text"
        required={required}
        value={fields[key] ?? ''}
        autoComplete="off"
        onChange={event => setFields({ ...fields, [key]: event.target.value })}
      />
    </label>
  );
  return (
    <form
      className="stack"
      onSubmit={async event => {
        event.preventDefault();
        setBusy(true);
        setError(undefined);
        try {
          await onSave(label, reason);
        } catch (thrown) {
          setError(thrown);
        } finally {
          setBusy(false);
        }
      }}
    >
      <p className="soft">
        Type what is printed: a number in the unit of the line, or the words (“&lt;1 g”, “470 mg 10%”). Leave empty what is not printed; it
        stays unknown.
      </p>
      <div className="formgrid">{nameLines.map(([key, name]) => input(key, name, key === 'name'))}</div>
      <div className="formgrid">
        {input('household', 'Serving, as printed (4 slices)')}
        {input('grams', 'Serving, grams')}
        {input('milliliters', 'Serving, milliliters')}
      </div>
      <div className="formgrid">{panelLines.map(([key, name]) => input(key, name))}</div>
      {input('notSignificantSourceOf', 'Not a significant source of')}
      <label className="field">
        <span>Ingredient statement</span>
        <textarea value={fields.statement ?? ''} onChange={event => setFields({ ...fields, statement: event.target.value })} />
      </label>
      <Reading reading={reading.data} />
      {asksReason && (
        <label className="field">
          <span>Why is it corrected?</span>
          <input type="text" required value={reason} onChange={event => setReason(event.target.value)} />
        </label>
      )}
      <Told error={error} />
      <p className="row">
        <button type="submit" className="act" disabled={busy}>
          Save the label
        </button>
        {onCancel !== undefined && (
          <button type="button" className="quiet" onClick={onCancel}>
            Cancel
          </button>
        )}
      </p>
    </form>
  );
}

function Reading({ reading }: { readonly reading: ReadLabel | undefined }) {
  if (reading === undefined) return null;
  const counted = reading.additives.filter(({ counts, class: kind }) => counts && kind !== 'sodium');
  return (
    <div className="notice" role="status" aria-label="What is noticed while typing">
      {reading.findings.length === 0 && reading.issues.length === 0 ? <p>Nothing to look at so far.</p> : null}
      {reading.findings.map(({ message }) => (
        <p key={message}>
          <b>Look again.</b> {message}
        </p>
      ))}
      {reading.issues.map(({ place, found, expected, code }) => (
        <p key={`${code}${place.heading}${found}`}>
          {place.heading === undefined ? '' : `${place.heading}: `}found {found}, expected {expected}.
        </p>
      ))}
      {counted.length > 0 && <p>Additives that count: {[...new Set(counted.map(({ name }) => name))].join(', ')}.</p>}
    </div>
  );
}

function fieldsOf(printed: Printed): Record<string, string> {
  const serving = (printed.serving ?? {}) as Printed;
  const panel = (printed.panel ?? {}) as Printed;
  const flat = { ...printed, ...serving, ...panel };
  return Object.fromEntries(
    Object.entries(flat).flatMap(([key, value]) => (typeof value === 'string' || typeof value === 'number' ? [[key, String(value)]] : [])),
  );
}

/** The label of the form; what the form has no line for is carried over from where it started. */
function labelOf(fields: Readonly<Record<string, string>>, start: Printed): Record<string, unknown> {
  const kept = Object.fromEntries(
    ['market', 'basis', 'state', 'front', 'otherColumns', 'referenceAmount', 'unsaltedVersionOf'].flatMap(key =>
      start[key] === undefined ? [] : [[key, start[key]]],
    ),
  );
  const some = (keys: readonly string[]): Record<string, string> =>
    Object.fromEntries(keys.flatMap(key => ((fields[key] ?? '').trim() === '' ? [] : [[key, fields[key]!.trim()]])));
  const startPanel = Object.keys((start.panel ?? {}) as object);
  return {
    ...kept,
    ...some([...nameLines.map(([key]) => key), 'statement', 'notSignificantSourceOf']),
    serving: some(['household', 'grams', 'milliliters', 'perContainer']),
    panel: some([...new Set([...panelLines.map(([key]) => key), ...startPanel])]),
  };
}
