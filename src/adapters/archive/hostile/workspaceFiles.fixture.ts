/** Workspace files, as the program wrote them before there were archives, made to do harm. */
import { deep, food, type HostileArchive } from './archiveOf.fixture.ts';

const asBytes = (text: string): Uint8Array<ArrayBuffer> => new Uint8Array(Buffer.from(text));
export const workspaceFiles: readonly HostileArchive[] = [
  { name: 'a file of 20 MB of brackets', make: () => new Uint8Array(Buffer.alloc(20 * 2 ** 20, '[')), gives: 'workspace-file-not-valid' },
  {
    name: 'a workspace file of 99 MB of small lists',
    make: () =>
      new Uint8Array(
        Buffer.concat([Buffer.from('{"platewrightWorkspace":1,"tables":{"x":['), Buffer.alloc(99 * 10 ** 6, '[],'), Buffer.from('[]]}}')]),
      ),
    gives: 'workspace-file-not-valid',
  },
  {
    name: 'a workspace file with a text of 200 MB',
    make: () =>
      new Uint8Array(
        Buffer.concat([
          Buffer.from('{"platewrightWorkspace":1,"tables":{"foods":[{"id":"'),
          Buffer.alloc(200 * 2 ** 20, 'a'),
          Buffer.from('"}]}}'),
        ]),
      ),
    gives: 'workspace-file-not-valid',
  },
  {
    name: 'a workspace file 100,000 levels deep',
    make: () => asBytes(`{"platewrightWorkspace":1,"tables":{"foods":${deep}}}`),
    gives: 'workspace-file-not-valid',
  },
  {
    name: 'a workspace file with a table twice',
    make: () => asBytes(`{"platewrightWorkspace":1,"tables":{"foods":[{"id":7}],"foods":[${JSON.stringify(food('f1'))}]}}`),
    gives: 'archive-not-valid',
  },
  {
    name: 'a workspace file with a table that nobody knows',
    make: () => asBytes('{"platewrightWorkspace":1,"tables":{"__proto__":[{"id":1}],"x":[{}]}}'),
    gives: 'archive-not-valid',
  },
  { name: 'no bytes', make: () => new Uint8Array(), gives: 'workspace-file-not-valid' },
];
