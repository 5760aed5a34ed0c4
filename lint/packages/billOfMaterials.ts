import { createHash } from 'node:crypto';
import { licencesByName } from './licences.ts';
import { findPackage, type Lock, type LockedPackage } from './lock.ts';

/**
 * The packages of the program as a software bill of materials: CycloneDX 1.6, JSON. It names what is
 * installed with the program and what its browser part is bundled of, and what is for computers of other kinds as well, as
 * optional. The same lock and the same imports give the same bytes.
 */
export function billOfMaterials({ packages, root, bundled }: Lock, name: string): string {
  const parts = packages.filter(entry => entry.isProduction);
  const at = new Map(parts.map(entry => [entry.path, entry]));
  const components = new Map(parts.map(entry => [purl(entry), component(entry)]));
  const program = `pkg:npm/${name}@${root.version}`;
  const needs = new Map<string, Set<string>>();
  for (const entry of parts) {
    const found = needs.get(purl(entry)) ?? new Set();
    for (const needed of neededBy(entry, entry.path, at)) found.add(needed);
    needs.set(purl(entry), found);
  }
  needs.set(program, new Set([...neededBy(root, '', at), ...purls(bundled, '', at)]));
  const body = {
    metadata: {
      component: {
        type: 'application',
        'bom-ref': program,
        name,
        version: root.version,
        purl: program,
        licenses: [{ license: { id: 'MIT' } }],
      },
    },
    components: [...components.values()],
    dependencies: [...needs].map(([ref, found]) => ({ ref, dependsOn: [...found].sort() })),
  };
  const head = { bomFormat: 'CycloneDX', specVersion: '1.6', serialNumber: serialNumber(JSON.stringify(body)), version: 1 };
  return `${JSON.stringify({ ...head, ...body }, undefined, 2)}\n`;
}

function component(entry: LockedPackage) {
  const licence = licencesByName[`${entry.name}@${entry.version}`]?.licence ?? entry.license;
  return {
    // CycloneDX calls what a program runs on a platform.
    type: /^node-(bin-)?(darwin|linux|win)-/.test(entry.name) ? 'platform' : 'library',
    'bom-ref': purl(entry),
    name: entry.name,
    version: entry.version,
    scope: entry.optional ? 'optional' : 'required',
    hashes: [{ alg: 'SHA-512', content: Buffer.from((entry.integrity ?? '').replace(/^sha512-/, ''), 'base64').toString('hex') }],
    ...(licence === undefined ? {} : { licenses: [/[ (]/.test(licence) ? { expression: licence } : { license: { id: licence } }] }),
    purl: purl(entry),
  };
}

/** The package URL (github.com/package-url/purl-spec) of a package of npm. */
function purl({ name, version }: LockedPackage): string {
  return `pkg:npm/${name.replace('@', '%40')}@${version}`;
}

function neededBy(
  { dependencies, optionalDependencies }: Pick<LockedPackage, 'dependencies' | 'optionalDependencies'>,
  path: string,
  at: ReadonlyMap<string, LockedPackage>,
): string[] {
  return purls(Object.keys({ ...dependencies, ...optionalDependencies }), path, at);
}

function purls(names: readonly string[], path: string, at: ReadonlyMap<string, LockedPackage>): string[] {
  return names.flatMap(name => findPackage(name, path, at) ?? []).map(purl);
}

/** A UUID (RFC 9562, version 8) of what the bill says: another bill has another number, the same bill the same. */
function serialNumber(text: string): string {
  const hex = createHash('sha256').update(text).digest('hex');
  return `urn:uuid:${hex.slice(0, 8)}-${hex.slice(8, 12)}-8${hex.slice(13, 16)}-8${hex.slice(17, 20)}-${hex.slice(20, 32)}`;
}
