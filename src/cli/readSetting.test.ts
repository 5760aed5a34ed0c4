import { describe, expect, it } from 'vitest';
import { settings } from '#core/yardstick/yardstick.ts';
import { readSetting } from './readSetting.ts';

describe('readSetting', () => {
  it.each(settings)('[CLI-4] %s is a setting', setting => {
    expect(readSetting(setting)).toBe(setting);
  });

  it.each(['acute-kidney-injury', 'AKI', 'pregnancy', 'pregnant', 'child', 'children', 'pediatric', 'kids'])(
    '[CLI-5] %s is refused, whatever else is asked',
    word => {
      expect(() => readSetting(word)).toThrow(expect.objectContaining({ code: 'setting-refused' }));
    },
  );

  it.each(['dialysis', 'kidney', '', 'Hemodialysis'])('[CLI-6] "%s" is not a setting', word => {
    expect(() => readSetting(word)).toThrow(expect.objectContaining({ code: 'setting-not-known' }));
  });
});
