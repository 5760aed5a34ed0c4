import type { Line, Run } from './handoutPage.ts';

/** The name of a food, as its label prints it. */
export function foodRun(name: string): Run {
  return { kind: 'food', text: name };
}

/** Words from outside inside a sentence of the program: an aisle, a shop, a meal, an avoided food. */
export function outsideRun(text: string): Run {
  return { kind: 'outside', text };
}

/** A sentence of the program around its figures and names: ``line`Have ${foodRun('Ham')} at ${'lunch'}.` ``. */
export function line(words: TemplateStringsArray, ...between: readonly (Run | string)[]): Line {
  const runs: Run[] = [];
  words.forEach((text, at) => {
    addRun(runs, { kind: 'words', text });
    const one = between[at];
    if (one !== undefined) addRun(runs, typeof one === 'string' ? { kind: 'words', text: one } : one);
  });
  return { by: 'program', runs };
}

function addRun(runs: Run[], run: Run): void {
  const last = runs.at(-1);
  if (run.text === '') return;
  if (run.kind === 'words' && last?.kind === 'words') runs[runs.length - 1] = { kind: 'words', text: last.text + run.text };
  else runs.push(run);
}

export function programLine(text: string): Line {
  return { by: 'program', runs: [{ kind: 'words', text }] };
}

/** A sentence of the program that ends with names: "Look for: garlic, onion." */
export function lineOf(lead: Line, names: readonly Run[]): Line {
  const runs: Run[] = [...lead.runs];
  names.forEach((name, at) => {
    addRun(runs, { kind: 'words', text: at === 0 ? ' ' : ', ' });
    runs.push(name);
  });
  addRun(runs, { kind: 'words', text: '.' });
  return { by: lead.by, runs };
}

/** A sentence of the program that ends with figures: "Keep to: lunch 600 mg, dinner 700 mg." */
export function figuresOf(lead: Line, figures: readonly (readonly [name: Run, figure: string])[]): Line {
  const runs: Run[] = [...lead.runs];
  figures.forEach(([name, figure], at) => {
    addRun(runs, { kind: 'words', text: at === 0 ? ' ' : ', ' });
    runs.push(name);
    addRun(runs, { kind: 'words', text: ` ${figure}` });
  });
  addRun(runs, { kind: 'words', text: '.' });
  return { by: lead.by, runs };
}

/** Sentences of the program, one after the other in one paragraph. */
export function joined(lines: readonly Line[]): Line {
  const runs: Run[] = [];
  lines.forEach((one, at) => {
    if (at > 0) addRun(runs, { kind: 'words', text: ' ' });
    for (const run of one.runs) addRun(runs, run);
  });
  return { by: 'program', runs };
}

export function authorLine(text: string): Line {
  return { by: 'author', runs: [{ kind: 'outside', text }] };
}

export function lineText({ runs }: Line): string {
  return runs.map(({ text }) => text).join('');
}
