import { lightBetween } from '../../core/gate/gate-light.ts';
import { STANDING_FILM_FRAME, type Setting } from './setting.ts';

/** Light that a row has of one film frame; 1 is the light of a mean exposure. */
export interface RowPart {
  readonly filmFrame: number;
  readonly weight: number;
}

/** What each row of a picture is made of, the top row first. A row without light has one part of weight 0. */
export type PicturePlan = readonly (readonly RowPart[])[];

/** Less than this is rounding of the sum. */
const NOTHING = 1e-12;

/** Start of the exposure of a row of a camera frame, s in the time of the light. */
export function rowStartSeconds(
  setting: Setting,
  cameraFrame: number,
  row: number,
  rows: number,
): number {
  const { cameraFps, filmFps, phase, readoutSeconds, isInterlaced } = setting;
  const field = isInterlaced && row % 2 === 1 ? 0.5 / cameraFps : 0;
  return cameraFrame / cameraFps + phase / filmFps + field + (readoutSeconds * (row + 0.5)) / rows;
}

function rowParts(setting: Setting, startSeconds: number): readonly RowPart[] {
  const { light, exposureSeconds, doesFilmStand } = setting;
  const endSeconds = startSeconds + exposureSeconds;
  const mean = exposureSeconds * light.meanLevel;
  if (doesFilmStand) {
    const weight = lightBetween(light, startSeconds, endSeconds) / mean;
    return [{ filmFrame: STANDING_FILM_FRAME, weight }];
  }
  const period = light.periodSeconds;
  const parts: RowPart[] = [];
  const first = Math.floor(startSeconds / period);
  for (let filmFrame = first; filmFrame * period < endSeconds; filmFrame += 1) {
    const from = Math.max(startSeconds, filmFrame * period);
    const to = Math.min(endSeconds, (filmFrame + 1) * period);
    const weight = to > from ? lightBetween(light, from, to) / mean : 0;
    if (weight > NOTHING) parts.push({ filmFrame, weight });
  }
  // A row without light still names the film frame behind the blade: with lowered contrast it shows.
  const behind = Math.floor((startSeconds + exposureSeconds / 2) / period);
  return parts.length > 0 ? parts : [{ filmFrame: behind, weight: 0 }];
}

/**
 * What a camera frame holds, row by row: light of each film frame from the core, over the exposure of
 * that row.
 *
 * @param cameraFrame  counted from 0
 * @param rows         rows of the picture
 */
export function cameraFramePlan(setting: Setting, cameraFrame: number, rows: number): PicturePlan {
  if (setting.readoutSeconds === 0 && !setting.isInterlaced) {
    const all = rowParts(setting, rowStartSeconds(setting, cameraFrame, 0, rows));
    return Array.from({ length: rows }, () => all);
  }
  return Array.from({ length: rows }, (_, row) =>
    rowParts(setting, rowStartSeconds(setting, cameraFrame, row, rows)),
  );
}

/** Every row is one film frame in full light. */
export function filmFramePlan(filmFrame: number, rows: number): PicturePlan {
  const all = [{ filmFrame, weight: 1 }];
  return Array.from({ length: rows }, () => all);
}

/** Two pictures laid over each other, each with its share of the light. */
export function blendedPlan(
  first: PicturePlan,
  second: PicturePlan,
  secondShare: number,
): PicturePlan {
  return first.map((parts, row) => {
    const weights = new Map<number, number>();
    const add = ({ filmFrame, weight }: RowPart, share: number): void => {
      weights.set(filmFrame, (weights.get(filmFrame) ?? 0) + weight * share);
    };
    for (const part of parts) add(part, 1 - secondShare);
    for (const part of second[row] ?? []) add(part, secondShare);
    return [...weights].map(([filmFrame, weight]) => ({ filmFrame, weight }));
  });
}

/** Share of the light of a picture that each film frame gives, most first. */
export function filmFrameShares(plan: PicturePlan): readonly RowPart[] {
  const weights = new Map<number, number>();
  let all = 0;
  for (const parts of plan) {
    for (const { filmFrame, weight } of parts) {
      weights.set(filmFrame, (weights.get(filmFrame) ?? 0) + weight);
      all += weight;
    }
  }
  if (all === 0) return [];
  return [...weights]
    .map(([filmFrame, weight]) => ({ filmFrame, weight: weight / all }))
    .sort((a, b) => b.weight - a.weight);
}
