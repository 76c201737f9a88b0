import { area, filmLine, turnArrow, turnMark } from './kit/film-marks.ts';
import { FilmRun } from './kit/film-path.ts';
import { lineDrawing } from './kit/drawing.ts';
import { point } from './kit/point.ts';
import { onStrip, personMark, stripMark, type Strip } from './kit/strip.ts';
import { reel, reelMark } from './kit/wheels.ts';

const TOP = 262;
const STEP = 62;

/** A reel whose end hangs down over the front; the pictures on it hang with it. */
function hanging(x: number, way: 1 | -1) {
  const wheel = reel(x, 130, 70, 'clockwise');
  const film = FilmRun.offReelAt(wheel, 0, TOP - 132).path();
  const strip: Strip = {
    x: x + 60,
    y: TOP,
    step: STEP,
    frames: 3,
    width: 74,
    lies: 'upright',
    holes: 'far',
    holesAt: 'middle',
    isBlank: true,
  };
  const pictures = [0, 1, 2].map((frame) => {
    const top = TOP + frame * STEP;
    return (
      onStrip(strip, 'o', frame * STEP + 5, 30, STEP - 10, 38, 2) +
      personMark(strip.x + 49, way === 1 ? top + STEP - 9 : top + 9, 42, way)
    );
  });
  const arrow = turnArrow(wheel, 104, -0.8);
  return {
    wheel,
    film,
    arrow,
    area: area(strip.x, strip.y, strip.width, STEP * 3),
    marks: [reelMark(wheel, 96), filmLine(film), stripMark(strip), ...pictures],
  };
}

const headOut = hanging(120, -1);
const tailOut = hanging(450, 1);

export const drawing = lineDrawing({
  id: 'winds',
  title: 'Head out or tail out, by the end that hangs down',
  description:
    'Two reels, from each an end of film hangs down. Where people on it stand upside down, the head is out: the reel can be run. Where they stand upright, the tail is out: rewind it first.',
  height: 500,
  marks: [headOut, tailOut].flatMap(({ marks, arrow }) => [...marks, turnMark(arrow)]),
  areas: [headOut.area, tailOut.area],
  paths: [headOut.film, tailOut.film],
  wheels: [headOut.wheel, tailOut.wheel],
  turnArrows: [headOut.arrow, tailOut.arrow],
  labels: [
    { text: 'upside down', note: 'head out: run it', x: 10, y: 330, term: 'head-out' },
    { text: 'upright', note: 'tail out: rewind', term: 'rewind', x: 330, y: 330 },
    { text: 'free end', x: 270, y: 440, to: point(220, 440) },
  ],
});
