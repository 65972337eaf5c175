import { buildApp } from '../../server/app.ts';
import type { StoreOptions } from '../../server/store/quilt-store.ts';

/** The server in a process of its own, for the trials that kill it. Prints its address. */
const { QUILTSIDE_DATA, QUILTSIDE_MODELS, SIZES } = process.env;
const app = await buildApp({
  dataFolder: QUILTSIDE_DATA!,
  logging: false,
  ...(SIZES ? { sizes: JSON.parse(SIZES) as StoreOptions } : {}),
  ...(QUILTSIDE_MODELS ? { modelsDir: QUILTSIDE_MODELS } : {}),
});
process.stdout.write(`${await app.listen({ port: 0, host: '127.0.0.1' })}\n`);
