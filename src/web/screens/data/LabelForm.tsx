import { useQuery } from '@tanstack/react-query';
import { useDeferredValue, useState } from 'react';
import { labelFields } from '#core/label/labelFields.ts';
import { longestPrintedText } from '#core/label/labelJson.ts';
import { type PanelKey, panelLine, usPanelKeys } from '#core/label/panelKeys.ts';
import { answer, api, type ReadLabel } from '../../api.ts';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { ActionForm } from '../../ui/action/ActionForm.tsx';
import { Draft } from '../../ui/draft/Draft.tsx';
import { browserDraft } from '../../ui/draft/draftPlace.ts';
import { useDraft } from '../../ui/draft/useDraft.ts';
import { Field } from '../../ui/form/Field.tsx';
import { typedOf } from '../../ui/form/typed.ts';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import { type LabelEnds, useLabelActions } from './labelActions.ts';
import { isLineOf, type Label, labelOf, nameLines, servingLines, typedLabel } from './typedLabel.ts';

const servingTitles = {
  household: 'Serving, as printed (4 slices)',
  grams: labelFields.servingGrams.title,
  milliliters: labelFields.servingMilliliters.title,
} as const;

/** A label to begin from; a new one has nothing printed yet. */
export const emptyLabel: Label = { panel: {} };

/**
 * One label, typed in the order of a US panel. What is typed is read as it stands; the audit speaks while typing. An
 * entry that could not be saved stays in the form, and in the draft of that name.
 */
export function LabelForm<Saved>(
  given: LabelEnds<Saved> & {
    readonly start: Label;
    readonly draftName: string;
    readonly begunFrom?: string;
    readonly asksReason?: boolean;
  },
) {
  const { start, draftName, begunFrom, asksReason = false } = given;
  const [values, setValues] = useState(() => typedLabel(start));
  const asked = useDeferredValue(JSON.stringify(labelOf(values, start)));
  const reading = useQuery({
    queryKey: ['draft', asked],
    queryFn: () => answer(api.labels.read.$post({ json: { label: JSON.parse(asked) } })),
    placeholderData: before => before,
    staleTime: Number.POSITIVE_INFINITY,
  });
  const typed = typedOf(values, setValues, place => {
    const issue = reading.data?.issues.find(one => one.place.heading === place);
    return issue && `Found ${issue.found}, expected ${issue.expected}.`;
  });
  const draft = useDraft(browserDraft(draftName), typed, begunFrom);
  const { save, cancel, fault } = useLabelActions(start, values, draft.forget, given);
  const serving = typed.part('serving');
  const panel = typed.part('panel');
  return (
    <ActionForm action={save} className={layout.stack}>
      <Draft draft={draft} />
      <p className={text.soft}>
        Type what is printed: a number in the unit of the line, or the words (“&lt;1 g”, “470 mg 10%”). Leave empty what is not printed; it
        stays unknown.
      </p>
      <div className={layout.formgrid}>
        {nameLines.map(key => (
          <Field key={key} label={labelFields[key].title} isRequired={key === 'name'} {...typed.field(key)} />
        ))}
      </div>
      <div className={layout.formgrid}>
        {servingLines.map(key => (
          <Field key={key} label={servingTitles[key]} {...serving.field(key)} />
        ))}
      </div>
      <div className={layout.formgrid}>
        {usPanelKeys.map(key => (
          <Field key={key} label={lineTitle(key)} maxLength={200} {...panel.field(key)} />
        ))}
      </div>
      <Field label={labelFields.notSignificantSourceOf.title} {...typed.field('notSignificantSourceOf')} />
      <Field label={labelFields.statement.title} rows={5} maxLength={longestPrintedText} {...typed.field('statement')} />
      <Noticed reading={reading.data} />
      {asksReason && <Field label="Why is it corrected?" isRequired {...typed.field('reason')} />}
      <Told error={fault} />
      <p className={layout.row}>
        <ActionButton action={save} isMain submits />
        {cancel !== undefined && <ActionButton action={cancel} />}
      </p>
    </ActionForm>
  );
}

/** What is noticed of the whole label; what is wrong with one line stands beside it. */
function Noticed({ reading }: { readonly reading: ReadLabel | undefined }) {
  if (reading === undefined) return null;
  const counted = reading.additives.filter(({ counts, class: kind }) => counts && kind !== 'sodium');
  const issues = reading.issues.filter(({ place }) => !isLineOf(place.heading ?? ''));
  const beside = reading.issues.length - issues.length;
  return (
    <div className={layout.notice} role="status" aria-label="What is noticed while typing">
      {reading.findings.length === 0 && reading.issues.length === 0 ? <p>Nothing to look at so far.</p> : null}
      {reading.findings.map(({ message }) => (
        <p key={message}>
          <b>Look again.</b> {message}
        </p>
      ))}
      {beside > 0 && <p>{beside === 1 ? 'One line' : `${beside} lines`} cannot be read; what is expected stands there.</p>}
      {issues.map(({ place, found, expected, code }) => (
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
