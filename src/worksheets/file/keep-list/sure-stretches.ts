import type { KeepTrust } from '../../../core/file/keep-drift.ts';
import type { KeepReel } from '../../../core/file/keep-ties.ts';

/** Film frames in a row that the table of the list tells together. */
export interface SureStretch {
  readonly firstFilmFrame: number;
  readonly filmFrames: number;
  readonly sureFilmFrames: number;
  readonly hasTie: boolean;
}

/** Runs that are sure around a tie, and what lies between them taken together. */
export function sureStretches(reel: KeepReel, trust: KeepTrust): readonly SureStretch[] {
  const stretches: SureStretch[] = [];
  const ties = reel.ties.map(({ filmFrame }) => filmFrame);
  let tie = 0;
  for (const { firstFilmFrame, filmFrames, isSure } of trust.runs) {
    const end = firstFilmFrame + filmFrames;
    let hasTie = false;
    while ((ties[tie] ?? Infinity) < end) {
      hasTie = isSure;
      tie += 1;
    }
    const sureFilmFrames = isSure ? filmFrames : 0;
    const before = stretches.at(-1);
    if (hasTie || before === undefined || before.hasTie) {
      stretches.push({ firstFilmFrame, filmFrames, sureFilmFrames, hasTie });
    } else {
      stretches[stretches.length - 1] = {
        ...before,
        filmFrames: before.filmFrames + filmFrames,
        sureFilmFrames: before.sureFilmFrames + sureFilmFrames,
      };
    }
  }
  return stretches;
}

/** Film frames on either side of a tie that are sure without a gap; the least over all ties. */
export function sureAroundTies(reel: KeepReel, stretches: readonly SureStretch[]): number {
  const runs = stretches.filter(({ hasTie }) => hasTie);
  const around = reel.ties.flatMap(({ filmFrame }): readonly number[] => {
    const run = runs.find(
      ({ firstFilmFrame, filmFrames }) =>
        filmFrame >= firstFilmFrame && filmFrame < firstFilmFrame + filmFrames,
    );
    if (run === undefined) return [0];
    // Nothing lies before the first film frame and after the last.
    return [
      ...(filmFrame === 0 ? [] : [filmFrame - run.firstFilmFrame]),
      ...(filmFrame === reel.filmFrames - 1
        ? []
        : [run.firstFilmFrame + run.filmFrames - 1 - filmFrame]),
    ];
  });
  return around.length === 0 ? 0 : Math.min(...around);
}
