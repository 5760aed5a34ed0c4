/** Light or dark: the system's wish, until the person chooses. The choice is kept in this browser; nothing else is. */
const key = 'platewright-theme';

export function applyTheme(): void {
  const chosen = localStorage.getItem(key);
  const dark = chosen === null ? matchMedia('(prefers-color-scheme: dark)').matches : chosen === 'dark';
  document.documentElement.dataset.theme = dark ? 'dark' : 'light';
}

export function switchTheme(): void {
  localStorage.setItem(key, document.documentElement.dataset.theme === 'dark' ? 'light' : 'dark');
  applyTheme();
}
