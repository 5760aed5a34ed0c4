import { useLocation, useNavigate } from '@tanstack/react-router';
import { switchTheme } from './theme.ts';
import type { Action } from './ui/action/action.ts';

/** The screens, in the order of the rail. */
export const screens = [
  { to: '/', name: 'Survey' },
  { to: '/foods', name: 'Foods' },
  { to: '/plates', name: 'Plates' },
  { to: '/yardsticks', name: 'Yardsticks' },
  { to: '/clients', name: 'Clients' },
  { to: '/guides', name: 'Guides' },
  { to: '/calculators', name: 'Calculators' },
  { to: '/data', name: 'Data' },
] as const;

/** What can be done on every screen: go to another one, light or dark. */
export function useFrameActions() {
  const navigate = useNavigate();
  const { pathname } = useLocation();
  const open = screens.map(
    ({ to, name }): Action => ({ label: `Go to ${name}`, isPossible: to !== pathname, run: () => void navigate({ to }) }),
  );
  const theme: Action = { label: 'Light / dark', run: switchTheme };
  return { open, theme };
}
