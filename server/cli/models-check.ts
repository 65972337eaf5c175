import { fileURLToPath } from 'node:url';
import { checkModelFolder, ModelFileError, readModelManifest } from '../speech/model-files.ts';

/** `npm run models:check`: compares each file under models/ with the manifest, bytes and sha256. Exit 1 on any difference. */
const modelsDir = fileURLToPath(new URL('../../models', import.meta.url));
try {
  const manifest = await readModelManifest(modelsDir);
  for (const { folder, licence, copyright, source } of manifest.folders) {
    const files = await checkModelFolder(modelsDir, folder, { hashes: true });
    const megabytes = files.reduce((sum, file) => sum + file.bytes, 0) / 1e6;
    console.log(
      `${folder}: ${files.length} files, ${megabytes.toFixed(1)} MB, whole. ${licence}, ${copyright}. From ${source}.`,
    );
  }
} catch (error) {
  if (!(error instanceof ModelFileError)) throw error;
  console.error(error.message);
  process.exitCode = 1;
}
