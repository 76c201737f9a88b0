import type { Chance } from './chance.ts';
import { filmAt, type GateRun } from './projector.ts';
import { COLUMNS, ROWS, type DrawFilmFrame } from './scenes.ts';

/** A camera as it really films. */
export interface Camera {
  readonly cameraFps: number;
  readonly exposureSeconds: number;
  readonly readoutSeconds: number;
  /** Spread of the noise in the small picture, share of white. */
  readonly noise: number;
  readonly curve: 'gamma' | 'video' | 'steep';
  readonly followsLight: boolean;
  /** Change that the coder drops, share of white; 0 for none. */
  readonly coarseness: number;
}

/** What a camera frame truly holds. */
export interface TrueFrame {
  /** Film frames gone by when the first row begins. */
  readonly position: number;
  /** Film frame that gives most of the light of the picture. */
  readonly main: number;
  /** Least share of the main film frame in any row that holds light; 0 when a row holds none. */
  readonly leastShare: number;
}

const CURVES: Readonly<Record<Camera['curve'], (light: number) => number>> = {
  gamma: (light) => Math.min(1, light) ** (1 / 2.2),
  video: (light) => (light < 0.018 ? 4.5 * light : 1.099 * Math.min(1.2, light) ** 0.45 - 0.099),
  steep: (light) => {
    const level = Math.min(1, light) ** (1 / 2.2);
    return level * level * (3 - 2 * level);
  },
};

/** Films the run; hands over each small picture and what it truly holds. */
export function* filmRun(
  chance: Chance,
  run: GateRun,
  draw: DrawFilmFrame,
  camera: Camera,
  frames: number,
): Generator<{ readonly picture: Float64Array; readonly truth: TrueFrame }> {
  const { cameraFps, exposureSeconds, readoutSeconds } = camera;
  const curve = CURVES[camera.curve];
  const normals = Float64Array.from({ length: 16_384 }, () => chance.normal());
  const open = run.projector.openings.reduce((sum, { from, to }) => sum + to - from, 0);
  const usual = exposureSeconds * open;
  let gain = 1;
  let coded: Float64Array | undefined;
  for (let frame = 0; frame < frames; frame += 1) {
    const start = frame / cameraFps;
    const light = new Float64Array(COLUMNS * ROWS);
    const sums = new Map<number, number>();
    const rows: Map<number, number>[] = [];
    for (let row = 0; row < ROWS; row += 1) {
      const from = start + ((row + 0.5) / ROWS) * readoutSeconds;
      const shares = new Map<number, number>();
      for (const { film, light: collected } of run.between(from, from + exposureSeconds)) {
        if (collected <= 0) continue;
        shares.set(film, collected);
        sums.set(film, (sums.get(film) ?? 0) + collected);
        const picture = draw(film);
        for (let column = 0; column < COLUMNS; column += 1) {
          const at = row * COLUMNS + column;
          light[at]! += (collected / usual) * picture[at]!;
        }
      }
      rows.push(shares);
    }
    let mean = 0;
    for (const level of light) mean += level / light.length;
    if (camera.followsLight) gain += 0.04 * (Math.min(4, 0.3 / Math.max(mean, 0.01)) - gain);
    const noiseFrom = Math.floor(chance.between(0, 14_000));
    const picture = light.map(
      (level, at) => curve(level * gain) + camera.noise * normals[noiseFrom + at]!,
    );
    const isRefreshed = frame % 25 === 0;
    if (coded !== undefined && camera.coarseness > 0 && !isRefreshed) {
      for (let at = 0; at < picture.length; at += 1) {
        const change = picture[at]! - coded[at]!;
        if (Math.abs(change) < camera.coarseness) picture[at] = coded[at]! + 0.2 * change;
      }
    }
    coded = picture;
    const [main] = [...sums].reduce((most, each) => (each[1] > most[1] ? each : most), [-1, 0]);
    const leastShare = Math.min(
      ...rows.map((shares) => {
        const all = [...shares.values()].reduce((sum, value) => sum + value, 0);
        return all <= 1e-7 ? 0 : (shares.get(main) ?? 0) / all;
      }),
    );
    yield { picture, truth: { position: filmAt(run.projector, start), main, leastShare } };
  }
}
