import { useQuery } from '@tanstack/react-query';
import { useDeferredValue, useState } from 'react';
import type { JsonOf } from '#core/json/jsonOf.ts';
import { labelFields } from '#core/label/labelFields.ts';
import type { LabelJson, labelSchema } from '#core/label/labelJson.ts';
import { type PanelKey, panelKeys, panelLine, usPanelKeys } from '#core/label/panelKeys.ts';
import { answer, api, type ReadLabel } from '../../api.ts';
import button from '../../ui/Button.module.css';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';

const nameLines = ['name', 'maker', 'category', 'gtin', 'readOn', 'readAt'] as const;
const servingLines = {
  household: 'Serving, as printed (4 slices)',
  grams: labelFields.servingGrams.title,
  milliliters: labelFields.servingMilliliters.title,
} as const;

/** What the form has a line for; other panel keys are those that the label came with. */
type FieldKey = (typeof nameLines)[number] | keyof NonNullable<LabelJson['serving']> | PanelKey | 'statement' | 'notSignificantSourceOf';
type Fields = Readonly<Partial<Record<FieldKey, string>>>;
type Start = JsonOf<typeof labelSchema>;

/** A label to begin from; a new one has nothing printed yet. */
export const emptyLabel: Start = { panel: {} };

/**
 * One label, typed in the order of a US panel. What is typed is read as it stands; the audit speaks while typing. An
 * entry that could not be saved stays in the form.
 */
export function LabelForm(given: {
  readonly start: Start;
  readonly asksReason?: boolean;
  readonly onSave: (label: Start, reason: string) => Promise<void>;
  readonly onCancel?: () => void;
}) {
  const { start, asksReason = false, onSave, onCancel } = given;
  const [fields, setFields] = useState<Fields>(() => fieldsOf(start));
  const [reason, setReason] = useState('');
  const [error, setError] = useState<unknown>();
  const [busy, setBusy] = useState(false);
  const label = labelOf(fields, start);
  const draft = useDeferredValue(JSON.stringify(label));
  const reading = useQuery({
    queryKey: ['draft', draft],
    queryFn: () => answer(api.labels.read.$post({ json: { label: JSON.parse(draft) } })),
    placeholderData: before => before,
    staleTime: Number.POSITIVE_INFINITY,
  });
  const input = (key: FieldKey, name: string, required = false) => (
    <label className={layout.field} key={key}>
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
      className={layout.stack}
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
      <p className={text.soft}>
        Type what is printed: a number in the unit of the line, or the words (“&lt;1 g”, “470 mg 10%”). Leave empty what is not printed; it
        stays unknown.
      </p>
      <div className={layout.formgrid}>{nameLines.map(key => input(key, labelFields[key].title, key === 'name'))}</div>
      <div className={layout.formgrid}>{(['household', 'grams', 'milliliters'] as const).map(key => input(key, servingLines[key]))}</div>
      <div className={layout.formgrid}>{usPanelKeys.map(key => input(key, lineTitle(key)))}</div>
      {input('notSignificantSourceOf', labelFields.notSignificantSourceOf.title)}
      <label className={layout.field}>
        <span>{labelFields.statement.title}</span>
        <textarea value={fields.statement ?? ''} onChange={event => setFields({ ...fields, statement: event.target.value })} />
      </label>
      <Reading reading={reading.data} />
      {asksReason && (
        <label className={layout.field}>
          <span>Why is it corrected?</span>
          <input type="text" required value={reason} onChange={event => setReason(event.target.value)} />
        </label>
      )}
      <Told error={error} />
      <p className={layout.row}>
        <button type="submit" className={button.act} disabled={busy}>
          Save the label
        </button>
        {onCancel !== undefined && (
          <button type="button" className={button.quiet} onClick={onCancel}>
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
    <div className={layout.notice} role="status" aria-label="What is noticed while typing">
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

/** "Calories", "Total fat (g)", "Vitamin D (mcg)" */
function lineTitle(key: PanelKey): string {
  const { title, unit } = panelLine(key);
  if (unit === 'kcal') return title;
  return `${title.charAt(0)}${title.slice(1).toLowerCase().replace('itamin d', 'itamin D')} (${unit})`;
}

function fieldsOf({ panel, serving = {}, ...printed }: Start): Fields {
  const fields: Partial<Record<FieldKey, string>> = {};
  for (const key of [...nameLines, 'statement', 'notSignificantSourceOf'] as const)
    if (printed[key] !== undefined) fields[key] = printed[key];
  for (const key of ['household', 'grams', 'milliliters', 'perContainer'] as const)
    if (serving[key] !== undefined) fields[key] = String(serving[key]);
  for (const key of panelKeys) if (panel[key] !== undefined) fields[key] = String(panel[key]);
  return fields;
}

/** The label of the form; what the form has no line for is carried over from where it started. */
function labelOf(fields: Fields, start: Start): Start {
  const some = <Key extends FieldKey>(keys: readonly Key[]): Partial<Record<Key, string>> =>
    Object.assign({}, ...keys.map(key => (fields[key]?.trim() ? { [key]: fields[key].trim() } : {})));
  const { name, maker, category, gtin, readOn, readAt, statement, notSignificantSourceOf, id, serving, panel, ...kept } = start;
  return {
    ...kept,
    ...some([...nameLines, 'statement', 'notSignificantSourceOf']),
    serving: some(['household', 'grams', 'milliliters', 'perContainer']),
    panel: some(panelKeys.filter(key => usPanelKeys.some(one => one === key) || panel[key] !== undefined)),
  };
}
