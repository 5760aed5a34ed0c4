/** Makes a table of so many labels, tells that it is there, and sends it wherever it is told to. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parentPort, workerData } from 'node:worker_threads';
import Papa from 'papaparse';

const table = manyLabels(workerData);
parentPort!.on('message', async ({ url, headers }: { url: string; headers: Readonly<Record<string, string>> }) => {
  const form = new FormData();
  form.set('file', new File([table], 'many.csv'));
  const answer = await fetch(url, { method: 'POST', body: form, headers });
  await answer.json();
  parentPort!.postMessage(answer.status);
});
parentPort!.postMessage('made');

/** The labels of the demo again and again, each a food of its own: names and bar codes with their check digits are invented. */
function manyLabels(rows: number): string {
  const { data, meta } = Papa.parse<Record<string, string>>(
    readFileSync(join(import.meta.dirname, '../data/demo/labels.csv'), 'utf8').trimEnd(),
    {
      header: true,
    },
  );
  const made = Array.from({ length: rows }, (_, at) => {
    const label = data[at % data.length]!;
    return { ...label, id: `${label.id}-${at}`, name: `${label.name} ${at}`, category: `bench ${at % 40}`, gtin: gtin(at) };
  });
  return Papa.unparse(made, { columns: meta.fields ?? [] });
}

/** GS1 General Specifications, section 7.9: the check digit of weights 3 and 1 from the right. */
function gtin(at: number): string {
  const digits = `4199${String(at).padStart(7, '0')}`;
  const sum = [...digits].reverse().reduce((total, digit, place) => total + Number(digit) * (place % 2 === 0 ? 3 : 1), 0);
  return `${digits}${(10 - (sum % 10)) % 10}`;
}
