import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { licensedPackages, PERMISSIVE, writeNotice } from '../../server/cli/write-notice.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

test('the notice is that of the packages there are (npm run notice)', async () => {
  expect(await readFile(join(ROOT, 'models/NOTICE.md'), 'utf8')).toBe(await writeNotice(ROOT));
});

test('no package is without a licence, and those that ask more than to keep its text are known', async () => {
  const others = (await licensedPackages(ROOT)).filter(({ licence }) => !PERMISSIVE.includes(licence));
  const known = others.map(({ name }) =>
    name.replace(/^(@img\/sharp-(?:libvips|win32|wasm)|lightningcss).*/, '$1…'),
  );
  expect([...new Set(known)].sort()).toEqual([
    '@audio/decode-aac',
    '@audio/decode-ac3',
    '@audio/decode-dts',
    '@audio/decode-eac3',
    '@audio/decode-wma',
    '@img/sharp-libvips…',
    '@img/sharp-wasm…',
    '@img/sharp-win32…',
    'codec-parser',
    'lightningcss…',
  ]);
});
