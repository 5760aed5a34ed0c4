import { testInWords } from '#app/survey/testInWords.ts';
import { Fault } from '#core/errors.ts';
import { builtInYardsticks } from '#core/yardstick/builtInYardsticks.ts';
import type { Yardstick } from '#core/yardstick/yardstick.ts';
import { yardstickFromJson, yardstickToJson } from '#core/yardstick/yardstickFromJson.ts';
import type { YardstickFile } from './documents.ts';
import { readYardstick } from './findYardstick.ts';
import type { Store } from './store.ts';
import { refuseNewer } from './wholeOr.ts';

/** Every yardstick with its tests in words, the kept ones first; one that cannot be read is left out. */
export async function describeYardsticks(store: Store) {
  const kept = (await store.yardsticks.list()).flatMap(({ value, version }) => {
    const yardstick = yardstickFromJson(value).value;
    return yardstick === undefined ? [] : [told(yardstick, version, false)];
  });
  return [...kept, ...builtInYardsticks.map(one => told(one, 0, true))];
}

/** Keeps a yardstick that can be read and is not built in. @throws Fault yardstick-not-valid, changed-meanwhile */
export async function keepYardstick(file: YardstickFile, seenVersion: number | null, store: Store) {
  const yardstick = readYardstick(file);
  if (builtInYardsticks.some(({ id }) => id === file.id))
    throw new Fault('yardstick-not-valid', 'A built-in yardstick cannot be changed; copy it under another name.');
  refuseNewer(await store.yardsticks.get(file.id), yardstickFromJson);
  const { version } = await store.yardsticks.put({ ...yardstickToJson(yardstick) }, seenVersion);
  return told(yardstick, version, false);
}

function told(yardstick: Yardstick, version: number, isBuiltIn: boolean) {
  const tests = yardstick.tests.map(test => ({ ...testInWords(test), isOff: test.off === true }));
  return { yardstick: yardstickToJson(yardstick), version, isBuiltIn, tests };
}
