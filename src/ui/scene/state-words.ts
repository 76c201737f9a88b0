import { contentOf } from '../../scene/camera/caption.ts';
import type { SafePlay } from '../../scene/camera/flash-safety.ts';
import { cameraFrameShown, picturePlan, type View } from '../../scene/camera/views.ts';
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
export function pictureWords(one: Painted, view: View, seconds: number): string {
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
export function swingWords({ swing, contrast }: SafePlay, isPlaying: boolean): string {
  if (swing < 0.0005) return 'The light is even.';
  const true_ = `The light swings by ${percent(swing)} of its mean`;
  if (contrast === 1) return `${true_}.`;
  const lowered = percent(swing * contrast);
  return isPlaying
    ? `${true_}; for safety it is shown lowered to ${lowered}.`
    : `${true_}; while it plays it is lowered to ${lowered}, for safety.`;
}
