/**
 * What every live form needs, in one script: a dozen small files would each be compressed alone and
 * weigh more together. Lists of files to preload are left out for the same reason.
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
          modulePreload: false,
          rolldownOptions: {
            output: {
              advancedChunks: {
                groups: [
                  {
                    name: 'form',
                    test: /node_modules\/(?:preact|fraction\.js)\/|src\/core\/(?:quantity\/|errors)|src\/worksheets\/(?:evaluate|answers|entry-text|types)\.ts|src\/ui\/(?:[A-Z]\w+\.tsx|early-typing|permalink|offer-download|answers-as-text|csv-text|own-unit)/u,
                  },
                ],
              },
            },
          },
        },
      };
    },
  };
}
