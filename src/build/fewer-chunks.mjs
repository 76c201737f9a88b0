/**
 * A module that so many worksheets and pictures share belongs to what every live form needs. At 3 no
 * file waits for more than two others in turn, and a sheet in use is lightest.
 */
const SHARED_BY = 3;

/**
 * What most live forms need, in one script: a dozen small files would each be compressed alone and
 * weigh more together. Which modules these are follows from who imports them.
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
          // Everything that a dynamic import needs is asked for at once; browsers without the link type
          // still load it, one step later.
          // Lists of files to preload would weigh on every page; chains are short enough without.
          modulePreload: false,
          rolldownOptions: {
            output: {
              codeSplitting: {
                groups: [
                  { name: 'preact', test: /node_modules[\\/]preact[\\/]/u, priority: 2 },
                  { name: 'form', minShareCount: SHARED_BY, priority: 1 },
                ],
              },
            },
          },
        },
      };
    },
  };
}
