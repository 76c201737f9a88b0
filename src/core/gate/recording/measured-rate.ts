import { nearestMultiple } from '../beat.ts';
import { filmPhaseAt, filmRateAt } from './film-phase.ts';
import type { MeasuredFilmRate, SpeedPoint } from './gate-reading.ts';
import type { RefinedMotion } from './refine-motion.ts';

/** The clock of a camera may be out by this, share. Common practice, no source. */
const CAMERA_CLOCK_SHARE = 5e-5;

/** Deviations that the stated error spans; the noise of a recording is not pure chance. */
const STATED_DEVIATIONS = 3.2;

/** Spacing of the points of the speed chart, s. */
const CHART_SECONDS = 0.25;

/** Mean film rate over a clip, its honest error, and how the speed moved about it. */
export function measuredFilmRate(
  refined: RefinedMotion,
  durationSeconds: number,
  slackFps = 0,
): MeasuredFilmRate {
  const { phase } = refined.motion;
  const goneBetween = (from: number, to: number): number =>
    filmPhaseAt(phase, to) - filmPhaseAt(phase, from);
  const filmFps = goneBetween(0, durationSeconds) / durationSeconds;
  const errorFps =
    (STATED_DEVIATIONS * refined.gonePhaseDeviation) / durationSeconds +
    CAMERA_CLOCK_SHARE * filmFps +
    slackFps;
  let [slowestFps, fastestFps] = [Infinity, 0];
  for (let start = 0; start + 1 <= durationSeconds + 1e-9; start += CHART_SECONDS) {
    const rate = goneBetween(start, start + 1);
    slowestFps = Math.min(slowestFps, rate);
    fastestFps = Math.max(fastestFps, rate);
  }
  return { filmFps, errorFps, slowestFps, fastestFps };
}

/** Film rate over the clip, for a chart. */
export function speedChart(refined: RefinedMotion, durationSeconds: number): readonly SpeedPoint[] {
  const points = Math.floor(durationSeconds / CHART_SECONDS) + 1;
  return Array.from({ length: points }, (_, index) => {
    const seconds = index * CHART_SECONDS;
    return { seconds, filmFps: filmRateAt(refined.motion.phase, seconds) };
  });
}

/** How many turns the beat of a light with so many flashes a film frame makes over a clip. */
export function beatTurns(
  refined: RefinedMotion,
  flashesPerFrame: number,
  cameraFps: number,
  durationSeconds: number,
): number {
  const { phase } = refined.motion;
  const filmFps = (filmPhaseAt(phase, durationSeconds) - filmPhaseAt(phase, 0)) / durationSeconds;
  const multiple = nearestMultiple(filmFps * flashesPerFrame, cameraFps);
  let [least, most] = [Infinity, -Infinity];
  for (let seconds = 0; seconds <= durationSeconds; seconds += CHART_SECONDS) {
    const turns = flashesPerFrame * filmPhaseAt(phase, seconds) - multiple * cameraFps * seconds;
    least = Math.min(least, turns);
    most = Math.max(most, turns);
  }
  return most - least;
}
