import type { KeptPlate, KeptYardstick } from '../../api.ts';
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
    <p className="sentence">
      <Choice
        label="Category"
        value={request.category}
        options={categories.map(name => [name, name])}
        onChange={category => onChange({ category, food: '' })}
        after=","
      />{' '}
      {portionText} each, on{' '}
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
    <span className="part">
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
