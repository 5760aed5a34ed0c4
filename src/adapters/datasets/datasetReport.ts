import type { DatasetIssueCode } from '#app/ports.ts';
import type { Issue } from '#core/errors.ts';
import type { ReferenceNutrient } from '#core/reference/referenceFood.ts';

/** Whoever chose a wrong file is told by the first hundreds of lines. */
const mostIssues = 500;

/** What was noticed in the files of a dataset, by file and line. */
export class DatasetReport {
  private readonly file: string;
  private readonly kept: Issue<DatasetIssueCode>[];

  constructor(file: string, kept: Issue<DatasetIssueCode>[]) {
    this.file = file;
    this.kept = kept;
  }

  add(code: DatasetIssueCode, line: number, found: string, expected: string): void {
    if (this.kept.length > mostIssues) return;
    const place = { file: this.file, line };
    if (this.kept.length === mostIssues)
      this.kept.push({ code: 'more-issues', place, found: `more than ${mostIssues} things`, expected: 'the first of them are listed' });
    else this.kept.push({ code, place, found: shown(found), expected });
  }

  /**
   * A figure in its unit for 100 g; null, which is unknown, where the field is empty, is no number, or is more than 100 g
   * can hold (grams and milligrams by mass, energy by 9 kcal a gram and rounding).
   */
  figure(field: string, key: ReferenceNutrient, line: number): number | null {
    const text = field.trim();
    if (text === '') return null;
    const value = /^[-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?$/i.test(text) ? Number(text) : Number.NaN;
    if (!Number.isFinite(value)) {
      this.add('figure-not-readable', line, `"${text}"`, `a number for ${key}; it is unknown`);
      return null;
    }
    const most = key === 'energyKcal' ? 950 : key.endsWith('Mg') ? 100_000 : 101;
    if (value < 0 || value > most) {
      this.add('figure-impossible', line, text, `${key} of 100 g between 0 and ${most}; it is unknown`);
      return null;
    }
    return value;
  }
}

function shown(text: string): string {
  return text.length > 60 ? `${text.slice(0, 59)}…` : text;
}
