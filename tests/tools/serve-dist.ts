// Serves the built site: node tests/tools/serve-dist.ts [port] [folder].
import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { serveSite } from './site-server.ts';

const folder = resolve(process.argv[3] ?? fileURLToPath(new URL('../../dist', import.meta.url)));
const { origin } = await serveSite({ folder, port: Number(process.argv[2] ?? 4390) });
console.log(`${origin}/ serves ${folder}`);
