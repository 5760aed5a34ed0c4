import { Page } from '../../ui/page/Page.tsx';
import { ActionPieces } from './actionPieces.tsx';
import { FigurePieces } from './figurePieces.tsx';
import { FormPieces } from './formPieces.tsx';
import { OverlayPieces } from './overlayPieces.tsx';
import { PagePieces } from './pagePieces.tsx';
import { TablePieces } from './tablePieces.tsx';

/** Every piece of the kit in every state, for who builds screens: looked at light and dark, with forced colors, on paper and at 320 px. */
export function PiecesScreen() {
  return (
    <Page title="Pieces" about="What the screens are made of, in every state. For who builds them; nothing here is kept.">
      <ActionPieces />
      <FormPieces />
      <TablePieces />
      <FigurePieces />
      <PagePieces />
      <OverlayPieces />
    </Page>
  );
}
