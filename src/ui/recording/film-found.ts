import type { BandMotion } from '../../core/file/band-motion.ts';
import type { FilmPosition } from '../../core/file/film-position.ts';
import type { RecordingBench } from '../../core/file/recording-bench.ts';
import type { CodeRange } from '../../core/file/recorded-picture.ts';
import type { KeepTie } from '../../core/file/keep-ties.ts';
import { measuredKeepList, type MeasuredKeepList } from '../../core/file/measured-keep-list.ts';

/** Film rate over a part of a recording. */
export interface RatePoint {
  /** Middle of the part, s from the first frame. */
  readonly seconds: number;
  readonly filmFps: number;
}

/** What a recording of film was found to hold. */
export interface FilmFound {
  readonly kind: 'film';
  readonly filmFps: number;
  readonly cameraFps: number;
  readonly cameraFrames: number;
  /** Frames that the camera left out. */
  readonly missingFrames: number;
  /** Time of the first frame as the file counts, s. */
  readonly firstSeconds: number;
  readonly rates: readonly RatePoint[];
  readonly list: MeasuredKeepList;
}

/** As many points as a chart can show. */
const MOST_POINTS = 240;
/** Shortest part for one point, s: over less, the measure wavers more than a motor. */
const SHORTEST_PART_SECONDS = 1;

/** Film rate over the told parts, evenly thinned out for a chart. */
function ratesOf(position: FilmPosition): readonly RatePoint[] {
  const { knotSlots, knotPositions, pieceReasons, slots } = position;
  const wholeSeconds = slots.slots / slots.cameraFps;
  const partSeconds = Math.max(SHORTEST_PART_SECONDS, wholeSeconds / MOST_POINTS);
  const points: RatePoint[] = [];
  let from = 0;
  for (let knot = 1; knot < knotSlots.length; knot += 1) {
    const isTold = pieceReasons[knot - 1] === undefined;
    if (!isTold) {
      from = knot;
      continue;
    }
    const early = knotSlots[from] ?? 0;
    const late = knotSlots[knot] ?? 0;
    if ((late - early) / slots.cameraFps < partSeconds * 0.99) continue;
    const filmFrames = (knotPositions[knot] ?? 0) - (knotPositions[from] ?? 0);
    points.push({
      seconds: (early + late) / 2 / slots.cameraFps,
      filmFps: (filmFrames / (late - early)) * slots.cameraFps,
    });
    from = knot;
  }
  return points;
}

/** A film position with what it was found from. */
export interface FollowedFilm {
  readonly position: FilmPosition;
  readonly motion: BandMotion;
  readonly bench: RecordingBench;
  readonly isReadoutMeasured: boolean;
}

/** The list of a camera whose readout time is not known: any frame may hold rows of a second film frame. */
function withoutSureFrames(list: MeasuredKeepList): MeasuredKeepList {
  const frames = list.frames.map((frame) =>
    frame.status === 'whole' ? { ...frame, status: 'unsure' as const } : frame,
  );
  return { ...list, frames, wholeShare: 0 };
}

/** What the page shows of a film position, with the keep list for these ties. */
export function filmFound(
  { position, motion, bench, isReadoutMeasured }: FollowedFilm,
  ties: readonly KeepTie[],
): FilmFound {
  const { slots } = position;
  const list = measuredKeepList(position, motion, bench, ties);
  return {
    kind: 'film',
    filmFps: position.filmFps,
    cameraFps: slots.cameraFps,
    cameraFrames: slots.slotOfFrame.length,
    missingFrames: slots.slots - slots.slotOfFrame.length,
    firstSeconds: slots.firstSeconds,
    rates: ratesOf(position),
    list: isReadoutMeasured ? list : withoutSureFrames(list),
  };
}

/** The same with what the file says of its pictures. */
export interface FilmReading extends FilmFound {
  readonly codeRange: CodeRange;
  readonly codedWidth: number;
  readonly codedHeight: number;
}
