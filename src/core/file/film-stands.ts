import { longestDarkFraction } from '../gate/shutter.ts';
import { LAGS } from './band-motion.ts';
import type { FilmPosition } from './film-position.ts';
import type { RecordingBench } from './recording-bench.ts';

/** A stretch in which the picture does not change at all, not even its grain. */
export interface FilmStand {
  readonly fromSlot: number;
  readonly toSlot: number;
}

/** A stand is looked for from this length on, s; a claw that misses once or twice is shorter. */
const SHORTEST_SECONDS = 0.5;
/** Change below this means none, nats a camera frame. */
const MOST_CHANGE = 6;
/** And with an exposure hardly longer than the dark of a blade, for then few rows tell of a change. */
const MOST_CHANGE_IF_SHORT = 4;
/** Film that runs on either side changes by so much more; where it does not, little change is usual there. */
const LEAST_CONTRAST = 3;
/**
 * Flicker and a coder's leavings show as change now and then while film stands: a stand goes on through
 * camera frames that change by less than this share of what running film beside it does.
 */
const LITTLE_SHARE = 0.25;
/** As long as so many of its camera frames hardly change at all. */
const LEAST_QUIET_SHARE = 2 / 3;
const BESIDE_SECONDS = 1;
/** Windows that reach out of a stand see the film move. */
const WINDOW = LAGS + 1;
/** With hardly more camera frames than film frames every camera frame shows another picture. */
const MOST_PACE = 0.85;
/** Exposures in dark times of the widest blade: short from the first on, too short below the second. */
const SHORT_EXPOSURE = 1.05;
const LEAST_EXPOSURE = 0.6;

/**
 * With such an exposure some rates of film and camera show hardly any change for a second, again and
 * again, while the film runs: only a longer stand is told, s.
 */
const SHORTEST_IF_SHORT_SECONDS = 2;

/** Exposure in dark times of the widest blade. */
function darkTimes({ filmFps }: FilmPosition, bench: RecordingBench): number {
  return (bench.exposureSeconds * filmFps) / longestDarkFraction(bench.shutter);
}

/**
 * Shortest stand that the pictures tell with this projector and camera, s.
 *
 * @param position  measured film position
 * @param bench     projector and camera
 * @returns half a second; two where the exposure is hardly longer than the dark of the widest blade;
 * undefined where no stand is told, because the exposure is shorter still, or because there are hardly
 * more camera frames than film frames
 */
export function shortestStandSeconds(
  position: FilmPosition,
  bench: RecordingBench,
): number | undefined {
  const exposure = darkTimes(position, bench);
  if (position.filmFps > MOST_PACE * position.slots.cameraFps || exposure < LEAST_EXPOSURE)
    return undefined;
  return exposure < SHORT_EXPOSURE ? SHORTEST_IF_SHORT_SECONDS : SHORTEST_SECONDS;
}

/** Middle of the values that are known; undefined where there are none. */
function middleOf(values: readonly (number | undefined)[]): number | undefined {
  const known = values.filter((value) => value !== undefined).sort((a, b) => a - b);
  return known[Math.floor(known.length / 2)];
}

/** Camera frames in a row that hardly change, and those between them that change a little. */
interface QuietRow {
  readonly from: number;
  readonly to: number;
  /** How many of them hardly change. */
  readonly quiet: number;
}

/** Change of each slot, nats; undefined where too little of the picture is heard. */
type Changes = readonly (number | undefined)[];

/** Camera frames in a row that all change by less than so much. */
function quietRows(changes: Changes, most: number): readonly QuietRow[] {
  const rows: QuietRow[] = [];
  let from: number | undefined;
  for (let slot = 0; slot <= changes.length; slot += 1) {
    const isQuiet = (changes[slot] ?? Infinity) < most;
    if (isQuiet) from ??= slot;
    else if (from !== undefined) {
      rows.push({ from, to: slot, quiet: slot - from });
      from = undefined;
    }
  }
  return rows;
}

/** Rows joined where the camera frames between them change by less than running film would. */
function joinedRows(
  rows: readonly QuietRow[],
  changes: Changes,
  littleOf: (from: number, to: number) => number,
): readonly QuietRow[] {
  const joined: QuietRow[] = [];
  for (const row of rows) {
    const before = joined.at(-1);
    const isOne =
      before !== undefined &&
      changes
        .slice(before.to, row.from)
        .every((change) => (change ?? Infinity) < littleOf(before.from, row.to));
    if (!isOne) joined.push(row);
    else joined[joined.length - 1] = { ...row, from: before.from, quiet: before.quiet + row.quiet };
  }
  return joined;
}

/**
 * Stretches of half a second or more (two seconds where the exposure is hardly longer than the dark of a
 * blade) in which nothing changes: film that stands in the gate (a lost loop, a torn hole, a stopped gate),
 * and film without any picture. A still on the film is no such stretch, its grain changes.
 *
 * Model: film that goes on must explain the pictures better than one that never changes, by 6 nats a
 * camera frame, 4 where the exposure is short. A stand is a row of camera frames of which two in three stay
 * below and the others below a quarter of what running film beside them does, as long as half a second
 * (two) less the window of seven frames in which they are seen, beside film that changes three times as
 * much.
 *
 * @param position  measured film position
 * @param bench     projector and camera
 * @returns the stretches; none where the bench does not let them be told
 */
export function filmStands(position: FilmPosition, bench: RecordingBench): readonly FilmStand[] {
  const seconds = shortestStandSeconds(position, bench);
  if (seconds === undefined) return [];
  const { slotChangeNats, slots } = position;
  const most = seconds === SHORTEST_SECONDS ? MOST_CHANGE : MOST_CHANGE_IF_SHORT;
  const shortest = Math.max(4, Math.round(seconds * slots.cameraFps) - WINDOW);
  const reach = Math.floor(WINDOW / 2);
  const far = reach + Math.round(BESIDE_SECONDS * slots.cameraFps);
  /** Change of the film on either side of a row; undefined at the ends of the recording. */
  const beside = (from: number, to: number): readonly number[] =>
    [
      middleOf(slotChangeNats.slice(Math.max(0, from - far), Math.max(0, from - reach))),
      middleOf(slotChangeNats.slice(to + reach, to + far)),
    ].filter((change) => change !== undefined);
  // One side may lie in the same stand, as long as it is not yet joined to its end.
  const littleOf = (from: number, to: number): number =>
    LITTLE_SHARE * Math.max(0, ...beside(from, to));
  return joinedRows(quietRows(slotChangeNats, most), slotChangeNats, littleOf)
    .filter(
      ({ from, to, quiet }) =>
        to - from >= shortest &&
        quiet >= LEAST_QUIET_SHARE * (to - from) &&
        Math.min(...beside(from, to)) > LEAST_CONTRAST * most,
    )
    .map(({ from, to }) => ({ fromSlot: Math.max(0, from - reach), toSlot: to - 1 + reach }));
}
