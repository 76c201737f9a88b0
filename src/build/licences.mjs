import { readFile, readdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import { workerBuild } from './worker-build.mjs';

// The page of licences lists what is really shipped: the modules and files that the bundler put into the
// site, not a list that someone keeps by hand.

/** Where the page of licences is filled in. */
const PLACE = '<div data-licences></div>';
/** A file that only the server's side of the build names still reaches the reader when it is no code. */
const SHIPPED_AS_IT_IS = /\.(?:woff2?|ttf|otf|svg|png|css)(?:\?|$)/;
/** Code that the tools of the build put into the bundle by themselves. */
const ADDED_BY = [
  [/^\0?vite\//, 'vite'],
  [/^\0?rolldown\//, 'rolldown'],
];

/** The package that a module is of; nothing for the book's own files. */
export function packageOf(moduleId) {
  const [, added] = ADDED_BY.find(([pattern]) => pattern.test(moduleId)) ?? [];
  if (added !== undefined) return added;
  const path = moduleId.replaceAll('\\', '/');
  const at = path.lastIndexOf('/node_modules/');
  if (at < 0) return undefined;
  return /^(?:@[^/]+\/)?[^/?]+/.exec(path.slice(at + '/node_modules/'.length))?.[0];
}

/** Notes the package of everything that one bundle holds. */
function noteShipped(shipped, isShipped) {
  return (_options, bundle) => {
    for (const file of Object.values(bundle)) {
      const ids =
        file.type === 'chunk'
          ? Object.entries(file.modules)
              .filter(([, module]) => module.renderedLength > 0)
              .map(([id]) => id)
          : (file.originalFileNames ?? []).map((name) => `/${name}`);
      for (const id of ids.filter(isShipped)) {
        const name = packageOf(id);
        if (name !== undefined) shipped.add(name);
      }
    }
  };
}

const escaped = (text) =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');

/** The text of a licence; tools append the licences of what they contain, which is not shipped here. */
async function licenceText(folder, name) {
  const files = (await readdir(folder)).filter((file) =>
    /^(?:licen[cs]e|copying|ofl)\b/i.test(file),
  );
  if (files.length === 0) throw new Error(`${name} is shipped and has no licence text`);
  const texts = await Promise.all(files.map((file) => readFile(join(folder, file), 'utf8')));
  return texts
    .map((text) => text.split(/^#+ Licenses of bundled dependencies/m)[0].trim())
    .join('\n\n');
}

async function entryOf(name, locked, root) {
  const folder = `node_modules/${name}`;
  const { version, license } = locked[folder] ?? {};
  if (version === undefined || license === undefined) {
    throw new Error(`package-lock.json does not say version and licence of ${name}`);
  }
  const text = await licenceText(join(root, folder), name);
  return { name, version, license, text };
}

function section({ name, version, license, text }) {
  const id = `licence-${name.replaceAll(/[^\w]+/g, '-').replace(/^-/, '')}`;
  return (
    `<section class="licence" aria-labelledby="${id}"><h2 id="${id}">${escaped(name)} ` +
    `<span>${escaped(version)}, ${escaped(license)}</span></h2>` +
    `<details><summary>Text of the licence of ${escaped(name)}</summary>` +
    `<pre>${escaped(text)}</pre></details></section>`
  );
}

/**
 * Fills the page of licences in.
 *
 * @returns {import('astro').AstroIntegration}
 */
export function licences() {
  const shipped = new Set();
  let root = '';
  const notesBundle = {
    name: 'note-shipped',
    generateBundle(options, bundle) {
      const isClient = this.environment.name === 'client';
      noteShipped(shipped, (id) => isClient || SHIPPED_AS_IT_IS.test(id))(options, bundle);
    },
  };
  // A worker is a bundle of its own, which the plugins of the pages never see.
  const notesWorkers = { name: 'note-shipped', generateBundle: noteShipped(shipped, () => true) };
  return {
    name: 'licences',
    hooks: {
      'astro:config:setup': ({ config, updateConfig }) => {
        root = fileURLToPath(config.root);
        updateConfig({
          vite: { plugins: [notesBundle], worker: { plugins: () => [notesWorkers] } },
        });
      },
      'astro:build:done': async ({ dir, logger }) => {
        // The service worker is built after all pages; what it is made of is looked up here.
        await build(workerBuild({ plugins: [notesWorkers] }));
        const { packages } = JSON.parse(await readFile(join(root, 'package-lock.json'), 'utf8'));
        const entries = await Promise.all(
          [...shipped].sort().map((name) => entryOf(name, packages, root)),
        );
        const page = join(fileURLToPath(dir), 'licences/index.html');
        const html = await readFile(page, 'utf8');
        if (!html.includes(PLACE)) throw new Error('the page of licences has no place for them');
        const book = {
          name: 'From Gate to File',
          version: 'the book itself',
          license: 'MIT',
          text: await licenceText(root, 'the book'),
        };
        const sections = [book, ...entries].map(section).join('');
        await writeFile(
          page,
          html.replace(PLACE, () => sections),
        );
        logger.info(entries.map(({ name }) => name).join(', '));
      },
    },
  };
}
