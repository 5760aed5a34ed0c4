import type { ErrorComponentProps } from '@tanstack/react-router';
import { Problem } from '../api.ts';
import { ActionButton } from '../ui/action/ActionButton.tsx';
import { useOffered } from '../ui/action/offered.ts';
import layout from '../ui/layout.module.css';
import { Page } from '../ui/page/Page.tsx';
import { reloadPage, useTryAgain } from './actions.ts';

/** In the place of a screen that could not be loaded, or that made a mistake. */
export function BrokenScreen({ error, reset }: ErrorComponentProps) {
  const tryAgain = useTryAgain(reset);
  // Without the program there is no page to load: the one that stands would go.
  const canReload = !(error instanceof Problem) || error.code === 'screen-gone';
  useOffered(canReload ? [reloadPage, tryAgain] : [tryAgain]);
  return (
    <Page title="This screen cannot be shown" fault={error}>
      <p className={layout.row}>
        <ActionButton action={tryAgain} isMain />
        {canReload && <ActionButton action={reloadPage} />}
      </p>
    </Page>
  );
}
