import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { readModelManifest } from '../speech/model-files.ts';

/** Licences that ask for nothing but their own text beside a copy. */
export const PERMISSIVE = [
  '0BSD',
  'Apache-2.0',
  'BlueOak-1.0.0',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'CC-BY-4.0',
  'ISC',
  'MIT',
  'OFL-1.1',
];

type Locked = { version?: string; license?: string; dev?: boolean };
export type Licensed = { name: string; version: string; licence: string };

/** What the program installs beside itself, by the lock file; packages that only its tests need are not among it. */
export async function licensedPackages(root: string): Promise<Licensed[]> {
  const lock = JSON.parse(await readFile(join(root, 'package-lock.json'), 'utf8')) as {
    packages: Record<string, Locked>;
  };
  const found = new Map<string, Licensed>();
  for (const [path, { version = '', license, dev }] of Object.entries(lock.packages)) {
    if (path === '' || dev) continue;
    const name = path.slice(path.lastIndexOf('node_modules/') + 'node_modules/'.length);
    const licence = await licenceOf(join(root, path), license);
    found.set(`${name} ${version}`, { name, version, licence });
  }
  return [...found.values()].sort((a, b) => (`${a.name} ${a.version}` < `${b.name} ${b.version}` ? -1 : 1));
}

/** Some leave their licence out of the lock file, or name a file there. */
async function licenceOf(folder: string, locked: string | undefined): Promise<string> {
  if (locked && !/^SEE /i.test(locked)) return locked;
  for (const file of ['LICENSE', 'LICENSE.txt', 'LICENSE.md', 'license', 'README.md']) {
    const text = await readFile(join(folder, file), 'utf8').catch(() => '');
    if (/Apache License\s+Version 2\.0/.test(text)) return 'Apache-2.0';
    if (/Permission is hereby granted, free of charge|MIT License|\(MIT\)/.test(text)) return 'MIT';
  }
  return 'unknown';
}

/** `models/NOTICE.md`: what is installed with the program or comes with it, each with its licence. */
export async function writeNotice(root: string): Promise<string> {
  const packages = await licensedPackages(root);
  const rows = (list: readonly Licensed[]): string =>
    list.map((one) => `- ${one.name} ${one.version}: ${one.licence}`).join('\n');
  const isFree = ({ licence }: Licensed): boolean => PERMISSIVE.includes(licence);
  const { folders } = await readModelManifest(join(root, 'models'));
  const models = folders.map(
    ({ folder, licence, copyright }) => `- models/${folder}: ${licence}, ${copyright}`,
  );
  return `# Notice

Quiltside itself is under the MIT licence. This lists what comes with it and what \`npm ci\` installs beside it. The text of each licence lies in its package, \`node_modules/<package>\`. Made by \`npm run notice\` from \`package-lock.json\`; do not edit.

## Comes with it

${models.join('\n')}
- server/export/fonts, Source Sans 3 and Source Serif 4: OFL-1.1, the copyright in the files beside them

## Installed beside it, under licences that ask more than to keep their text

Whoever passes these on has to read them first. They are installed as they are and not altered.

${rows(packages.filter((one) => !isFree(one)))}

## Installed beside it

${rows(packages.filter(isFree))}
`;
}
