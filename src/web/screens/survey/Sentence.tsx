import type { KeptPlate, KeptYardstick } from '../../api.ts';
import styles from './Sentence.module.css';
import { type SurveyRequest, settingNames } from './surveyRequest.ts';
import type { SurveySearch } from './surveySearch.ts';

/** The survey as one sentence; each part is a list to choose from. */
export function Sentence(given: {
  readonly request: SurveyRequest;
  readonly portionText: string;
  readonly categories: readonly string[];
  readonly plates: readonly KeptPlate[];
  readonly yardsticks: readonly KeptYardstick[];
  readonly onChange: (change: Partial<SurveySearch>) => void;
}) {
  const { request, portionText, categories, plates, yardsticks, onChange } = given;
  return (
    <p className={styles.sentence}>
      <Choice
        label="Category"
        value={request.category}
        options={categories.map(name => [name, name])}
        onChange={category => onChange({ category, plate: '', food: '' })}
        after=","
      />{' '}
      <Choice
        label="Portion"
        value={request.portion !== undefined && 'servings' in request.portion ? String(request.portion.servings) : ''}
        options={[['', request.portion === undefined ? portionText : 'the plate’s portion'], ...servings]}
        onChange={servings => onChange({ servings })}
        after=""
      />{' '}
      each, on{' '}
      <Choice
        label="Plate"
        value={request.plate}
        options={plates.map(({ plate }) => [String(plate.id), String(plate.title)])}
        onChange={plate => onChange({ plate })}
        after=","
      />{' '}
      judged by{' '}
      <Choice
        label="Yardstick"
        value={request.yardstick}
        options={yardsticks.map(({ yardstick }) => [String(yardstick.id), String(yardstick.title)])}
        onChange={yardstick => onChange({ yardstick, on: '' })}
        after=","
      />{' '}
      for{' '}
      <Choice
        label="Setting"
        value={request.setting ?? ''}
        options={[['', 'any setting'], ...Object.entries(settingNames)]}
        onChange={setting => onChange({ setting })}
        after="."
      />
    </p>
  );
}

const servings: readonly (readonly [string, string])[] = [
  ['0.25', '1/4 serving'],
  ['0.5', '1/2 serving'],
  ['0.75', '3/4 serving'],
  ['1', '1 serving'],
  ['1.5', '1 1/2 servings'],
  ['2', '2 servings'],
  ['3', '3 servings'],
];

/** `after` is the sign behind the choice: it stays on the line of its word. */
function Choice({
  label,
  value,
  options,
  onChange,
  after,
}: {
  readonly label: string;
  readonly value: string;
  readonly options: readonly (readonly [string, string])[];
  readonly onChange: (value: string) => void;
  readonly after: string;
}) {
  return (
    <span className={styles.part}>
      <select aria-label={label} value={value} onChange={event => onChange(event.target.value)}>
        {options.some(([id]) => id === value) ? null : <option value={value}>{value}</option>}
        {options.map(([id, name]) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </select>
      {after}
    </span>
  );
}
