import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

export const MODELS = fileURLToPath(new URL('../../../models', import.meta.url));
export const CLIPS = fileURLToPath(new URL('../../fixtures/clips', import.meta.url));
export const AUDIO = fileURLToPath(new URL('../../fixtures/audio', import.meta.url));
/** Debian's pocketsphinx-testdata: five sentences of a LibriVox reading with their transcription. */
export const LIBRIVOX = '/usr/share/pocketsphinx/test/data/librivox';
export const hasLibrivox = existsSync(`${LIBRIVOX}/transcription`);
export const SCLITE = ['/usr/lib/sctk/bin/sclite', '/usr/bin/sclite'].find((path) => existsSync(path));
