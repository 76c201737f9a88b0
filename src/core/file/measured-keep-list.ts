import { makeGateLight } from '../gate/gate-light.ts';
import { wholeStarts, type StartRange } from '../gate/whole-starts.ts';
import type { BandMotion } from './band-motion.ts';
import type { FilmPosition } from './film-position.ts';
import type { RecordingBench } from './recording-bench.ts';
import { filmStands, shortestStandSeconds } from './film-stands.ts';
import { filmTrack, type FilmTrack, type UntoldStretch } from './film-track.ts';
import type { KeepTie } from './keep-ties.ts';
import { samePictures } from './same-picture.ts';
import type { TieConflict } from './tied-places.ts';

/**
 * What a kept camera frame is worth: `whole` holds one film frame only, beyond doubt; `blended` holds
 * two, beyond doubt; `unsure` lies too near the edge to say; `bridged` lies where the pictures do not
 * tell the film position.
 */
export const KEPT_STATUSES = ['whole', 'unsure', 'blended', 'bridged'] as const;
export type KeptStatus = (typeof KEPT_STATUSES)[number];

/** The camera frame that stands for one film frame. */
export interface KeptFrame {
  /** Film frame; 0 is the first of the recording. */
  readonly filmFrame: number;
  /** Camera frame, counted from 0 in the order of the file. */
  readonly cameraFrame: number;
  /** Its time in the file, s. */
  readonly seconds: number;
  /** How far it lies inside the whole frames of its film frame, film frames; negative outside. */
  readonly margin: number;
  /** How far its position may be from the truth, film frames, one spread. */
  readonly error: number;
  readonly status: KeptStatus;
  /** Whether it hardly differs from the film frame before: the film may have stood or slipped. */
  readonly isSamePicture: boolean;
}

/** Which camera frame stands for each film frame, measured in the recording itself. */
export interface MeasuredKeepList {
  readonly frames: readonly KeptFrame[];
  /** Film frames for which the file has no camera frame, because the camera dropped some. */
  readonly lostFilmFrames: readonly number[];
  readonly stretches: readonly UntoldStretch[];
  readonly conflicts: readonly TieConflict[];
  /** Share of the film frames that are surely whole, 0 to 1. */
  readonly wholeShare: number;
  /** Film frames that could be compared with the one before for film that stands. */
  readonly comparedFrames: number;
  /** Shortest stand that would be told, s; undefined where exposure or camera rate let none be told. */
  readonly shortestStandSeconds: number | undefined;
  /** Stretches at least so long in which nothing changes: the film may have stood. */
  readonly stands: readonly { readonly fromSeconds: number; readonly toSeconds: number }[];
}

/** A margin counts beyond so many spreads of the position. */
const SURE_SPREADS = 3;

/** How far a start lies inside the nearest range of whole starts; negative outside all. */
function marginOf(ranges: readonly StartRange[], centre: number, start: number): number {
  if (ranges.length === 0) return -Math.abs(start - centre) - 1e-3;
  return Math.max(
    ...ranges.map(({ fromSeconds, toSeconds }) => Math.min(start - fromSeconds, toSeconds - start)),
  );
}

function statusOf(margin: number, error: number, isBridged: boolean): KeptStatus {
  if (isBridged) return 'bridged';
  if (margin > SURE_SPREADS * error) return 'whole';
  return margin < -SURE_SPREADS * error ? 'blended' : 'unsure';
}

/** The best of the camera frames whose middle lies in a film frame. */
interface Choice {
  readonly slot: number;
  readonly margin: number;
}

function choices(
  track: FilmTrack,
  hasFrame: (slot: number) => boolean,
  ranges: readonly StartRange[],
  middle: number,
): Map<number, Choice> {
  const best = new Map<number, Choice>();
  for (const [index, position] of track.positions.entries()) {
    const slot = track.firstSlot + index;
    if (!hasFrame(slot)) continue;
    const filmFrame = Math.floor(position + middle);
    const margin = marginOf(ranges, 0.5 - middle, position - filmFrame);
    const before = best.get(filmFrame);
    if (before === undefined || margin > before.margin) best.set(filmFrame, { slot, margin });
  }
  return best;
}

/**
 * The keep list of a recording from its measured film position.
 *
 * Model: among the camera frames whose middle of exposure and readout falls into a film frame, the one
 * farthest inside the starts at which a camera frame is whole ({@link wholeStarts}); without dark rows
 * that is the one nearest to the middle of the film frame. The list runs from the first film frame
 * whose middle the recording holds to the last.
 *
 * @param position  measured film position
 * @param motion    what was kept of the pictures
 * @param bench     projector and camera
 * @param ties      film frames counted by hand; film frame 0 is the first of the list
 * @returns the list
 * @source arithmetic
 */
export function measuredKeepList(
  position: FilmPosition,
  motion: BandMotion,
  bench: RecordingBench,
  ties: readonly KeepTie[] = [],
): MeasuredKeepList {
  const exposure = bench.exposureSeconds * position.filmFps;
  const readout = position.readoutSeconds * position.filmFps;
  const middle = (exposure + readout) / 2;
  const track = filmTrack(position, middle, ties);
  const ranges = wholeStarts(makeGateLight(1, bench.shutter), exposure, readout);
  const frameOfSlot = new Int32Array(position.slots.slots).fill(-1);
  for (const [frame, slot] of position.slots.slotOfFrame.entries()) frameOfSlot[slot] = frame;
  const best = choices(track, (slot) => (frameOfSlot[slot] ?? -1) >= 0, ranges, middle);

  const lostFilmFrames: number[] = [];
  const kept: (Omit<KeptFrame, 'isSamePicture'> & { readonly slot: number })[] = [];
  // Adding 0 turns a negative zero into a plain one.
  const first = Math.ceil((track.positions[0] ?? 0) + middle - 0.5 - 1e-9) + 0;
  const last = Math.floor((track.positions.at(-1) ?? 0) + middle - 0.5 + 1e-9);
  for (let filmFrame = first; filmFrame <= last; filmFrame += 1) {
    const choice = best.get(filmFrame);
    if (choice === undefined) {
      lostFilmFrames.push(filmFrame);
      continue;
    }
    const { slot, margin } = choice;
    const at = slot - track.firstSlot;
    const cameraFrame = frameOfSlot[slot] ?? 0;
    const error = track.errors[at] ?? 0;
    const status = statusOf(margin, error, track.isBridged[at] === 1);
    const seconds = motion.frameSeconds[cameraFrame] ?? 0;
    kept.push({ filmFrame, cameraFrame, seconds, margin, error, status, slot });
  }
  const stands = filmStands(position, bench);
  const { same, compared } = samePictures(motion, position, track, kept, bench);
  const frames = kept.map(({ slot, ...frame }, index) => ({
    ...frame,
    isSamePicture:
      same[index] === 1 ||
      // The first of a stand is the picture that comes again.
      stands.some(
        ({ fromSlot, toSlot }) => (kept[index - 1]?.slot ?? -1) >= fromSlot && slot <= toSlot,
      ),
  }));
  const whole = frames.filter(({ status }) => status === 'whole').length;
  return {
    frames,
    lostFilmFrames,
    stretches: track.stretches,
    conflicts: track.conflicts,
    wholeShare: frames.length === 0 ? 0 : whole / frames.length,
    comparedFrames: compared,
    shortestStandSeconds: shortestStandSeconds(position, bench),
    stands: stands.map(({ fromSlot, toSlot }) => ({
      fromSeconds: position.slots.firstSeconds + fromSlot / position.slots.cameraFps,
      toSeconds: position.slots.firstSeconds + toSlot / position.slots.cameraFps,
    })),
  };
}
