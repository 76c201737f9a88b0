import { makeSetting, type BenchNumbers } from './camera/setting.ts';
import type { Tone } from './camera/tone.ts';
import { makeShown, type FileWay, type Shown, type View } from './camera/views.ts';
import type { FilmFaults } from './gate/film-faults.ts';

/** Everything that decides a picture, as plain data. */
export interface Side {
  readonly film: FilmFaults;
  readonly bench: BenchNumbers;
  readonly tone: Tone;
  readonly file: FileWay;
  readonly view: View;
  /** Picture of the view that a still shows. */
  readonly picture: number;
}

/** What makes the pictures of a side. */
export function shownOf(side: Side): Shown {
  return makeShown(makeSetting(side.bench), side.file);
}
