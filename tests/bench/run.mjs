// Prints how fast the worksheets recalculate and how heavy the pages are; never fails a build. Names choose
// (`npm run bench -- scene`); what stands in on-request/ runs only when it is named.
import { readdirSync } from 'node:fs';
import { cpus } from 'node:os';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { basename, join } from 'node:path';

const folder = fileURLToPath(new URL('.', import.meta.url));
const chosen = process.argv.slice(2).filter((word) => !word.startsWith('-'));
const filesIn = (path) =>
  readdirSync(path)
    .filter((name) => name.endsWith('.ts'))
    .sort()
    .map((name) => join(path, name));
const usual = filesIn(folder);
const named = [...usual, ...filesIn(join(folder, 'on-request'))];
const nameOf = (path) => basename(path, '.ts');
const unknown = chosen.filter((name) => !named.some((path) => nameOf(path) === name));
if (unknown.length > 0) {
  console.error(
    `nothing is called ${unknown.join(', ')}; there is ${named.map(nameOf).join(', ')}`,
  );
  process.exit(2);
}
const [cpu] = cpus();
console.log(
  `${new Date().toISOString().slice(0, 10)} · Node ${process.versions.node} · ${process.platform} ` +
    `${process.arch} · ${cpus().length} × ${cpu?.model ?? 'unknown processor'}`,
);
for (const path of chosen.length === 0 ? usual : named) {
  if (chosen.length > 0 && !chosen.includes(nameOf(path))) continue;
  console.log(`\n${nameOf(path).replaceAll('-', ' ')}`);
  try {
    await import(pathToFileURL(path).href);
  } catch (error) {
    console.log(`could not be measured: ${error instanceof Error ? error.message : String(error)}`);
  }
}
