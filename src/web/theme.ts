/** Light or dark: the system's wish, until the person chooses. The choice is kept in this browser, where it lets itself be kept. */
const key = 'platewright-theme';

type Theme = 'light' | 'dark';

export function applyTheme(theme: Theme = keptTheme() ?? wishedTheme()): void {
  document.documentElement.dataset.theme = theme;
}

export function switchTheme(): void {
  const theme = document.documentElement.dataset.theme === 'dark' ? 'light' : 'dark';
  applyTheme(theme);
  try {
    localStorage.setItem(key, theme);
  } catch {
    // Full or forbidden: the choice holds for this page.
  }
}

function keptTheme(): Theme | undefined {
  try {
    const kept = localStorage.getItem(key);
    return kept === 'light' || kept === 'dark' ? kept : undefined;
  } catch {
    return undefined;
  }
}

function wishedTheme(): Theme {
  return matchMedia('(prefers-color-scheme: dark)').matches ? 'dark' : 'light';
}
