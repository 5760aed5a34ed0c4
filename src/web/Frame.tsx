import { useQuery } from '@tanstack/react-query';
import { Link, Outlet, useLocation } from '@tanstack/react-router';
import { useEffect, useRef } from 'react';
import { answer, api } from './api.ts';
import styles from './Frame.module.css';
import { screens, useFrameActions } from './frameActions.ts';
import { ProgramLine } from './program/ProgramLine.tsx';
import { ActionButton } from './ui/action/ActionButton.tsx';
import { useOffered } from './ui/action/offered.ts';
import { Palette } from './ui/action/Palette.tsx';
import text from './ui/text.module.css';
import { useFocusGivenBack } from './ui/useFocusGivenBack.ts';

/** The window: the rail of screens at the left, the screen beside it. Focus goes to the screen when another one opens. */
export function Frame() {
  const main = useRef<HTMLElement>(null);
  const { pathname } = useLocation();
  const { data: workspace } = useQuery({ queryKey: ['workspace'], queryFn: () => answer(api.workspace.$get()) });
  const actions = useFrameActions();
  useOffered([...actions.open, actions.theme]);
  useFocusGivenBack(main);
  const first = useRef(true);
  useEffect(() => {
    if (first.current) first.current = false;
    else if (pathname) main.current?.focus();
  }, [pathname]);
  return (
    <div className={styles.frame}>
      <a className={styles.skip} href="#screen">
        Skip to the screen
      </a>
      <nav className={styles.rail} aria-label="Workbench">
        <b>Platewright</b>
        <CopyFailed />
        {screens.map(({ to, name }) => (
          <Link key={to} to={to} activeOptions={{ exact: to === '/', includeSearch: false }} activeProps={{ 'aria-current': 'page' }}>
            {name}
          </Link>
        ))}
        <span className={styles.foot}>
          {workspace !== undefined && workspace.demoFoods > 0 && (
            <span className={`${text.small} ${text.soft} ${styles.demo}`}>
              Demo scenario.
              <br />
              Its foods are invented.
            </span>
          )}
          <Palette />
          <ActionButton action={actions.theme} />
        </span>
      </nav>
      <main id="screen" ref={main} tabIndex={-1}>
        <ProgramLine />
        <Outlet />
      </main>
    </div>
  );
}

/** A daily copy that could not be made is told on every screen, until the next one was. */
function CopyFailed() {
  const { data: copies } = useQuery({ queryKey: ['copies'], queryFn: () => answer(api.copies.$get()), refetchInterval: 600_000 });
  if (copies?.lastFault === undefined) return null;
  return (
    <Link to="/data" className={text.small}>
      The daily copy was not made: see Data
    </Link>
  );
}
