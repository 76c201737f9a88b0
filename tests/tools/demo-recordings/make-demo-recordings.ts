// Makes the two demo recordings of the book and writes down what they truly hold:
//   npx node --experimental-strip-types tests/tools/demo-recordings/make-demo-recordings.ts && npx oxfmt tests/tools/demo-recordings/truth.json
// The scene, the projector and the camera are simulated; only the coding is ffmpeg's.
import { spawnSync } from 'node:child_process';
import { statSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { ffmpeg } from '../ffmpeg.ts';
import { makeChance } from '../film-clip/chance.ts';
import {
  filmAt,
  openingsOf,
  runProjector,
  type GateRun,
  type Projector,
} from '../film-clip/projector.ts';
import { apertureLight, drawFilmFrame, HEIGHT, WIDTH } from './river-scene.ts';

interface DemoCamera {
  readonly cameraFps: number;
  readonly exposureSeconds: number;
  readonly readoutSeconds: number;
  /** Light that fills the code range when the whole exposure is lit. */
  readonly gain: number;
  readonly noise: number;
}

interface Demo {
  readonly fileName: string;
  readonly seconds: number;
  readonly flashes: number;
  readonly open: number;
  readonly projector: Projector;
  readonly camera: DemoCamera;
  /** Quality of the coder; larger is smaller. */
  readonly rateFactor: number;
  /** Light of a film frame; nothing for an empty gate. */
  readonly draw: ((filmFrame: number) => Float32Array) | undefined;
}

const SEED = 1958;
const chance = makeChance(SEED);
const grain = Float32Array.from({ length: 65_536 }, () => chance.normal());
let grainAt = 0;
const nextGrain = (): number => {
  grainAt = (grainAt + 1) % 65_521;
  return grain[grainAt]!;
};

const frames = new Map<number, Float32Array>();
function river(filmFrame: number): Float32Array {
  let drawn = frames.get(filmFrame);
  if (drawn === undefined) {
    grainAt = Math.floor(chance.between(0, 60_000));
    drawn = drawFilmFrame(filmFrame, nextGrain);
    frames.set(filmFrame, drawn);
    frames.delete(filmFrame - 6);
  }
  return drawn;
}

const projectorOf = (filmFps: number, start: number): Projector => ({
  filmFps,
  openings: openingsOf(3, 0.5, 1 / 6),
  edge: 0.02,
  swings: [
    { share: 0.0012, hertz: 0.11, turn: 1 },
    { share: 0.0006, hertz: 0.43, turn: 4 },
  ],
  trend: 0.0002,
  start,
});

/** A bench with an exposure for another film rate, and one that keeps whole frames. */
const DEMOS: readonly Demo[] = [
  {
    fileName: 'empty-gate.mp4',
    seconds: 10,
    flashes: 3,
    open: 0.5,
    projector: projectorOf(17.86, 0.3),
    camera: {
      cameraFps: 25,
      exposureSeconds: 1 / 50,
      readoutSeconds: 0.016,
      gain: 0.62,
      noise: 0.004,
    },
    rateFactor: 21,
    draw: undefined,
  },
  {
    fileName: 'film.mp4',
    seconds: 8,
    flashes: 3,
    open: 0.5,
    projector: projectorOf(17.93, 0.6),
    camera: {
      cameraFps: 50,
      exposureSeconds: 1 / 54,
      readoutSeconds: 0.012,
      gain: 0.95,
      noise: 0.002,
    },
    rateFactor: 25,
    draw: river,
  },
];

/** BT.709: light to signal. */
const signalOf = (light: number): number =>
  light < 0.018 ? 4.5 * light : 1.099 * Math.min(1, light) ** 0.45 - 0.099;

const aperture = Float32Array.from({ length: WIDTH * HEIGHT }, (_, at) =>
  apertureLight(at % WIDTH, Math.floor(at / WIDTH)),
);

/** One camera frame, row by row as it is read out, as red, green and blue codes. */
function expose(
  demo: Demo,
  run: GateRun,
  cameraFrame: number,
): { codes: Uint8Array; whole: number | null } {
  const { camera, draw, open } = demo;
  const { cameraFps, exposureSeconds, readoutSeconds, gain, noise } = camera;
  const codes = new Uint8Array(WIDTH * HEIGHT * 3);
  const usual = exposureSeconds * open;
  const held = new Set<number>();
  let hasDarkRow = false;
  for (let row = 0; row < HEIGHT; row += 1) {
    const from = cameraFrame / cameraFps + ((row + 0.5) / HEIGHT) * readoutSeconds;
    const shares = run.between(from, from + exposureSeconds).filter(({ light }) => light > 0);
    for (const { film, light } of shares) if (light > 1e-6 * usual) held.add(film);
    hasDarkRow ||= shares.length === 0;
    const pictures = shares.map(({ film, light }) => ({
      picture: draw?.(film),
      share: (light / usual) * gain,
    }));
    for (let column = 0; column < WIDTH; column += 1) {
      const place = row * WIDTH + column;
      const speck = noise * nextGrain();
      for (let part = 0; part < 3; part += 1) {
        let light = 0;
        for (const { picture, share } of pictures)
          light += share * (picture?.[place * 3 + part] ?? 1);
        codes[place * 3 + part] = Math.round(
          255 * Math.min(1, Math.max(0, signalOf(light * aperture[place]! + 0.002) + speck)),
        );
      }
    }
  }
  const [only] = held;
  return { codes, whole: held.size === 1 && !hasDarkRow ? only! : null };
}

function code(demo: Demo, pictures: readonly Uint8Array[], path: string): void {
  const tags = [
    '-color_range',
    'tv',
    '-colorspace',
    'bt709',
    '-color_primaries',
    'bt709',
    '-color_trc',
    'bt709',
  ];
  const { status, stderr } = spawnSync(
    ffmpeg!.path,
    [
      ...['-v', 'error', '-y', '-f', 'rawvideo', '-pix_fmt', 'rgb24', '-s', `${WIDTH}x${HEIGHT}`],
      ...['-r', String(demo.camera.cameraFps), '-i', '-'],
      ...['-vf', 'scale=out_color_matrix=bt709:out_range=tv', '-pix_fmt', 'yuv420p', ...tags],
      ...['-c:v', 'libx264', '-preset', 'veryslow', '-crf', String(demo.rateFactor), '-g', '50'],
      ...[
        '-threads',
        '1',
        '-fflags',
        '+bitexact',
        '-flags:v',
        '+bitexact',
        '-movflags',
        '+faststart',
        path,
      ],
    ],
    { input: Buffer.concat(pictures), maxBuffer: 2 ** 28 },
  );
  if (status !== 0) throw new Error(String(stderr));
}

const root = fileURLToPath(new URL('../../../', import.meta.url));
const truths = DEMOS.map((demo) => {
  const { camera, projector, seconds } = demo;
  const run = runProjector(projector, seconds + 0.2);
  const count = Math.round(seconds * camera.cameraFps);
  const shots = Array.from({ length: count }, (_, at) => expose(demo, run, at));
  const path = `${root}src/public/recordings/${demo.fileName}`;
  code(
    demo,
    shots.map(({ codes }) => codes),
    path,
  );
  console.log(`${demo.fileName}: ${count} camera frames, ${statSync(path).size} bytes`);
  return {
    fileName: demo.fileName,
    seed: SEED,
    cameraFps: camera.cameraFps,
    exposureSeconds: camera.exposureSeconds,
    readoutSeconds: camera.readoutSeconds,
    flashesPerFrame: demo.flashes,
    openFraction: demo.open,
    /** Mean over the recording. */
    filmFps: (filmAt(projector, seconds) - filmAt(projector, 0)) / seconds,
    /** Film frames gone by when the first row of each camera frame begins. */
    positions: shots.map((_, at) => Number(filmAt(projector, at / camera.cameraFps).toFixed(4))),
    /** The film frame of a camera frame that holds one whole; null for a blended one. */
    wholeFilmFrames: demo.draw === undefined ? undefined : shots.map(({ whole }) => whole),
  };
});
writeFileSync(`${root}tests/tools/demo-recordings/truth.json`, `${JSON.stringify(truths)}\n`);
