import type { Edge } from './imports.ts';

/** Something a layer may import. */
interface Permission {
  /** A folder (ends in `/`), a file, or a package (its subpaths are meant too). */
  readonly to: string;
  /** Only `import type`: nothing of it runs. */
  readonly onlyTypes?: true;
  /** Only types, and `import()` after a press: no part of a page's first load. */
  readonly onlyOnPress?: true;
}

const types = (to: string): Permission => ({ to, onlyTypes: true });
const onPress = (to: string): Permission => ({ to, onlyOnPress: true });
const all = (...targets: readonly string[]): readonly Permission[] => targets.map((to) => ({ to }));

/** fraction.js: worksheets pass exact rates on. */
const worksheetRoom = (room: string): readonly Permission[] =>
  all(room, 'src/worksheets/machine/', 'src/core/', 'src/quantity/', 'fraction.js');

/**
 * The walls: for each layer the only things its files may import. Everything that is not listed is
 * forbidden, so a new layer or package has to be entered here first, with its reason.
 */
export const walls: Readonly<Record<string, readonly Permission[]>> = {
  'src/quantity/': all('src/quantity/', 'fraction.js'),
  // The rooms of the core follow the order of the job: a film file is made of a reel and a gate, and
  // nothing else leans on another room.
  'src/core/reel/': all('src/core/reel/', 'src/quantity/', 'fraction.js'),
  'src/core/gate/': all('src/core/gate/', 'src/quantity/', 'fraction.js'),
  'src/core/file/': [
    ...all('src/core/file/', 'src/core/gate/', 'src/core/reel/'),
    ...all('src/quantity/', 'fraction.js'),
  ],
  'src/core/customer/': all('src/core/customer/', 'src/quantity/', 'fraction.js'),
  // A job is a box of reels that become files for a customer: it gathers what the rooms hold.
  'src/core/job/': [
    ...all('src/core/job/', 'src/core/reel/', 'src/core/file/', 'src/core/customer/'),
    ...all('src/quantity/', 'fraction.js'),
  ],
  // The list of all worksheets.
  'src/worksheets/registry.ts': all('src/worksheets/'),
  // What every worksheet is made with; knows none of them. The bench table names the gauges.
  'src/worksheets/machine/': [
    ...all('src/worksheets/machine/', 'src/quantity/', 'fraction.js', 'src/core/reel/gauges.ts'),
    types('src/core/'),
  ],
  // The rooms of the worksheets stand like those of the core, and each may ask all of it.
  'src/worksheets/reel/': worksheetRoom('src/worksheets/reel/'),
  'src/worksheets/gate/': worksheetRoom('src/worksheets/gate/'),
  'src/worksheets/file/': [
    ...worksheetRoom('src/worksheets/file/'),
    ...all('src/worksheets/gate/', 'src/worksheets/reel/'),
  ],
  'src/worksheets/customer/': worksheetRoom('src/worksheets/customer/'),
  // The reader's bench and the cards for the wall gather what the rooms hold.
  'src/worksheets/bench/': all('src/worksheets/', 'src/core/', 'src/quantity/'),
  // Cases for practice are drawn by chance from a seed and judged by the worksheets they are handed.
  'src/practice/': all('src/practice/', 'src/worksheets/machine/', 'src/quantity/'),
  // The box of reels leans on the triage and on the bench's own price list.
  'src/worksheets/box/': all('src/worksheets/', 'src/core/', 'src/quantity/', 'fraction.js'),
  // A picture draws numbers it is given; it must not call the core.
  'src/pictures/': [
    ...all('src/pictures/', 'preact'),
    types('src/core/'),
    types('src/worksheets/'),
    types('src/quantity/'),
  ],
  // Line drawings of the work: made once, at build. How far sound runs ahead is the core's to say.
  'src/drawings/': all('src/drawings/', 'src/quantity/', 'src/core/file/sound-separation.ts'),
  // The drawn home movie and the camera that films it: a picture of what the core says.
  'src/scene/': all('src/scene/', 'src/core/', 'src/quantity/', 'fraction.js'),
  // mediabunny: reads the frames of a video file over WebCodecs. fraction.js: exact rates.
  'src/clip/': all('src/clip/', 'src/core/', 'src/quantity/', 'mediabunny', 'fraction.js'),
  // Works out what a recording holds with the core itself: no sheet of numbers stands between.
  'src/ui/recording/': [
    ...all('src/ui/', 'src/worksheets/', 'src/pictures/', 'src/core/', 'src/quantity/'),
    onPress('src/clip/'),
    ...all('preact', 'fraction.js'),
  ],
  'src/ui/': [
    ...all('src/ui/', 'src/worksheets/', 'src/pictures/', 'src/quantity/'),
    ...all('src/practice/'),
    // Code that reads recordings comes when a file is chosen, and not before.
    onPress('src/clip/'),
    // The viewer of the drawn home movie; its script fetches its own style.
    ...all('src/scene/', 'src/styles/scene-tools.css'),
    // minisearch: the index of the search page.
    ...all('preact', 'minisearch'),
    types('src/core/'),
    types('fraction.js'),
  ],
  // evaluate and pictures: the first render of a worksheet is made at build, with its picture.
  'src/components/': [
    ...all('src/components/', 'src/book/', 'src/ui/', 'src/offline/', 'src/schemas/'),
    ...all('src/pictures/', 'src/drawings/', 'src/practice/'),
    ...all('src/worksheets/registry.ts', 'src/worksheets/machine/evaluate.ts'),
    ...all('src/worksheets/machine/entry-text.ts'),
    ...all('src/scene/'),
    // A scene, a drawing, a recording or a long list brings its style along: most pages have none.
    ...all('src/styles/scene.css', 'src/styles/drawings.css', 'src/styles/recording.css'),
    ...all('src/styles/lists.css'),
    // The rules on cards for judgement are written at build only.
    ...all('src/worksheets/bench/rule-cards.ts'),
    ...all('astro:content', 'katex'),
  ],
  // Layouts know nothing of physics. They name the font files that a page preloads.
  'src/layouts/': [
    ...all('src/layouts/', 'src/components/', 'src/styles/', 'src/public/'),
    // Names of the pages in the menu.
    ...all('src/book/tool-pages.ts'),
    ...all('astro', '@fontsource'),
  ],
  'src/pages/': [
    ...all('src/pages/', 'src/layouts/', 'src/components/', 'src/schemas/', 'src/styles/'),
    ...all('src/worksheets/registry.ts', 'src/book/', 'src/drawings/', 'astro', 'astro:content'),
  ],
  // The copy of the site on the reader's device; knows files, not their content.
  'src/offline/': all('src/offline/', 'src/ui/islands/site-path.ts', 'serwist'),
  'src/schemas/': all('src/schemas/', 'astro/zod'),
  // Steps of the build itself, run by astro.config.mjs; nothing of them reaches a page.
  'src/build/': [
    ...all(
      'src/build/',
      'src/book/',
      'src/offline/',
      'node:crypto',
      'node:fs',
      'node:path',
      'node:url',
    ),
    // node:os: faces for the preview pictures stand in a folder for a while.
    ...all('node:os'),
    ...all('node-html-parser', 'sharp', 'subset-font', 'vite'),
    // The stills of scenes are drawn at build, without a browser.
    ...all('src/scene/', '@napi-rs/canvas'),
    // What a chapter may write is read from the closed list.
    ...all('src/components/chapter-map.ts'),
    // The rows of the bench table are written into the scripts that ask for them.
    ...all('src/worksheets/machine/bench-input.ts', 'src/worksheets/machine/bench-columns.ts'),
  ],
  // What the build makes of the content: loaders that name a fault's line, what chapters mention, and the
  // numbers, tables, scenes and search records that it works out.
  'src/book/': [
    ...all('src/book/', 'src/schemas/', 'src/practice/', 'astro', 'astro:content', 'yaml'),
    ...all('src/worksheets/registry.ts', 'src/worksheets/machine/evaluate.ts'),
    ...all('src/worksheets/machine/entry-text.ts'),
    // What a scene shows, and how its light swings, said in its alternative text.
    ...all('src/scene/', 'src/ui/scene/bench-from-entries.ts', 'node:crypto'),
    // The same CSV as the reader takes from a sheet, and the kinds by which the search lists.
    ...all('src/ui/files/csv-text.ts', 'src/ui/search/kinds.ts'),
    ...all('node:fs', 'node:path', 'node:url'),
    types('src/worksheets/'),
    types('src/ui/search/'),
  ],
  'src/content.config.ts': all('src/book/', 'src/schemas/', 'astro', 'astro:content'),
  // Chapters use components from one closed map, by name.
  'content/': [],
};

function covers({ to, onlyTypes, onlyOnPress }: Permission, edge: Edge): boolean {
  if (onlyTypes === true && edge.kind !== 'type') return false;
  if (onlyOnPress === true && edge.kind !== 'type' && edge.kind !== 'dynamic') return false;
  if (to.endsWith('/')) return edge.to.startsWith(to);
  return edge.to === to || (!to.includes('.ts') && edge.to.startsWith(`${to}/`));
}

/** The edges that cross a wall, each as a line that names file, line, target and what is allowed. */
export function forbiddenEdges(edges: readonly Edge[]): readonly string[] {
  return edges.flatMap((edge) => {
    const layer = Object.keys(walls).find((key) =>
      key.endsWith('/') ? edge.from.startsWith(key) : edge.from === key,
    );
    const permissions = layer === undefined ? [] : (walls[layer] ?? []);
    if (permissions.some((permission) => covers(permission, edge))) return [];
    const allowed = permissions
      .map(({ to, onlyTypes, onlyOnPress }) => {
        if (onlyTypes === true) return `types of ${to}`;
        return onlyOnPress === true ? `${to} by import() alone` : to;
      })
      .join(', ');
    return [
      `${edge.from}:${edge.line} → ${edge.to} (${edge.kind}); ` +
        `${layer ?? 'a file outside every layer'} may import ${allowed === '' ? 'nothing' : allowed}`,
    ];
  });
}

/** Circles among the files, each once, as `a → b → a`. */
export function findCycles(edges: readonly Edge[]): readonly string[] {
  const targets = new Map<string, Set<string>>();
  for (const { from, to } of edges) {
    targets.set(from, (targets.get(from) ?? new Set()).add(to));
  }
  const finished = new Set<string>();
  const cycles: string[] = [];
  const visit = (file: string, trail: readonly string[]): void => {
    const start = trail.indexOf(file);
    if (start >= 0) {
      cycles.push([...trail.slice(start), file].join(' → '));
      return;
    }
    if (finished.has(file)) return;
    for (const target of targets.get(file) ?? []) visit(target, [...trail, file]);
    finished.add(file);
  };
  for (const file of targets.keys()) visit(file, []);
  return cycles;
}
