import { describe, expect, it } from 'vitest';
import { isPressed, type Shortcut } from './action.ts';

const pressed = (shortcut: Shortcut, event: Partial<KeyboardEvent>): boolean =>
  isPressed(shortcut, { key: '', code: '', altKey: false, ctrlKey: false, metaKey: false, shiftKey: false, ...event });

describe('a shortcut', () => {
  it('[WEB-2] is known by its letter, wherever that stands on the keyboard', () => {
    expect(pressed('Control+S', { key: 's', code: 'KeyS', ctrlKey: true })).toBe(true);
    expect(pressed('Control+S', { key: 's', code: 'KeyO', metaKey: true })).toBe(true);
    expect(pressed('Control+S', { key: 'o', code: 'KeyS', ctrlKey: true })).toBe(false);
  });

  it('[WEB-2] is known by its place where the keyboard writes another sign: option on a Mac, letters that are not Latin', () => {
    expect(pressed('Alt+N', { key: 'Dead', code: 'KeyN', altKey: true })).toBe(true);
    expect(pressed('Alt+W', { key: '∑', code: 'KeyW', altKey: true })).toBe(true);
    expect(pressed('Control+S', { key: 'ы', code: 'KeyS', ctrlKey: true })).toBe(true);
  });

  it('[WEB-2] is never typing: no modifier, another one, or AltGr', () => {
    expect(pressed('Control+S', { key: 's', code: 'KeyS' })).toBe(false);
    expect(pressed('Control+S', { key: 'S', code: 'KeyS', ctrlKey: true, shiftKey: true })).toBe(false);
    expect(pressed('Control+S', { key: 'ś', code: 'KeyS', ctrlKey: true, altKey: true })).toBe(false);
    expect(pressed('Alt+N', { key: 'ń', code: 'KeyN', ctrlKey: true, altKey: true })).toBe(false);
  });
});
