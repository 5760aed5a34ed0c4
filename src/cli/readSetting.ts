import { Fault } from '#core/errors.ts';
import { type Setting, settings } from '#core/yardstick/yardstick.ts';

const refused = /acute|\baki\b|pregnan|gestation|child|pa?ediatric|infant|newborn|baby|toddler|teen|adolescen|\bkids?\b/i;

/** @throws Fault setting-refused for acute kidney injury, pregnancy and children, setting-not-known for any other word. */
export function readSetting(given: string): Setting {
  const setting = settings.find(one => one === given);
  if (setting !== undefined) return setting;
  if (refused.test(given)) throw new Fault('setting-refused', `"${given}" is a setting that this program does not judge for.`);
  throw new Fault('setting-not-known', `There is no setting "${given}".`);
}
