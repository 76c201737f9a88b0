// Prints how fast the worksheets recalculate and how heavy the pages are; never fails a build.
import { readdirSync } from 'node:fs';
import { cpus } from 'node:os';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { join } from 'node:path';

const folder = fileURLToPath(new URL('.', import.meta.url));
const [cpu] = cpus();
console.log(
  `${new Date().toISOString().slice(0, 10)} · Node ${process.versions.node} · ${process.platform} ` +
    `${process.arch} · ${cpus().length} × ${cpu?.model ?? 'unknown processor'}`,
);
for (const name of readdirSync(folder).sort()) {
  if (!name.endsWith('.ts')) continue;
  console.log(`\n${name.replace('.ts', '').replaceAll('-', ' ')}`);
  try {
    await import(pathToFileURL(join(folder, name)).href);
  } catch (error) {
    console.log(`could not be measured: ${error instanceof Error ? error.message : String(error)}`);
  }
}
