import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { writeNotice } from './write-notice.ts';

/** `npm run notice`: writes models/NOTICE.md anew; to be done whenever a dependency changes. */
const root = fileURLToPath(new URL('../..', import.meta.url));
await writeFile(join(root, 'models/NOTICE.md'), await writeNotice(root));
