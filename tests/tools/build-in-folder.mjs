// Builds the site once more, as it stands in a folder of a host whose address is known:
// node tests/tools/build-in-folder.mjs. The tests of such a host read it.
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const projectFolder = fileURLToPath(new URL('../..', import.meta.url));
const package_ = join(projectFolder, 'node_modules/astro');
const { bin } = JSON.parse(readFileSync(join(package_, 'package.json'), 'utf8'));
const { status } = spawnSync(
  process.execPath,
  [join(package_, bin.astro), 'build', '--force', '--outDir', 'tests/.output/in-folder'],
  {
    cwd: projectFolder,
    stdio: 'inherit',
    env: {
      ...process.env,
      SITE_ADDRESS: 'https://books.example/gate-to-file/',
      // The scenes are the same wherever the book stands.
      STILLS_OF_SITE: process.env.SITE_DIST ?? 'dist',
    },
  },
);
process.exitCode = status ?? 1;
