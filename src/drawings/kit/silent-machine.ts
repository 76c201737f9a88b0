import { FilmRun } from './film-path.ts';
import { filmLine } from './film-marks.ts';
import { gateMark, projectionLensMark } from './machine-parts.ts';
import { circle, line, rect } from './marks.ts';
import { point } from './point.ts';
import { reel, reelMark, shoeMark, sprocket, sprocketMark } from './wheels.ts';

const feed = reel(140, 112, 66, 'clockwise');
const upper = sprocket(262, 236, 'anticlockwise');
const lower = sprocket(262, 504, 'anticlockwise');
const takeUp = reel(452, 640, 52, 'clockwise');

/** Where the film stands in the gate, and the middle of the gate. */
const GATE = point(330, 376);

/** The film path of a silent projector: its wheels from feed to take-up, and the film on them. */
export const silentMachine = {
  feed,
  upper,
  lower,
  takeUp,
  gate: GATE,
  run: FilmRun.offReel(feed, upper)
    .loopTo(point(GATE.x, 296), point(0, 1), [78, 78], 0.1)
    .ahead(140)
    .loopOnto(lower, 0, [104, 54])
    .onto(takeUp)
    .path(0.6),
} as const;

/** The machine with its film, without lamp: what hands touch when they thread it. */
export const silentMachineMarks: readonly string[] = [
  rect('s', 150, 200, 250, 356, 14),
  gateMark(312, GATE.y, 80, 24),
  rect('o', 336, 300, 8, 52, 3),
  rect('o', 336, 400, 8, 52, 3),
  projectionLensMark(392, GATE.y),
  circle('o', 200, 376, 22),
  circle('t', 200, 376, 15),
  line('t', 200, 356, 200, 366),
  reelMark(feed, 90),
  reelMark(takeUp, 90),
  sprocketMark(upper),
  sprocketMark(lower),
  filmLine(silentMachine.run),
  shoeMark(upper, 1.75),
  shoeMark(lower, -2.3),
];
