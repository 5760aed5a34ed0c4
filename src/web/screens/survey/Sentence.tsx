import type { KeptPlate, KeptYardstick } from '../../api.ts';
import { plainChoices } from '../../ui/form/choices.ts';
import { WordChoice } from '../../ui/form/WordChoice.tsx';
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
      <WordChoice
        label="Category"
        value={request.category}
        choices={plainChoices(categories)}
        onChange={category => onChange({ category, plate: '', food: '' })}
        after=","
      />{' '}
      <WordChoice
        label="Portion"
        value={request.portion !== undefined && 'servings' in request.portion ? String(request.portion.servings) : ''}
        choices={[['', request.portion === undefined ? portionText : 'the plate’s portion'], ...servings]}
        onChange={chosen => onChange({ servings: chosen })}
      />{' '}
      each, on{' '}
      <WordChoice
        label="Plate"
        value={request.plate}
        choices={plates.map(({ plate }) => [plate.id, plate.title])}
        onChange={plate => onChange({ plate })}
        after=","
      />{' '}
      judged by{' '}
      <WordChoice
        label="Yardstick"
        value={request.yardstick}
        choices={yardsticks.map(({ yardstick }) => [yardstick.id, yardstick.title])}
        onChange={yardstick => onChange({ yardstick, on: '' })}
        after=","
      />{' '}
      for{' '}
      <WordChoice<string>
        label="Setting"
        value={request.setting ?? ''}
        choices={[['', 'any setting'], ...Object.entries(settingNames)]}
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
