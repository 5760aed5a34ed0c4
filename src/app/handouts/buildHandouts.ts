import { Fault, type Issue, type Reading } from '#core/errors.ts';
import type { PageDress } from '#core/guide/html/guideCss.ts';
import { buildHandout } from '#core/handout/buildHandout.ts';
import { gradeOf, type HandoutGrade } from '#core/handout/gradeOf.ts';
import type { HandoutInput } from '#core/handout/handout.ts';
import { handoutHtml } from '#core/handout/html/handoutHtml.ts';
import { handoutIndexHtml } from '#core/handout/html/indexHtml.ts';
import type { PdfPrinter, SiteFiles } from '../ports.ts';

export interface HandoutsInput {
  readonly handouts: readonly HandoutInput[];
  readonly printPdf?: PdfPrinter;
}

export interface BuiltHandouts {
  readonly files: SiteFiles;
  /** By id; without a grade for a language that is not graded. */
  readonly grades: ReadonlyMap<string, HandoutGrade | undefined>;
}

const pdfs: readonly (readonly [end: string, dress: PageDress])[] = [
  ['a4.pdf', { paper: 'a4' }],
  ['letter.pdf', { paper: 'letter' }],
  ['large-print.a4.pdf', { paper: 'a4', largePrint: true }],
  ['large-print.letter.pdf', { paper: 'letter', largePrint: true }],
];

/**
 * Every file of a folder of handouts by its path. The same input gives the same bytes, PDF aside.
 *
 * @throws Fault handout-not-valid for two handouts of one id; what buildHandout and the printer of PDFs throw.
 */
export async function buildHandouts({ handouts, printPdf }: HandoutsInput): Promise<Reading<BuiltHandouts>> {
  const built = handouts.map(buildHandout);
  const pages = built.map(({ value }) => value);
  const twin = pages.find(({ id }, at) => pages.findIndex(other => other.id === id) < at);
  if (twin !== undefined) throw new Fault('handout-not-valid', `Two handouts have the id "${twin.id}"; it names their files.`);
  const files = new Map<string, string | Uint8Array>([['index.html', handoutIndexHtml(pages)]]);
  const grades = new Map<string, HandoutGrade | undefined>();
  for (const page of pages) {
    const grade = gradeOf(page);
    grades.set(page.id, grade);
    files.set(`${page.id}.html`, handoutHtml(page));
    files.set(`${page.id}.large-print.html`, handoutHtml(page, { largePrint: true }));
    files.set(`${page.id}.grade.json`, gradeJson(page.language, grade));
    if (printPdf === undefined) continue;
    for (const [end, dress] of pdfs) files.set(`${page.id}.${end}`, await printPdf(handoutHtml(page, dress)));
  }
  const issues: Issue[] = built.flatMap(one => one.issues);
  return { value: { files, grades }, issues };
}

function gradeJson(language: string, grade: HandoutGrade | undefined): string {
  const told = grade ?? { notGraded: 'the Flesch-Kincaid formula is for English alone' };
  return `${JSON.stringify({ language, ...told }, null, 2)}\n`;
}
