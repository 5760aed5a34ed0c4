import { conditions, medicines, supplements, symptoms } from '#core/client/assessment/vocabularies.ts';
import { missingParts } from '#core/client/formulas/amputation.ts';
import type { Vocabulary } from '#core/client/vocabulary.ts';
import layout from '../../ui/layout.module.css';
import type { AssessmentDraft } from './assessmentDraft.ts';
import type { Part } from './DraftFields.tsx';

/** What is on record of each list of the assessment. */
export function TickedLists({ draft, onChange }: Part) {
  const { ticked } = draft;
  const set = (part: Partial<AssessmentDraft['ticked']>): void => onChange({ ...draft, ticked: { ...ticked, ...part } });
  return (
    <>
      <Ticks name="Conditions" of={conditions} ticked={ticked.conditions} onTicked={keys => set({ conditions: keys })} />
      <Ticks
        name="Missing parts of the body, one side"
        of={missingParts}
        ticked={ticked.missingParts}
        onTicked={keys => set({ missingParts: keys })}
      />
      <Ticks name="Medicines, by class" of={medicines} ticked={ticked.medicines} onTicked={keys => set({ medicines: keys })} />
      <Ticks name="Supplements" of={supplements} ticked={ticked.supplements} onTicked={keys => set({ supplements: keys })} />
      <Ticks name="Symptoms" of={symptoms} ticked={ticked.symptoms} onTicked={keys => set({ symptoms: keys })} />
    </>
  );
}

function Ticks<Key extends string>({
  name,
  of: { keys, words },
  ticked,
  onTicked,
}: {
  readonly name: string;
  readonly of: Vocabulary<Key>;
  readonly ticked: readonly Key[];
  readonly onTicked: (keys: readonly Key[]) => void;
}) {
  return (
    <fieldset>
      <legend>{name}</legend>
      <div className={layout.ticks}>
        {keys.map(key => (
          <label className={layout.row} key={key}>
            <input
              type="checkbox"
              checked={ticked.includes(key)}
              onChange={event => onTicked(event.target.checked ? [...ticked, key] : ticked.filter(one => one !== key))}
            />
            <span>{words(key)}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
