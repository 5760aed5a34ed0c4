import { damageContract } from './contract/damageContract.ts';
import { documentsContract } from './contract/documentsContract.ts';
import { earlierContract } from './contract/earlierContract.ts';
import { importsContract } from './contract/importsContract.ts';
import { labelsContract } from './contract/labelsContract.ts';
import { referencesContract } from './contract/referencesContract.ts';
import type { EngineUnderTest } from './contract/samples.ts';
import { workspaceContract } from './contract/workspaceContract.ts';

/** The behaviours of docs/rules/storage.md, on a real engine. */
export function storeContract(engine: EngineUnderTest): void {
  labelsContract(engine);
  importsContract(engine);
  documentsContract(engine);
  referencesContract(engine);
  workspaceContract(engine);
  earlierContract(engine);
  damageContract(engine);
}
