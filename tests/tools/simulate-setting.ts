// A bench simulated blade by blade, row by row and film frame by film frame, with arithmetic of its own:
// nothing here comes from the core.

type Typed = Readonly<Record<string, string>>;

/** A number as the tests type it: 18, 16 2/3, 30000/1001, 1/54. */
function numberOf(text: string): number {
  return text
    .trim()
    .split(' ')
    .reduce((sum, part) => {
      const [top = 0, bottom = 1] = part.split('/').map(Number);
      return sum + top / bottom;
    }, 0);
}

/** One lit stretch of the cycle: rises from `from` over the wipe, falls to dark at `to`. */
interface Opening {
  readonly from: number;
  readonly to: number;
}

export interface Simulated {
  /** Rows of camera frames that saw no light at all. */
  readonly darkRows: number;
  readonly filmFramesWithoutWholeFrame: number;
  readonly ripplePercent: number;
}

const ROWS = 9;
const FILM_FRAMES = 60;
const START_PHASES = 23;

/**
 * Runs a projector and a camera from several start phases and looks at every row of every camera frame.
 *
 * @param typed  entries of the flash match; an empty readout counts as a whole camera frame
 */
export function simulateSetting(typed: Typed): Simulated {
  const filmFps = numberOf(typed['filmFps'] ?? '');
  const cameraFps = numberOf(typed['cameraFps'] ?? '');
  const exposure = numberOf(typed['exposureSeconds'] ?? '');
  const flashes = Number(typed['flashesPerFrame']);
  const open = Number(typed['openPercent']) / 100;
  const readout =
    typed['readoutSeconds'] === '' ? 1 / cameraFps : Number(typed['readoutSeconds']) / 1000;
  const wipe = Number(typed['edgeWipeDegrees'] ?? 0) / 360;

  // The cycle from the middle of the pulldown blade: half of it, then openings and other blades.
  const pulldown =
    typed['pulldownBladeDegrees'] === '' || typed['pulldownBladeDegrees'] === undefined
      ? (1 - open) / flashes
      : Number(typed['pulldownBladeDegrees']) / 360;
  const other = flashes === 1 ? 0 : (1 - open - pulldown) / (flashes - 1);
  const openings: Opening[] = [];
  for (let flash = 0; flash < flashes; flash += 1) {
    const from = pulldown / 2 + flash * (open / flashes + other);
    openings.push({ from: from - wipe / 2, to: from + open / flashes + wipe / 2 });
  }

  // Light of one opening up to a moment, cycles: a trapezium with ramps of one wipe.
  const lightUpTo = ({ from, to }: Opening, moment: number): number => {
    const ramp = (x: number): number => {
      if (wipe === 0) return Math.max(0, x);
      const inside = Math.min(Math.max(x, 0), wipe);
      return (inside * inside) / (2 * wipe) + Math.max(0, x - wipe);
    };
    return ramp(moment - from) - ramp(moment - (to - wipe));
  };
  /** Light of each film frame in an exposure, cycles, by film frame. */
  const lightOf = (startSeconds: number): ReadonlyMap<number, number> => {
    const [start, end] = [startSeconds * filmFps, (startSeconds + exposure) * filmFps];
    const found = new Map<number, number>();
    for (let frame = Math.floor(start) - 1; frame <= Math.floor(end) + 1; frame += 1) {
      let light = 0;
      for (const opening of openings) {
        light += lightUpTo(opening, end - frame) - lightUpTo(opening, start - frame);
      }
      if (light > 1e-9) found.set(frame, light);
    }
    return found;
  };

  let darkRows = 0;
  let filmFramesWithoutWholeFrame = 0;
  let least = Infinity;
  let most = 0;
  const cameraFrames = Math.ceil((FILM_FRAMES / filmFps) * cameraFps);
  for (let phase = 0; phase < START_PHASES; phase += 1) {
    const offset = (phase + 0.37) / START_PHASES / filmFps;
    const whole = new Set<number>();
    for (let camera = 0; camera < cameraFrames; camera += 1) {
      const seen = new Set<number>();
      let hasDark = false;
      for (let row = 0; row < ROWS; row += 1) {
        const rowStart = offset + camera / cameraFps + (readout * row) / (ROWS - 1);
        const light = lightOf(rowStart);
        const total = [...light.values()].reduce((sum, one) => sum + one, 0);
        least = Math.min(least, total);
        most = Math.max(most, total);
        if (light.size === 0) hasDark = true;
        for (const frame of light.keys()) seen.add(frame);
      }
      if (hasDark) darkRows += 1;
      const [only] = seen;
      if (!hasDark && seen.size === 1 && only !== undefined) whole.add(only);
    }
    // The first and the last film frames lie partly outside the recording.
    const lastSure = Math.floor((offset + (cameraFrames - 1) / cameraFps) * filmFps) - 2;
    for (let frame = 3; frame <= lastSure; frame += 1) {
      if (!whole.has(frame)) filmFramesWithoutWholeFrame += 1;
    }
  }
  const mean = open * exposure * filmFps;
  return {
    darkRows,
    filmFramesWithoutWholeFrame,
    ripplePercent: ((most - least) / mean) * 100,
  };
}
