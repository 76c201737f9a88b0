/** A module that only one script needs stays with it. */
const SHARED_BY = 2;

/**
 * Which script holds a shared module, by its folder; an earlier row goes before a later one, and takes what
 * its modules import along. So what every form is made with comes first, then the rooms: the file before
 * the gate, of which it shares little. A sheet of the reel brings nothing of the gate.
 */
const SCRIPTS = [
  // What wakes the page's live parts belongs to the page itself, shared or not.
  { name: 'page', test: /\/src\/ui\/islands\//u, minShareCount: 1 },
  { name: 'preact', test: /node_modules[\\/]preact[\\/]/u, minShareCount: 1 },
  {
    name: 'form',
    test: /\/node_modules\/fraction\.js\/|\/src\/quantity\/|\/src\/worksheets\/machine\/|\/src\/ui\/(?!practice\/)/u,
  },
  { name: 'gauges', test: /\/src\/core\/reel\/gauges/u },
  ...['reel', 'file', 'gate', 'customer'].map((room) => ({
    name: room,
    test: new RegExp(`/src/(?:core|worksheets)/${room}/`, 'u'),
  })),
  { name: 'practice', test: /\/src\/ui\/practice\//u },
];

/** Vite's own way to load a script looks for styles and preloads first; here no script has any. */
const PRELOAD_HELPER = '\0vite/preload-helper.js';
const PLAIN_LOAD = 'export const __vitePreload = (load) => load();';

/** Name of a script: a worksheet is called after its folder, because all their files have one name. */
function scriptName({ name, facadeModuleId }) {
  const own = /\/([a-z-]+)\/worksheet\.ts$/u.exec(facadeModuleId ?? '')?.[1] ?? name;
  return `assets/${own.replace(/[^\w-]/gu, '-')}.[hash].js`;
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
    enforce: 'pre',
    load(id) {
      const isForReaders = this.environment.name === 'client' && this.environment.mode === 'build';
      return id === PRELOAD_HELPER && isForReaders ? PLAIN_LOAD : undefined;
    },
    generateBundle(_options, bundle) {
      if (this.environment.name !== 'client') return;
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
                groups: SCRIPTS.map((script, row) => ({
                  minShareCount: SHARED_BY,
                  ...script,
                  priority: SCRIPTS.length - row,
                })),
              },
            },
          },
        },
      };
    },
  };
}
