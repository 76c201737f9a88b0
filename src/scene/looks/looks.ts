import { FILE_LOOKS, SHUTTER_LOOKS, TONE_LOOKS } from './camera-looks.ts';
import { FILM_LOOKS, LENS_LOOKS, RUNNING_LOOKS } from './film-looks.ts';
import { SOUND_FILM } from '../gate/film-faults.ts';
import type { Side } from '../side.ts';
import { filmFrameShares } from '../camera/row-plan.ts';
import { makeSetting, type BenchNumbers } from '../camera/setting.ts';
import { NEUTRAL } from '../camera/tone.ts';
import {
  makeShown,
  picturePlan,
  USUAL_FILE,
  viewFps,
  type FileWay,
  type Shown,
  type View,
} from '../camera/views.ts';
import { SOUND_BENCH, type Look } from './look.ts';

/** Every fault that has a picture, by its id, and the picture where all is well. */
export const LOOKS = {
  sound: { name: 'All is well' } satisfies Look,
  ...FILM_LOOKS,
  ...RUNNING_LOOKS,
  ...LENS_LOOKS,
  ...SHUTTER_LOOKS,
  ...TONE_LOOKS,
  ...FILE_LOOKS,
} as const satisfies Readonly<Record<string, Look>>;

export type LookId = keyof typeof LOOKS;

/** Film frame that a still shows when nothing else is said. */
const BEST_FILM_FRAME = 60;

/** Pictures that are looked through for the most blended one. */
const SEARCHED = 30;

function mostBlended(shown: Shown, view: View, from: number): number {
  const secondShare = (picture: number): number =>
    filmFrameShares(picturePlan(shown, view, picture, 24))[1]?.weight ?? 0;
  const pictures = Array.from({ length: SEARCHED }, (_, index) => from + index);
  return pictures.reduce((best, picture) =>
    secondShare(picture) > secondShare(best) + 1e-9 ? picture : best,
  );
}

/**
 * A look on a bench, ready to be shown.
 *
 * @param bench  numbers of the bench that the look changes; one where all is well when left out
 */
export function sideOf(look: Look, bench: Partial<BenchNumbers> = {}): Side {
  const numbers: BenchNumbers = { ...SOUND_BENCH, ...bench, ...look.bench };
  const file: FileWay = { ...USUAL_FILE, ...look.file };
  const shown = makeShown(makeSetting(numbers), file);
  // Faults of the film are seen on whole pictures.
  const view = look.view ?? (look.bench === undefined ? 'kept' : 'camera');
  const perFilmFrame = view === 'kept' ? 1 : viewFps(view, shown.setting, file) / numbers.filmFps;
  const played = (look.afterSeconds ?? 0) * viewFps(view, shown.setting, file);
  const first = Math.round(((look.filmFrame ?? BEST_FILM_FRAME) + 0.35) * perFilmFrame + played);
  return {
    film: { ...SOUND_FILM, ...look.film },
    bench: numbers,
    tone: { ...NEUTRAL, ...look.tone },
    file,
    view,
    picture: look.isMostBlended === true ? mostBlended(shown, view, first) : first,
  };
}

/** Film frame that gives most of a picture. */
function mainFilmFrame({ bench, file, view, picture }: Side): number {
  const plan = picturePlan(makeShown(makeSetting(bench), file), view, picture, 24);
  return filmFrameShares(plan)[0]?.filmFrame ?? BEST_FILM_FRAME;
}

/** The bench of a look with its exposure matched, its blades alike and its lamp steady. */
function matchedBench({ filmFps, cameraFps, readoutSeconds }: BenchNumbers): BenchNumbers {
  const exposureSeconds = 1 / (filmFps * SOUND_BENCH.flashesPerFrame);
  return { ...SOUND_BENCH, filmFps, cameraFps, readoutSeconds, exposureSeconds };
}

/**
 * The same pictures without the fault, to lie beside it: of the matched bench where the light swings, of
 * the whole film frame where pictures mix, a second of play at the right rate where the speed is wrong.
 *
 * @param look  the fault
 */
export function soundBeside(look: Look): Side {
  const fault = sideOf(look);
  const { filmFrame, afterSeconds, wants } = look;
  const shown: Look = {
    name: LOOKS.sound.name,
    ...(filmFrame === undefined ? {} : { filmFrame }),
    ...(afterSeconds === undefined ? {} : { afterSeconds }),
  };
  if (look.bench === undefined) return sideOf(shown);
  if (wants === 'strips') return sideOf({ ...shown, view: 'camera' }, matchedBench(fault.bench));
  const sound = sideOf(shown);
  const { firstFilmFrame } = makeShown(makeSetting(sound.bench), sound.file).kept;
  return { ...sound, picture: mainFilmFrame(fault) - firstFilmFrame };
}
