/**
 * A module that so many live parts share belongs to what every form needs. Below that, modules that
 * several worksheets of one room share go together, so that a sheet of the reel brings nothing of the
 * gate.
 */
const SHARED_BY_MOST = 3;
const SHARED_IN_A_ROOM = 2;

/** Room of a module of the core or of a worksheet: the folder of its part of the job. */
function roomOf(id) {
  return /\/src\/(?:core|worksheets)\/(reel|gate|file|customer)\//u.exec(id)?.[1] ?? null;
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
                  { name: 'preact', test: /node_modules[\\/]preact[\\/]/u, priority: 3 },
                  { name: 'form', minShareCount: SHARED_BY_MOST, priority: 2 },
                  { name: roomOf, minShareCount: SHARED_IN_A_ROOM, priority: 1 },
                ],
              },
            },
          },
        },
      };
    },
  };
}
