import { OutOfRangeError } from '../../quantity/errors.ts';
import { frameStepMillimetres, GAUGES } from './gauges.ts';
import type { FilmSound, Gauge, GaugeId, PerforationPosition, SoundTrack } from './gauges/gauge.ts';

/** A band along the film, mm from the left edge (the perforated one). */
export interface Band {
  readonly leftMillimetres: number;
  readonly widthMillimetres: number;
}

/** A rectangle in one frame cell; its centre is counted from the top of the cell. */
export interface Patch extends Band {
  readonly heightMillimetres: number;
  readonly centreMillimetres: number;
}

/** A sound record along the film. */
export interface SoundBand extends Band {
  readonly system: SoundTrack['system'];
}

/** One frame of film laid flat, perforated edge left, in mm. */
export interface FilmStrip {
  readonly widthMillimetres: number;
  /** Frame step. */
  readonly pitchMillimetres: number;
  readonly perforations: readonly Patch[];
  readonly picture: Patch;
  readonly stripes: readonly SoundBand[];
}

/** Which sound record, if any, the strip carries. */
export type StripSound = FilmSound;

const BOTH_EDGES: readonly PerforationPosition[] = [
  'both-edges-at-frame-line',
  'both-edges-four-per-frame',
];

function holeCentres(position: PerforationPosition, step: number): readonly number[] {
  if (position === 'one-edge-beside-picture') return [step / 2];
  if (position === 'both-edges-four-per-frame') {
    return [1, 3, 5, 7].map((eighths) => (eighths * step) / 8);
  }
  return [0];
}

function holes(gauge: Gauge, position: PerforationPosition, step: number): readonly Patch[] {
  const { width, height, edgeDistance } = gauge.perforation;
  const filmWidth = gauge.filmWidth.millimetres;
  const near = edgeDistance?.millimetres ?? (filmWidth - width.millimetres) / 2;
  const lefts = BOTH_EDGES.includes(position)
    ? [near, filmWidth - near - width.millimetres]
    : [near];
  return lefts.flatMap((leftMillimetres) =>
    holeCentres(position, step).map((centreMillimetres) => ({
      leftMillimetres,
      widthMillimetres: width.millimetres,
      heightMillimetres: height.millimetres,
      centreMillimetres,
    })),
  );
}

function stripe(gauge: Gauge, track: SoundTrack): SoundBand | undefined {
  if (track.width === undefined || track.place === undefined) return undefined;
  const { edge, edgeDistanceMillimetres } = track.place;
  const widthMillimetres = track.width.millimetres;
  return {
    system: track.system,
    widthMillimetres,
    leftMillimetres:
      edge === 'perforated'
        ? edgeDistanceMillimetres
        : gauge.filmWidth.millimetres - edgeDistanceMillimetres - widthMillimetres,
  };
}

/**
 * Left edge of the picture. No published lateral position was read, so the picture is laid midway in
 * the clear width: between hole and far edge, or between hole and the stripe that the standard keeps
 * free for sound (Super 8). The wide picture of Super 16 starts where that of 16 mm does.
 */
function pictureLeft(gauge: Gauge, width: number): number {
  const filmWidth = gauge.filmWidth.millimetres;
  const { edgeDistance, width: holeWidth, positions } = gauge.perforation;
  const [position] = positions;
  if (edgeDistance === undefined || (position !== undefined && BOTH_EDGES.includes(position))) {
    return (filmWidth - width) / 2;
  }
  if (gauge.id === 'super-16')
    return (filmWidth - GAUGES['16mm'].cameraPicture[0].widthMillimetres) / 2;
  const clearLeft = edgeDistance.millimetres + holeWidth.millimetres;
  const reserved = gauge.id === 'super-8' ? (gauge.soundTracks[0]?.width?.millimetres ?? 0) : 0;
  return clearLeft + (filmWidth - reserved - clearLeft - width) / 2;
}

/**
 * One frame of a gauge laid flat, in mm, ready to be drawn to scale: holes, camera picture and the
 * sound stripe if there is one.
 *
 * Model: dimensions of the gauge table. The sideways place of the picture is drawn midway in the
 * clear width, because no published value was read; everything else has its own source. Where the
 * place of the holes is not given, 16 mm is drawn with one row of holes when it has sound, so that the
 * track lies on the side opposite the holes, and with two when it is silent.
 *
 * @param gauge     id of a gauge
 * @param sound     sound record to draw
 * @param position  place of the holes, where the gauge comes with more than one
 * @returns the strip, mm
 * @throws {OutOfRangeError} when the gauge has no such sound record or holes, or its place is not known
 * @source smpte-149-2004, asa-z22-5-1947, wheeler-1953
 */
export function filmStrip(
  gauge: GaugeId,
  sound: StripSound,
  position?: PerforationPosition,
): FilmStrip {
  const entry = GAUGES[gauge];
  const step = frameStepMillimetres(gauge, 'long');
  const track = entry.soundTracks.find(({ system }) => system === sound);
  const band = track === undefined ? undefined : stripe(entry, track);
  if (sound !== 'none' && band === undefined) {
    throw new OutOfRangeError(
      'sound',
      sound,
      `another choice: no ${sound} track of ${entry.name} is known well enough to draw`,
    );
  }
  const [first, second] = entry.perforation.positions;
  const drawn = position ?? (sound !== 'none' && second !== undefined ? second : first);
  if (drawn !== undefined && !entry.perforation.positions.includes(drawn)) {
    throw new OutOfRangeError('position', drawn, `holes where ${entry.name} has them`);
  }
  const [picture] = entry.cameraPicture;
  return {
    widthMillimetres: entry.filmWidth.millimetres,
    pitchMillimetres: step,
    perforations: drawn === undefined ? [] : holes(entry, drawn, step),
    picture: {
      leftMillimetres: pictureLeft(entry, picture.widthMillimetres),
      widthMillimetres: picture.widthMillimetres,
      heightMillimetres: picture.heightMillimetres,
      centreMillimetres: step / 2,
    },
    stripes: band === undefined ? [] : [band],
  };
}
