import { requireInterval } from '../../quantity/errors.ts';
import { frameStepMillimetres } from '../reel/gauges.ts';
import type { GaugeId } from '../reel/gauges/gauge.ts';

/** A sound track as a head or a slit scans it. */
export interface ScannedTrack {
  readonly name: string;
  readonly gauge: GaugeId;
  readonly widthMillimetres: number;
  readonly isMagnetic: boolean;
  readonly source: string;
}

/** Tracks of the small gauges. */
export const SCANNED_TRACKS = {
  'super-8-stripe': {
    name: 'Super 8, stripe',
    gauge: 'super-8',
    widthMillimetres: 0.69,
    isMagnetic: true,
    source: 'smpte-164-2002',
  },
  '8mm-stripe': {
    name: 'Standard 8, stripe',
    gauge: '8mm-type-r',
    widthMillimetres: 0.76,
    isMagnetic: true,
    source: 'from-memory',
  },
  '16mm-stripe': {
    name: '16 mm, full stripe',
    gauge: '16mm',
    widthMillimetres: 2.54,
    isMagnetic: true,
    source: 'from-memory',
  },
  '16mm-edge-stripe': {
    name: '16 mm, edge stripe',
    gauge: '16mm',
    widthMillimetres: 0.8,
    isMagnetic: true,
    source: 'smpte-101-2003',
  },
  '16mm-optical': {
    name: '16 mm, optical track',
    gauge: '16mm',
    widthMillimetres: 1.8,
    isMagnetic: false,
    source: 'smpte-41',
  },
} as const satisfies Record<string, ScannedTrack>;

/** Id of a track. */
export type ScannedTrackId = keyof typeof SCANNED_TRACKS;

/** Deepest loss that is printed: below it there is only noise. */
const DEEPEST_DECIBELS = -60;

/**
 * Length of one wave of a tone on the film.
 *
 * Model: film rate × frame step ÷ frequency, exact.
 *
 * @param gauge        id of a gauge
 * @param filmFps      film rate, frames/s; > 0, at most 240
 * @param frequencyHz  tone, Hz; > 0, at most 100000
 * @returns wavelength, mm
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic, jsmpe-1933
 * @example wavelengthMillimetres('super-8', 18, 5000) // ≈ 0.0152424
 */
export function wavelengthMillimetres(
  gauge: GaugeId,
  filmFps: number,
  frequencyHz: number,
): number {
  requireInterval('filmFps', filmFps, { above: 0, maximum: 240 });
  requireInterval('frequencyHz', frequencyHz, { above: 0, maximum: 1e5, unit: 'Hz' });
  return (filmFps * frameStepMillimetres(gauge, 'long')) / frequencyHz;
}

/**
 * Level that a head loses whose slit does not stand square to the track.
 *
 * Model: 20 log10(sin x ÷ x), x = π w tan θ ÷ λ. Exact for a track scanned evenly over its width; not
 * deeper than −60 dB.
 *
 * @param widthMillimetres       width of the track, mm; > 0, at most 50
 * @param wavelengthMillimetres  wavelength on the film, mm; > 0
 * @param angleArcminutes        out of square, minutes of arc; 0–600
 * @returns level, dB; ≤ 0
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source mcknight-azimuth
 * @example azimuthDecibels(1, 0.1, 0) // 0
 */
export function azimuthDecibels(
  widthMillimetres: number,
  wavelengthMillimetres: number,
  angleArcminutes: number,
): number {
  requireInterval('widthMillimetres', widthMillimetres, { above: 0, maximum: 50, unit: 'mm' });
  requireInterval('wavelengthMillimetres', wavelengthMillimetres, { above: 0, maximum: 1e5 });
  const tangent = Math.tan(
    (requireInterval('angleArcminutes', angleArcminutes, { minimum: 0, maximum: 600 }) * Math.PI) /
      10_800,
  );
  const x = (Math.PI * widthMillimetres * tangent) / wavelengthMillimetres;
  const share = x < 1e-6 ? 1 : Math.abs(Math.sin(x) / x);
  return Math.max(DEEPEST_DECIBELS, 20 * Math.log10(Math.max(share, 1e-9))) + 0;
}

/**
 * First tone that a slanted head does not hear at all.
 *
 * Model: v ÷ (w tan θ), exact.
 *
 * @param widthMillimetres         width of the track, mm; > 0, at most 50
 * @param speedMillimetresPerSecond  speed of the film, mm/s; > 0
 * @param angleArcminutes          out of square, minutes of arc; > 0, at most 600
 * @returns frequency, Hz
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example firstNullHz(1, 100, 600) // ≈ 567.128
 */
export function firstNullHz(
  widthMillimetres: number,
  speedMillimetresPerSecond: number,
  angleArcminutes: number,
): number {
  requireInterval('widthMillimetres', widthMillimetres, { above: 0, maximum: 50, unit: 'mm' });
  requireInterval('speedMillimetresPerSecond', speedMillimetresPerSecond, { above: 0 });
  requireInterval('angleArcminutes', angleArcminutes, { above: 0, maximum: 600 });
  return (
    speedMillimetresPerSecond / (widthMillimetres * Math.tan((angleArcminutes * Math.PI) / 10_800))
  );
}

/**
 * Level that dirt between a magnetic stripe and the head costs.
 *
 * Model: −54.6 × distance ÷ wavelength, from memory; not deeper than −60 dB.
 *
 * @param distanceMillimetres    gap between stripe and head, mm; 0–1
 * @param wavelengthMillimetres  wavelength on the film, mm; > 0
 * @returns level, dB; ≤ 0
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source from-memory
 * @example spacingDecibels(0.01, 0.1) // ≈ -5.46
 */
export function spacingDecibels(
  distanceMillimetres: number,
  wavelengthMillimetres: number,
): number {
  requireInterval('spacingMillimetres', distanceMillimetres, { minimum: 0, maximum: 1 });
  requireInterval('wavelengthMillimetres', wavelengthMillimetres, { above: 0, maximum: 1e5 });
  return Math.max(DEEPEST_DECIBELS, (-54.6 * distanceMillimetres) / wavelengthMillimetres) + 0;
}
