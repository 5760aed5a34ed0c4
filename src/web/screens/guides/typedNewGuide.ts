import type { GuideTyped } from '#core/guide/guideFromJson.ts';
import type { SurveyRequest } from '../survey/surveyRequest.ts';
import type { SurveySearch } from '../survey/surveySearch.ts';

/** A guide that is begun, as its form holds it: the sentence of its survey, with every part there, its title, and who writes it. */
export interface TypedNewGuide {
  readonly title: string;
  readonly author: string;
  readonly credentials: string;
  readonly search: Required<SurveySearch>;
}

const emptySearch: Required<SurveySearch> = {
  category: '',
  plate: '',
  yardstick: '',
  setting: '',
  on: '',
  servings: '',
  columns: '',
  show: '',
  food: '',
};

export function typedNewGuide(search: SurveySearch): TypedNewGuide {
  return { title: '', author: '', credentials: '', search: { ...emptySearch, ...search } };
}

/** The guide that is begun. Everything else is written in its own screen. */
export function newGuideOf(
  { title, author, credentials }: TypedNewGuide,
  request: SurveyRequest,
  yardstickTitle: string,
  today: string,
): GuideTyped {
  const { category, plate, yardstick, setting, portion, switchedOn = [] } = request;
  return {
    title,
    purpose: `Foods of the category ${category} that are ${yardstickTitle}.`,
    whoItIsFor: 'Adults with chronic kidney disease. Ask your kidney team which limits are yours.',
    publishedOn: today,
    author: { name: author, ...(credentials === '' ? {} : { credentials }) },
    survey: {
      category,
      plateId: plate,
      yardstickId: yardstick,
      switchedOn,
      ...(setting === undefined ? {} : { setting }),
      ...(portion !== undefined && 'servings' in portion ? { servings: portion.servings } : {}),
    },
  };
}

/** The id names the guide's files: small letters, digits and hyphens of its title, with letters that tell two guides of one title apart. */
export function guideIdOf(title: string): string {
  const plain = title
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, 60)
    .replace(/^-|-$/g, '');
  return [plain, crypto.randomUUID().slice(0, 4)].filter(Boolean).join('-');
}
