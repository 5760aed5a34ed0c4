import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const root = import.meta.dirname;
const screens = globSync('screens/**/*.{ts,tsx}', { cwd: root }).filter(file => !/ctions\.ts$|\.test\.ts$/.test(file));
/** What only an action does: presses, sendings, changes of what is kept; and elements that would do them by hand. */
const byHand = /\bon(?:Click|Submit|Drop|KeyDown)=|\buseMutation\(|<(?:button|form|input|select|textarea)\b/;

describe('what a person may do', () => {
  it('[WEB-2] no screen handles it outside its actions', () => {
    expect(screens.length).toBeGreaterThan(80);
    expect(screens.filter(file => byHand.test(readFileSync(join(root, file), 'utf8')))).toEqual([]);
  });
});
