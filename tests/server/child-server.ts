import { buildApp } from '../../server/app.ts';

/** The server in a process of its own, for the trials that kill it. Prints its address. */
const app = await buildApp({ dataFolder: process.env.QUILTSIDE_DATA!, logging: false });
process.stdout.write(`${await app.listen({ port: 0, host: '127.0.0.1' })}\n`);
