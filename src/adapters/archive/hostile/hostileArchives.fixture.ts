import type { HostileArchive } from './archiveOf.fixture.ts';
import { bombs } from './bombs.fixture.ts';
import { clients } from './clients.fixture.ts';
import { lies, manifests } from './lies.fixture.ts';
import { photos, rows } from './rows.fixture.ts';
import { workspaceFiles } from './workspaceFiles.fixture.ts';

export const hostileArchives: readonly HostileArchive[] = [
  ...bombs,
  ...lies,
  ...manifests,
  ...rows,
  ...photos,
  ...clients,
  ...workspaceFiles,
];
