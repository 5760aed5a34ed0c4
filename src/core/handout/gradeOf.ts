import { roundHalfUp } from '#core/quantity/rounding.ts';
import { countText, sentencesOf } from './countText.ts';
import type { HandoutPage, Line } from './handoutPage.ts';
import { fleschKincaidGrade } from './readability.ts';

/** A handout aims at this grade or lower (AMA and NIH advise 5 to 6, from memory). */
export const targetGrade = 6;

/** From here on a sentence counts as long, in words (own decision). */
const longSentence = 15;
const mostHard = 10;

/**
 * Grades to one decimal, undefined where there are no sentences. Without food names a sentence that stands there for many foods counts
 * once, so that a long list of short lines does not make hard sentences look easy; with them every sentence counts as it stands.
 */
export interface Grades {
  readonly withFoodNames?: number;
  readonly withoutFoodNames?: number;
  readonly sentences: number;
  readonly words: number;
}

export interface HardSentence {
  readonly text: string;
  readonly grade: number;
  readonly words: number;
  readonly why: readonly ('long sentence' | 'long words')[];
  readonly longWords: readonly string[];
}

export interface HandoutGrade {
  readonly all: Grades;
  readonly program: Grades;
  readonly author: Grades;
  /** Above grade 6, hardest first. */
  readonly hardest: { readonly program: readonly HardSentence[]; readonly author: readonly HardSentence[] };
}

/**
 * The Flesch-Kincaid grade of a handout's sentences: texts and lists, not headings, tables, foods to eat or buy and who wrote it,
 * which are no sentences. Undefined for a language other than English, which the formula is not for.
 */
export function gradeOf(page: HandoutPage): HandoutGrade | undefined {
  if (page.language !== 'en') return undefined;
  const sentences = linesOf(page).flatMap(gradedSentences);
  const by = (who: Line['by']): readonly Graded[] => sentences.filter(one => one.by === who);
  return {
    all: grades(sentences),
    program: grades(by('program')),
    author: grades(by('author')),
    hardest: { program: hardest(by('program')), author: hardest(by('author')) },
  };
}

function linesOf({ sections }: HandoutPage): readonly Line[] {
  return sections.flatMap(({ blocks }) =>
    blocks.flatMap(block => (block.kind === 'text' ? [block.line] : block.kind === 'list' && block.look !== 'boxes' ? block.lines : [])),
  );
}

interface Graded {
  readonly by: Line['by'];
  readonly text: string;
  /** The sentence without food names and figures: the same for each food of a list. */
  readonly pattern: string;
  /** Food names are not in it. */
  readonly own: ReturnType<typeof countText>;
  readonly foods: ReturnType<typeof countText>;
}

const foodMark = '\uFFFC';

function gradedSentences({ by, runs }: Line): readonly Graded[] {
  const foods = runs.filter(({ kind }) => kind === 'food').map(({ text }) => text);
  const text = runs.map(run => (run.kind === 'food' ? foodMark : run.text.replaceAll(foodMark, ' '))).join('');
  let next = 0;
  return sentencesOf(text).map(sentence => {
    const here = foods.slice(next, next + sentence.split(foodMark).length - 1);
    next += here.length;
    return {
      by,
      text: sentence.split(foodMark).reduce((told, words, at) => told + here[at - 1] + words),
      pattern: sentence.replaceAll(foodMark, ' ').replace(/\d[\d.,]*/g, '#'),
      own: countText(sentence.replaceAll(foodMark, ' ')),
      foods: countText(here.join(', ')),
    };
  });
}

function grades(sentences: readonly Graded[]): Grades {
  const sum = (of: (one: Graded) => number): number => sentences.reduce((total, one) => total + of(one), 0);
  const all = {
    words: sum(({ own, foods }) => own.words + foods.words),
    syllables: sum(({ own, foods }) => own.syllables + foods.syllables),
  };
  const withNames = fleschKincaidGrade({ ...all, sentences: sentences.length });
  const patterns = [...new Map(sentences.map(one => [one.pattern, one.own])).values()].filter(({ words }) => words > 0);
  const without = fleschKincaidGrade({
    words: patterns.reduce((total, { words }) => total + words, 0),
    syllables: patterns.reduce((total, { syllables }) => total + syllables, 0),
    sentences: patterns.length,
  });
  return {
    ...(withNames === undefined ? {} : { withFoodNames: roundHalfUp(withNames, 1) }),
    ...(without === undefined ? {} : { withoutFoodNames: roundHalfUp(without, 1) }),
    sentences: sentences.length,
    words: all.words,
  };
}

function hardest(sentences: readonly Graded[]): readonly HardSentence[] {
  const hard = new Map<string, HardSentence>();
  for (const { text, own } of sentences) {
    const grade = fleschKincaidGrade({ ...own, sentences: 1 });
    if (grade === undefined || grade <= targetGrade) continue;
    const isLong = own.words > longSentence;
    const hasLongWords = own.syllables / own.words > 1.5 || !isLong;
    hard.set(text, {
      text,
      grade: roundHalfUp(grade, 1),
      words: own.words,
      why: [...(isLong ? (['long sentence'] as const) : []), ...(hasLongWords ? (['long words'] as const) : [])],
      longWords: own.longWords,
    });
  }
  return [...hard.values()].sort((a, b) => b.grade - a.grade || (a.text < b.text ? -1 : 1)).slice(0, mostHard);
}
