import { assessmentFromJson } from '#core/client/assessment/assessmentJson.ts';
import { nextChecks } from '#core/client/cautions/nextChecks.ts';
import { proposalToJson } from '#core/client/prescription/proposalToJson.ts';
import { proposePrescription } from '#core/client/prescription/proposePrescription.ts';
import { Fault } from '#core/errors.ts';
import { isDay } from '#core/quantity/calendarDay.ts';
import type { Command } from '../command.ts';
import { atMostPositionals } from '../readOptions.ts';

export const command: Command = {
  name: 'prescribe',
  usage: 'prescribe FILE.json',
  summary: 'Proposes daily targets from an assessment, with reasons, sources, cautions and next checks, as JSON.',
  options: {},
  async run(given, world) {
    atMostPositionals(given, 1);
    const [file] = given.positionals;
    if (file === undefined) throw new Fault('option-missing', `The file of the assessment is missing. Usage: platewright ${this.usage}`);
    const json = parsed(new TextDecoder().decode(await world.readBytes(file)));
    const today = json.today ?? world.today();
    if (typeof today !== 'string' || !isDay(today)) throw new Fault('assessment-not-valid', 'today: expected a day, yyyy-mm-dd.');
    const { value, issues } = assessmentFromJson(json.assessment);
    if (value === undefined) {
      const places = issues.map(({ place, expected }) => `${place.heading ?? 'the assessment'}: expected ${expected}`);
      throw new Fault('assessment-not-valid', places.slice(0, 5).join('; '));
    }
    const proposal = proposePrescription(value, today);
    const text = JSON.stringify(proposalToJson({ issues: [], ...proposal, nextChecks: nextChecks(value, today) }), undefined, 2);
    await world.write(`${text}\n`);
  },
};

/** What the file has under the two keys; what is in them is read elsewhere. */
function parsed(text: string): { readonly assessment?: unknown; readonly today?: unknown } {
  try {
    const json: unknown = JSON.parse(text);
    if (typeof json === 'object' && json !== null) return json;
  } catch {
    // Told below: the parser's own words would quote the file.
  }
  throw new Fault('assessment-not-valid', 'The file is no JSON object with a key "assessment".');
}
