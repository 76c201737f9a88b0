import { contentOf } from '../scene/camera/caption.ts';
import { filmFrameShares, type PicturePlan } from '../scene/camera/row-plan.ts';
import { STRIPS } from '../scene/camera/strips.ts';
import { picturePlan } from '../scene/camera/views.ts';
import type { Look } from '../scene/looks/look.ts';
import { sideOf, soundBeside } from '../scene/looks/looks.ts';
import { sideData, type SceneData } from '../scene/scene-data.ts';
import { shownOf, type Side } from '../scene/side.ts';
import { lightWords, lookOf, stillName } from './scene-of.ts';

/** A picture of the dictionary of faults. */
export interface FaultPicture {
  readonly data: SceneData;
  /** Name of its still. */
  readonly still: string;
  readonly alternative: string;
  /** What it holds, in numbers from the core, where the eye does not tell. */
  readonly numbers: string | undefined;
}

/** Rows that a picture is looked at for what it holds. */
const ROWS = 48;

const planOf = (side: Side, picture: number): PicturePlan =>
  picturePlan(shownOf(side), side.view, picture, ROWS);

const mainFilmFrame = (plan: PicturePlan): number => filmFrameShares(plan)[0]?.filmFrame ?? 0;

const sentence = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;

/** What a side holds, in the numbers that tell the fault of the look. */
function numbersOf(side: Side, look: Look): string | undefined {
  const plan = planOf(side, side.picture);
  if (look.afterSeconds !== undefined) {
    return `After ${look.afterSeconds} s of play: film frame ${mainFilmFrame(plan)}.`;
  }
  if (look.file?.lostEvery !== undefined) {
    const frames = Array.from({ length: STRIPS }, (_, strip) =>
      mainFilmFrame(planOf(side, side.picture + strip)),
    );
    return `Film frames ${frames.join(' ')}.`;
  }
  if (look.film?.smearShare !== undefined) {
    return `${(side.film.smearShare * 100).toFixed(0)}\u00a0% of the light falls on moving film.`;
  }
  if (look.bench !== undefined && look.wants === 'strips') return sentence(lightWords(side));
  const isMixed = filmFrameShares(planOf(sideOf(look), sideOf(look).picture)).length > 1;
  return isMixed ? sentence(contentOf(plan)) : undefined;
}

const KINDS: Readonly<Record<SceneData['starts'], string>> = {
  strips: 'thirteen pictures in a row, an upright strip of each',
  picture: 'one whole picture',
  loupe: 'a part of one picture, enlarged',
};

/**
 * The picture of a fault and the healthy one beside it.
 *
 * @param id    id of its look
 * @param name  of the fault
 * @throws {Error} that names what is known, for a look that is not
 */
export function faultPictures(
  id: string,
  name: string,
): { readonly fault: FaultPicture; readonly sound: FaultPicture } {
  const look = lookOf(id);
  const [fault, sound] = [sideOf(look), soundBeside(look)];
  const starts = look.wants ?? 'picture';
  const place = look.loupeAt === undefined ? {} : { loupeAt: look.loupeAt };
  // Alive, the healthy one lies under it and the line can be drawn over.
  const both: SceneData = { sides: [fault, sound].map(sideData), starts, split: 1, ...place };
  const alone: SceneData = { sides: [sideData(sound)], starts, ...place };
  const kind = KINDS[starts];
  return {
    fault: {
      data: both,
      still: stillName(both),
      alternative: `${name}: ${kind}.`,
      numbers: numbersOf(fault, look),
    },
    sound: {
      data: alone,
      still: stillName(alone),
      alternative: `All is well: ${kind}.`,
      numbers: numbersOf(sound, look),
    },
  };
}
