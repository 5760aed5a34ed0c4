import { companionsText } from '#app/survey/surveyForScreen.ts';
import { Fault } from '#core/errors.ts';
import { builtInPlates } from '#core/plate/builtInPlates.ts';
import type { Plate } from '#core/plate/plate.ts';
import { plateFromJson } from '#core/plate/plateFromJson.ts';
import { plateToJson } from '#core/plate/plateToJson.ts';
import { portionText } from '#core/plate/portionText.ts';
import type { PlateFile } from './documents.ts';
import { readPlate } from './findPlate.ts';
import type { Store } from './store.ts';
import { refuseNewer } from './wholeOr.ts';

/** Every plate with its words, the kept ones first; one that cannot be read is left out. */
export async function describePlates(store: Store) {
  const kept = (await store.plates.list()).flatMap(({ value, version, isDemo }) => {
    const plate = plateFromJson(value).value;
    return plate === undefined ? [] : [told(plate, version, isDemo, false)];
  });
  return [...kept, ...builtInPlates.map(plate => told(plate, 0, false, true))];
}

/** Keeps a plate that can be read and is not built in. @throws Fault plate-not-valid, changed-meanwhile */
export async function keepPlate(plate: PlateFile, seenVersion: number | null, store: Store) {
  const read = readPlate(plate);
  if (builtInPlates.some(({ id }) => id === plate.id))
    throw new Fault('plate-not-valid', 'A built-in plate cannot be changed; give yours another name.');
  refuseNewer(await store.plates.get(plate.id), plateFromJson);
  const { version, isDemo } = await store.plates.put(plate, seenVersion);
  return told(read, version, isDemo, false);
}

function told(plate: Plate, version: number, isDemo: boolean, isBuiltIn: boolean) {
  const words = { portionText: portionText(plate.portion), companionsText: companionsText(plate) };
  return { plate: plateToJson(plate), version, isBuiltIn, isDemo, ...words };
}
