import layout from '../../ui/layout.module.css';
import type { AssessmentDraft, FieldName, FlagName } from './assessmentDraft.ts';
import type { Choices } from './vocabulary.ts';

/** The draft of an assessment, and what takes its place when a part of it changes. */
export interface Part {
  readonly draft: AssessmentDraft;
  readonly onChange: (draft: AssessmentDraft) => void;
}

function withField(draft: AssessmentDraft, name: FieldName, value: string): AssessmentDraft {
  return { ...draft, fields: { ...draft.fields, [name]: value } };
}

export function Field({
  name,
  label,
  type = 'text',
  draft,
  onChange,
}: Part & { readonly name: FieldName; readonly label: string; readonly type?: 'text' | 'number' | 'date' }) {
  return (
    <label className={layout.field}>
      <span>{label}</span>
      <input
        type={type}
        step="any"
        value={draft.fields[name]}
        onChange={event => onChange(withField(draft, name, event.target.value))}
        autoComplete="off"
      />
    </label>
  );
}

export function Choice({
  name,
  label,
  choices,
  none,
  draft,
  onChange,
}: Part & {
  readonly name: FieldName;
  readonly label: string;
  readonly choices: Choices<string>;
  /** What stands for no choice; without it one is always chosen. */
  readonly none?: string;
}) {
  return (
    <label className={layout.field}>
      <span>{label}</span>
      <select value={draft.fields[name]} onChange={event => onChange(withField(draft, name, event.target.value))}>
        {none !== undefined && <option value="">{none}</option>}
        {choices.map(([value, words]) => (
          <option key={value} value={value}>
            {words}
          </option>
        ))}
      </select>
    </label>
  );
}

export function Tick({ name, label, draft, onChange }: Part & { readonly name: FlagName; readonly label: string }) {
  return (
    <label className={layout.row}>
      <input
        type="checkbox"
        checked={draft.flags[name]}
        onChange={event => onChange({ ...draft, flags: { ...draft.flags, [name]: event.target.checked } })}
      />
      <span>{label}</span>
    </label>
  );
}
