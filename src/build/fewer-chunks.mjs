/** A module that only one script needs stays with it. */
const SHARED_BY = 2;

/**
 * Which script holds a shared module, by its folder: what every form is made with, or the room of a
 * part of the job, so that a sheet of the reel brings nothing of the gate. What wakes the page's live
 * parts belongs to the page itself.
 */
function scriptOf(id) {
  const room = /\/src\/(?:core|worksheets)\/(reel|gate|file|customer)\//u.exec(id)?.[1];
  if (room !== undefined) return room;
  if (/\/node_modules\/fraction\.js\/|\/src\/(?:quantity|worksheets)\//u.test(id)) return 'form';
  return /\/src\/ui\//u.test(id) ? 'form' : null;
}

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
    // Workers are named like scripts, so that their names follow their content for whoever keeps them.
    config: () => ({
      worker: { rolldownOptions: { output: { entryFileNames: 'assets/[name].[hash].js' } } },
    }),
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
                groups: [
                  { name: 'page', test: /\/src\/ui\/islands\//u, priority: 3 },
                  { name: 'preact', test: /node_modules[\\/]preact[\\/]/u, priority: 2 },
                  { name: scriptOf, minShareCount: SHARED_BY, priority: 1 },
                ],
              },
            },
          },
        },
      };
    },
  };
}
