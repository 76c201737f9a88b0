import { contentOf } from '../../scene/camera/caption.ts';
import type { SafePlay } from '../../scene/camera/flash-safety.ts';
import { STRIPS } from '../../scene/camera/strips.ts';
import { cameraFrameShown, picturePlan, type View } from '../../scene/camera/views.ts';
import type { Chosen } from './scene-parts.ts';
import { pictureAt, type Painted } from './painter.ts';

/** Rows that are enough to say what a picture holds. */
const ROWS = 96;

const percent = (share: number): string => `${Number((share * 100).toPrecision(3))}\u00a0%`;

const VIEW_WORDS: Readonly<Record<View, string>> = {
  film: 'Film frame',
  camera: 'Camera frame',
  kept: 'Kept picture',
  television: 'Picture of the television copy',
};

/** “Camera frame 73 = film frame 52 (84 %) + 53 (16 %).” */
function pictureWords(one: Painted, { view, seconds }: Chosen): string {
  const picture = pictureAt(one, view, seconds);
  const plan = picturePlan(one.shown, view, picture, ROWS);
  if (view === 'film') return `${VIEW_WORDS.film} ${picture}.`;
  const content = contentOf(plan);
  if (view === 'camera') return `${VIEW_WORDS.camera} ${picture} = ${content}.`;
  const cameraFrame = cameraFrameShown(one.shown, view, picture);
  const from = cameraFrame === undefined ? '' : ` = camera frame ${cameraFrame}`;
  return `${VIEW_WORDS[view]} ${picture}${from} = ${content}.`;
}

/** How far the light swings, and to what it is lowered. */
function swingWords({ swing, contrast }: SafePlay, isPlaying: boolean): string {
  if (swing < 0.0005) return 'The light is even.';
  const true_ = `The light swings by ${percent(swing)} of its mean`;
  if (contrast === 1) return `${true_}.`;
  const lowered = percent(swing * contrast);
  return isPlaying
    ? `${true_}; for safety it is shown lowered to ${lowered}.`
    : `${true_}; while it plays it is lowered to ${lowered}, for safety.`;
}

/** How a scene goes. */
export interface Going {
  readonly isPlaying: boolean;
  /** At a quarter of the speed. */
  readonly isSlow: boolean;
  /** Because nothing faster is safe. */
  readonly isForced: boolean;
}

/** What a scene shows, in a sentence or two for each side, under its name where there are two. */
export function sceneWords(
  sides: readonly Painted[],
  chosen: Chosen,
  safeties: readonly SafePlay[],
  { isPlaying, isSlow, isForced }: Going,
): string {
  const sentences: string[] = [];
  if (isPlaying) {
    const pace = isSlow ? 'A quarter of the true speed' : 'True speed';
    sentences.push(`${pace}${isForced ? ', because this fault flashes at every edge' : ''}.`);
  } else if (chosen.isStrips && sides[0] !== undefined) {
    const first = pictureAt(sides[0], chosen.view, chosen.seconds);
    sentences.push(`Pictures ${first} to ${first + STRIPS - 1} side by side, a strip of each.`);
  }
  sides.forEach((one, index) => {
    if (sides.length > 1) sentences.push(index === 0 ? 'Left:' : 'Right:');
    if (!isPlaying && !chosen.isStrips) sentences.push(pictureWords(one, chosen));
    const safety = safeties[index];
    if (safety !== undefined) sentences.push(swingWords(safety, isPlaying));
  });
  return sentences.join(' ');
}
