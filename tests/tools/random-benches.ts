// Seeded benches as a reader would type them, for tests that feed advice back into the sheets.

/** Numbers from 0 to 1 that a seed fixes (mulberry32). */
export function seededRandom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

export type TypedBench = Readonly<
  Record<
    | 'filmFps'
    | 'flashesPerFrame'
    | 'openPercent'
    | 'pulldownBladeDegrees'
    | 'edgeWipeDegrees'
    | 'cameraFps'
    | 'exposureSeconds'
    | 'readoutSeconds'
    | 'rippleLimitPercent',
    string
  >
>;

const CAMERAS: readonly (readonly [string, number])[] = [
  ['24000/1001', 24_000 / 1001],
  ['24', 24],
  ['25', 25],
  ['30000/1001', 30_000 / 1001],
  ['30', 30],
  ['50', 50],
  ['60000/1001', 60_000 / 1001],
  ['60', 60],
  ['100', 100],
];
const EXPOSURES = [24, 25, 30, 48, 50, 54, 60, 72, 75, 100, 125, 250, 500];
const FILM_RATES = ['16', '16 2/3', '18', '20', '24', '25'];

/** A bench with whatever is set on it: most are wrong in one way or another. */
export function randomBench(random: () => number): TypedBench {
  const pick = <Item>(items: readonly Item[]): Item =>
    items[Math.floor(random() * items.length)] as Item;
  const [cameraFps, camera] = pick(CAMERAS);
  const exposures = EXPOSURES.filter((denominator) => denominator >= camera);
  const flashes = pick([1, 2, 2, 2, 3, 3, 3, 3, 4, 5]);
  const open = Math.round(30 + random() * 40);
  const filmFps = random() < 0.6 ? pick(FILM_RATES) : (14 + random() * 12).toFixed(2);
  const dark = (360 * (100 - open)) / 100;
  const isUnequal = flashes > 1 && random() < 0.15;
  // From somewhat narrower than its share of the dark to twice as wide.
  const blade = Math.min(dark - flashes, (dark / flashes) * (0.8 + 1.2 * random()));
  const readout = random();
  return {
    filmFps,
    flashesPerFrame: String(flashes),
    openPercent: String(open),
    pulldownBladeDegrees: isUnequal ? blade.toFixed(1) : '',
    edgeWipeDegrees: random() < 0.1 ? '2' : '',
    cameraFps,
    exposureSeconds: `1/${pick(exposures)}`,
    readoutSeconds:
      readout < 0.3 ? '' : readout < 0.5 ? '0' : ((random() * 990) / camera).toFixed(1),
    rippleLimitPercent: pick(['0.5', '1', '1', '2']),
  };
}
