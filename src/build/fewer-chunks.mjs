import { posix } from 'node:path';

/** A module that only one script needs stays with it. */
const SHARED_BY = 2;

/** What every form is made with; practice, cards and search have folders of their own. */
const FORM =
  /\/node_modules\/fraction\.js\/|\/src\/(?:quantity|worksheets\/machine(?!\/bench-))\/|\/src\/ui\/[^/]+$/u;

const inRoom = (room) => new RegExp(`/src/(?:core|worksheets)/${room}/`, 'u');

/** What two or three sheets of one chapter share, and no other page of their room should load. */
const CORNERS = [
  { name: 'winding', test: /\/src\/core\/reel\/reel-length\.ts/u },
  // The box judges its reels as the triage does, so the sheet itself is a shared script.
  {
    name: 'condition-triage',
    test: /\/src\/(?:core\/reel\/(?:condition-triage|triage-|reel-findings|nitrate-)|worksheets\/reel\/condition-triage\/)/u,
  },
  // Labels and help of the whole bench, and what is said of keeping: for the pages of bench and box alone.
  {
    name: 'own-bench',
    test: /\/src\/(?:worksheets\/(?:machine\/bench-table|bench\/bench-inputs)|ui\/kept\/)/u,
  },
  { name: 'stops', test: /\/src\/core\/gate\/(?:density|light-stops)\.ts/u },
  { name: 'lamp', test: /\/src\/(?:core|worksheets)\/gate\/lamp-[^/]+\.ts/u },
  {
    name: 'setting',
    test: /\/src\/(?:core|worksheets)\/gate\/(?:setting-|complete-setting|equal-blade-|rate-words)/u,
  },
  {
    name: 'camera-frames',
    test: /\/src\/(?:core|worksheets)\/gate\/(?:purity|rolling-light|whole-starts|camera-frame-kinds)\.ts/u,
  },
  {
    name: 'crop',
    test: /\/src\/(?:core\/gate\/picture-crop|core\/file\/viewing-commands|worksheets\/file\/picture-crop\/inputs)\.ts/u,
  },
  { name: 'colour', test: /\/src\/(?:core|worksheets)\/file\/colour-/u },
  { name: 'sizes', test: /\/src\/core\/file\/(?:frame-bytes|file-size)\.ts/u },
  {
    name: 'sound',
    test: /\/src\/(?:core|worksheets)\/file\/(?:sound-|speed-change\.|labelled-sound-)(?!.*worksheet\.ts)/u,
  },
  { name: 'keep', test: /\/src\/(?:core|worksheets)\/file\/keep-/u },
];

/**
 * Which script holds a shared module, by its folder: what every form is made with, or the room of a
 * part of the job, so that a sheet of the reel brings nothing of the gate. What wakes the page's live
 * parts belongs to the page itself. A script takes what its modules lean on with it, unless an earlier
 * one of the list has it: so the rooms stand in the order in which they lean on each other.
 */
const SCRIPTS = [
  { name: 'page', test: /\/src\/ui\/islands\//u },
  { name: 'preact', test: /node_modules[\\/]preact[\\/]/u },
  { name: 'form', test: FORM, minShareCount: SHARED_BY },
  // What the reader said of their bench: for those who keep one, and for its own pages.
  {
    name: 'bench',
    test: /\/src\/(?:ui\/bench|worksheets\/machine\/bench-(?!table|input))/u,
    minShareCount: SHARED_BY,
  },
  // The dimensions of the films, which sheets of every part of the job ask for.
  { name: 'gauges', test: /\/src\/core\/reel\/gauges/u, minShareCount: SHARED_BY },
  // The camera's lens and the picture before it, which sheets of gate and file ask for.
  {
    name: 'lens',
    test: /\/src\/(?:worksheets\/gate\/(?:lens-inputs|gate-picture-width|picture-height)|core\/gate\/lens)\.ts/u,
    minShareCount: SHARED_BY,
  },
  ...['reel', 'file', 'gate', 'customer'].map((room) => ({
    name: room,
    test: (id) => inRoom(room).test(id) && !CORNERS.some(({ test }) => test.test(id)),
    minShareCount: SHARED_BY,
  })),
  ...CORNERS.map((corner) => ({ ...corner, minShareCount: SHARED_BY })),
  // The viewer of the home movie, for those who touch it; what it leans on is in the rooms.
  { name: 'scene', test: /\/src\/(?:scene|ui\/scene)\//u, minShareCount: SHARED_BY },
  { name: 'practice', test: /\/src\/ui\/practice\//u, minShareCount: SHARED_BY },
];

/** Vite's own way to load a script looks for styles and preloads first; here no script has any. */
const PRELOAD_HELPER = '\0vite/preload-helper.js';
const PLAIN_LOAD = 'export const __vitePreload = (load) => load();';

/** Name of a script: a worksheet is called after its folder, because all their files have one name. */
function scriptName({ name, facadeModuleId }) {
  const path = facadeModuleId ?? '';
  const sheet = /\/([a-z-]+)\/worksheet\.ts$/u.exec(path)?.[1];
  // Some pictures are called like the sheet that shows them.
  const own = sheet ?? (path.includes('/src/pictures/') ? `${name}-picture` : name);
  return `assets/${own.replace(/[^\w-]/gu, '-')}.[hash].js`;
}

/**
 * Scripts that a script needs without naming them itself. A browser learns of them one step after
 * another, and on a slow line every step costs a second; named at the head, they come all at once.
 */
function unnamedImports({ imports }, chunks) {
  const reached = new Set(imports);
  for (const fileName of reached) for (const next of chunks[fileName].imports) reached.add(next);
  return [...reached].filter((fileName) => !imports.includes(fileName));
}

/**
 * A few scripts instead of a hundred small ones, which would each be compressed alone and weigh more
 * together. What goes together follows from who imports it, and from its room.
 *
 * @returns {import('vite').Plugin}
 */
export function fewerChunks() {
  return {
    name: 'fewer-chunks',
    // Workers are named like scripts, so that their names follow their content for whoever keeps them.
    config: () => ({
      worker: { rolldownOptions: { output: { entryFileNames: 'assets/[name].[hash].js' } } },
    }),
    enforce: 'pre',
    load(id) {
      const isForReaders = this.environment.name === 'client' && this.environment.mode === 'build';
      return id === PRELOAD_HELPER && isForReaders ? PLAIN_LOAD : undefined;
    },
    renderChunk(code, chunk, _options, { chunks }) {
      if (this.environment.name !== 'client' || !chunk.isDynamicEntry) return undefined;
      const heads = unnamedImports(chunk, chunks).map(
        (path) => `import"./${posix.basename(path)}";`,
      );
      return heads.length === 0 ? undefined : { code: heads.join('') + code, map: null };
    },
    generateBundle(_options, bundle) {
      if (this.environment.name !== 'client') return;
      const paths = Object.values(bundle).flatMap(({ moduleIds = [] }) => moduleIds);
      const empty = CORNERS.filter(({ test }) => !paths.some((path) => test.test(path)));
      if (empty.length > 0) {
        throw new Error(`no file is in ${empty.map(({ name }) => name).join(', ')}: mend CORNERS`);
      }
      for (const script of Object.values(bundle)) {
        const styles = script.viteMetadata?.importedCss.size ?? 0;
        if (script.isDynamicEntry === true && styles > 0) {
          throw new Error(`${script.fileName} has styles, which nothing would load`);
        }
      }
    },
    configEnvironment(name) {
      if (name !== 'client') return undefined;
      return {
        build: {
          // Lists of files to preload would weigh on every page; chains are short enough without.
          modulePreload: false,
          rolldownOptions: {
            output: {
              chunkFileNames: scriptName,
              codeSplitting: {
                groups: SCRIPTS.map((script, place) => ({
                  ...script,
                  priority: SCRIPTS.length - place,
                })),
              },
            },
          },
        },
      };
    },
  };
}
