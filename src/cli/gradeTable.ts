import { type HandoutGrade, type HardSentence, targetGrade } from '#core/handout/gradeOf.ts';
import { plain } from './layOut.ts';

/** How many of the author's hard sentences a report points out. */
const mostPointedOut = 3;

/** The reading grades for whoever builds, one handout a line, with the author's hardest sentences: those she can mend. */
export function gradeTable(grades: ReadonlyMap<string, HandoutGrade | undefined>): string {
  return [...grades].map(([id, grade]) => (grade === undefined ? `${id}: not graded (English alone is)\n` : lines(id, grade))).join('');
}

function lines(id: string, { all, author, hardest }: HandoutGrade): string {
  const without = all.withoutFoodNames;
  const verdict = without !== undefined && without > targetGrade ? `, above the target of ${targetGrade}` : '';
  const own = author.withoutFoodNames === undefined ? '' : `; own text ${author.withoutFoodNames}`;
  return [
    `${id}: grade ${without ?? 'not known'} without food names, ${all.withFoodNames ?? 'not known'} with them${own}${verdict}`,
    ...hardest.author.slice(0, mostPointedOut).map(sentence => `  grade ${sentence.grade}: “${plain(sentence.text)}” (${why(sentence)})`),
  ]
    .map(one => `${one}\n`)
    .join('');
}

function why({ why: reasons, words, longWords }: HardSentence): string {
  return reasons
    .map(one =>
      one === 'long sentence'
        ? `${words} words`
        : `long words${longWords.length === 0 ? '' : `: ${plain(longWords.slice(0, 4).join(', '))}`}`,
    )
    .join('; ');
}
