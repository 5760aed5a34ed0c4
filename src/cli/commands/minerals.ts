import { Fault } from '#core/errors.ts';
import type { PrintedLabel } from '#core/label/label.ts';
import { labelFromJson } from '#core/label/labelFromJson.ts';
import { readLabel } from '#core/label/readLabel.ts';
import { ceilTo, floorTo, roundHalfUp } from '#core/quantity/rounding.ts';
import { estimateMinerals } from '#core/recipe/estimateMinerals.ts';
import type { MineralEstimate, MineralRange } from '#core/recipe/minerals.ts';
import { type LargerReference, largerReference } from '#core/reference/largerReference.ts';
import { referenceFileFromJson } from '#core/reference/referenceFile.ts';
import { answerLines, idOf, type JsonObject } from '../answerLines.ts';
import type { Command, World } from '../command.ts';
import { atMostPositionals, needed } from '../readOptions.ts';

export const command: Command = {
  name: 'minerals',
  usage: 'minerals [--reference FILE] --jsonl < labels.jsonl',
  summary: 'Estimates phosphorus and potassium from the statement and the panel, one JSON object a line, milligrams per serving.',
  options: { jsonl: { type: 'boolean' }, reference: { type: 'string' } },
  async run(given, world) {
    atMostPositionals(given, 0);
    if (given.options.jsonl !== true) throw new Fault('option-missing', 'The option --jsonl is missing.');
    const larger = given.options.reference === undefined ? undefined : await readReference(needed(given, 'reference'), world);
    const solver = await world.openSolver();
    await answerLines(world, (value, line) => {
      const id = idOf(value);
      const { servingG, statement, panel } = value;
      const { value: printed, issues } = labelFromJson({ serving: { grams: servingG }, statement, panel: panel ?? {} });
      if (printed === undefined) return { id, issues: issues.map(issue => ({ ...issue, place: { ...issue.place, line } })) };
      return { id, ...answer(printed), ...(issues.length === 0 ? {} : { issues }) };
    });

    function answer(printed: PrintedLabel): JsonObject {
      const estimate = estimateMinerals(readLabel(printed), solver, larger);
      return estimate.kind === 'estimate' ? estimateToJson(estimate) : { cannotBeBounded: estimate.because };
    }
  },
};

/** @throws Fault file-not-found, reference-not-valid. */
async function readReference(path: string, world: World): Promise<LargerReference> {
  return largerReference(referenceFileFromJson(new TextDecoder().decode(await world.readBytes(path)), path));
}

/** Ranges rounded outward to tenths of a milligram at this last line. */
function estimateToJson(estimate: MineralEstimate): JsonObject {
  const { phosphorus, potassium, addedPhosphorus, addedPotassium, absorbedPhosphorus, matchedShare, conflicts } = estimate;
  return {
    phosphorusMg: rangeToJson(phosphorus),
    potassiumMg: rangeToJson(potassium),
    addedPhosphorusMg: rangeToJson(addedPhosphorus),
    addedPotassiumMg: rangeToJson(addedPotassium),
    absorbedPhosphorusMg: [floorTo(absorbedPhosphorus.lo, 1), ceilTo(absorbedPhosphorus.hi, 1)],
    matchedShare: roundHalfUp(matchedShare, 3),
    conflicts: conflicts.map(({ meaning, by }) => ({ ...meaning, relaxedBy: roundHalfUp(by, 3) })),
  };
}

function rangeToJson({ sure, likely }: MineralRange): JsonObject {
  return {
    sure: [floorTo(sure.lo, 1), ceilTo(sure.hi, 1)],
    likely: [floorTo(likely.lo, 1), roundHalfUp(likely.mid, 1), ceilTo(likely.hi, 1)],
  };
}
