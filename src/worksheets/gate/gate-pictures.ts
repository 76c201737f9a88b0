import { lightBetween, type GateLight } from '../../core/gate/gate-light.ts';
import { formatExposure, formatNumber } from '../../quantity/format.ts';
import type { BandsData, GateLightData } from '../machine/picture-data.ts';

/** Corners drawn at most; beyond this a drawing is a grey block. */
const MOST_FILM_FRAMES = 6;
const CAMERA_FRAMES = 4;

/**
 * Gate light over a few camera frames, with the exposure windows of the first row.
 *
 * @param cameraFrames  camera frames drawn, as long as they fit into a few film frames
 */
export function gateLightPicture(
  light: GateLight,
  cameraFps: number,
  exposureSeconds: number,
  cameraFrames = CAMERA_FRAMES,
): GateLightData {
  const period = light.periodSeconds;
  const spanSeconds = Math.min(cameraFrames / cameraFps, MOST_FILM_FRAMES * period);
  const corners: { readonly seconds: number; readonly level: number }[] = [];
  const filmFrameStarts: number[] = [];
  for (let cycle = 0; cycle * period < spanSeconds; cycle += 1) {
    filmFrameStarts.push(cycle * period);
    for (const { seconds, level } of light.points) {
      corners.push({ seconds: cycle * period + seconds, level });
    }
  }
  const inside = corners.filter(({ seconds }) => seconds <= spanSeconds);
  const last = inside.at(-1);
  const next = corners[inside.length];
  if (last !== undefined && next !== undefined && last.seconds < spanSeconds) {
    const share = (spanSeconds - last.seconds) / (next.seconds - last.seconds);
    inside.push({ seconds: spanSeconds, level: last.level + share * (next.level - last.level) });
  }
  const mean = light.meanLevel * exposureSeconds;
  const exposures: GateLightData['exposures'] = Array.from(
    { length: Math.max(1, Math.ceil(spanSeconds * cameraFps - 1e-9)) },
    (_, index) => {
      const startSeconds = index / cameraFps;
      const endSeconds = startSeconds + exposureSeconds;
      return {
        startSeconds,
        endSeconds: Math.min(endSeconds, spanSeconds),
        share: lightBetween(light, startSeconds, endSeconds) / mean,
      };
    },
  );
  const shares = exposures.map(({ share }) => `${formatNumber(share * 100, 3)} %`).join(', ');
  return {
    name: 'gate-light',
    alternative: `Light in the gate over ${formatNumber(spanSeconds * 1000, 3)} ms and camera exposures of ${formatExposure(exposureSeconds)}, which collect ${shares} of the mean light.`,
    spanSeconds,
    light: inside,
    filmFrameStarts,
    exposures,
  };
}

/** Steps of the exposure over one period of the light pattern. */
const PHASES = 72;

/** Bands of a rolling picture (none for a global shutter) from the exact exposure at every phase. */
export function bandsPicture(
  light: GateLight,
  patternHz: number,
  cameraFps: number,
  exposureSeconds: number,
  readoutSeconds: number,
): BandsData {
  const mean = light.meanLevel * exposureSeconds;
  const exposureByPhase = Array.from({ length: PHASES }, (_, index) => {
    const start = index / PHASES / patternHz;
    return lightBetween(light, start, start + exposureSeconds) / mean;
  });
  const turns = patternHz / cameraFps;
  const periodsDownPicture = patternHz * readoutSeconds;
  const least = Math.min(...exposureByPhase) * 100;
  const most = Math.max(...exposureByPhase) * 100;
  const range = `between ${formatNumber(least, 3)} % and ${formatNumber(most, 3)} % of the mean light`;
  return {
    name: 'bands',
    alternative:
      readoutSeconds === 0
        ? `The whole picture changes ${range}; a global shutter shows no bands.`
        : `${formatNumber(periodsDownPicture, 3)} bands down the picture, ${range}.`,
    exposureByPhase,
    periodsDownPicture,
    phaseStepPerFrame: turns - Math.round(turns),
    cameraFps,
  };
}
