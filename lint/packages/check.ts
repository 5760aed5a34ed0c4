/** Checks the packages of the program (docs/rules/supply.md) and writes the bill of materials to dist/platewright.cdx.json. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Spec, Validation } from '@cyclonedx/cyclonedx-library';
import { billOfMaterials } from './billOfMaterials.ts';
import { packageFaults } from './findFaults.ts';
import { readLock } from './lock.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const bill = billOfMaterials(readLock(root), 'platewright');
const againstSchema = await new Validation.JsonStrictValidator(Spec.Version.v1dot6).validate(bill);
const faults = [
  ...packageFaults(root),
  ...(againstSchema === null ? [] : [`The bill of materials is no CycloneDX 1.6: ${JSON.stringify(againstSchema)}`]),
];

if (faults.length === 0) {
  mkdirSync(`${root}dist`, { recursive: true });
  writeFileSync(`${root}dist/platewright.cdx.json`, bill);
} else {
  process.stderr.write(
    `The packages are not as docs/rules/supply.md asks\n${faults.join('\n')}\nNext: see docs/decisions/0014-supply-chain.md.\n`,
  );
  process.exitCode = 1;
}
