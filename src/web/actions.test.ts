import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const root = import.meta.dirname;
const screens = globSync('screens/**/*.{ts,tsx}', { cwd: root }).filter(file => !/ctions\.ts$|\.test\.ts$/.test(file));
/** What only an action does: presses, sendings, changes of what is kept; and elements that would do them by hand. */
const byHand =
  /\bon(?:Click|DoubleClick|AuxClick|Submit|Drop|Key|Pointer|Mouse|Touch|BeforeInput)\w*\s*[=:]|\buseMutation\b|\baddEventListener\b|<(?:button|form|input|select|textarea)\b/;
/** The calls that change what is kept; a `$post` reads as often as it writes. */
const changes = /\.\$(?:put|delete|patch)\(/;
/** These save by themselves what is typed. */
const saveThemselves = ['screens/clients/vaultDraft.ts', 'screens/guides/useGuide.ts', 'screens/handouts/useTopicHandout.ts'];

describe('what a person may do', () => {
  it('[WEB-2] no screen handles it outside its actions', () => {
    expect(screens.length).toBeGreaterThan(80);
    const holding = (what: RegExp): readonly string[] => screens.filter(file => what.test(readFileSync(join(root, file), 'utf8'))).sort();
    expect(holding(byHand)).toEqual([]);
    expect(holding(changes)).toEqual(saveThemselves);
  });

  it.each([
    'onClick={go}',
    'onClick = {go}',
    'onClick\n={go}',
    '{...{ onClick: go }}',
    'onClickCapture={go}',
    'onPointerUp={go}',
    'onKeyUp={go}',
    'onDoubleClick={go}',
    "window.addEventListener('keydown', go)",
    'useMutation<Sent>({',
    '<button\n  type="button"',
  ])('[WEB-2] %j would be found', written => {
    expect(byHand.test(written)).toBe(true);
  });
});
