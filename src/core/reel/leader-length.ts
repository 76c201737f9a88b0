import { requireInterval } from '../../quantity/errors.ts';

/** Turns that hold the end of the film on the take-up before the motor starts. */
const TURNS_ON_HUB = 3;

/** What a head leader must be long enough for. */
export interface LeaderNeeds {
  readonly pathMillimetres: number;
  readonly hubDiameterMillimetres: number;
  readonly filmFps: number;
  readonly stepMillimetres: number;
  readonly runUpSeconds: number;
  readonly markSeconds: number;
}

/** A head leader in its parts, mm. */
export interface LeaderParts {
  readonly pathMillimetres: number;
  readonly turnsMillimetres: number;
  readonly runUpMillimetres: number;
  readonly marksMillimetres: number;
  readonly totalMillimetres: number;
}

/**
 * Length of a head leader so that no picture is touched in threading and none passes before the machine
 * runs steadily.
 *
 * Model: path + 3 turns on the hub (3πD) + (run-up + test pieces) × film rate × frame step. Exact for the
 * numbers given.
 *
 * @param needs  path through the machine, mm, 0–10000; hub, mm, > 0; film rate, frames/s, > 0; frame
 *   step, mm, > 0; run-up and test pieces, s, 0–600
 * @returns parts and sum, mm
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function leaderParts(needs: LeaderNeeds): LeaderParts {
  const { pathMillimetres } = needs;
  requireInterval('pathMillimetres', pathMillimetres, { minimum: 0, maximum: 1e4, unit: 'mm' });
  requireInterval('hubDiameterMillimetres', needs.hubDiameterMillimetres, {
    above: 0,
    maximum: 1000,
    unit: 'mm',
  });
  requireInterval('filmFps', needs.filmFps, { above: 0, maximum: 240 });
  requireInterval('stepMillimetres', needs.stepMillimetres, { above: 0, maximum: 100, unit: 'mm' });
  const seconds = { minimum: 0, maximum: 600, unit: 's' };
  requireInterval('runUpSeconds', needs.runUpSeconds, seconds);
  requireInterval('markSeconds', needs.markSeconds, seconds);
  const speed = needs.filmFps * needs.stepMillimetres;
  const turnsMillimetres = TURNS_ON_HUB * Math.PI * needs.hubDiameterMillimetres;
  const runUpMillimetres = needs.runUpSeconds * speed;
  const marksMillimetres = needs.markSeconds * speed;
  return {
    pathMillimetres,
    turnsMillimetres,
    runUpMillimetres,
    marksMillimetres,
    totalMillimetres: pathMillimetres + turnsMillimetres + runUpMillimetres + marksMillimetres,
  };
}
