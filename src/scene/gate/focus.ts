import { wander } from '../drawing/noise.ts';
import { PAGE } from '../drawing/reel.ts';
import type { Pen, Sheet } from '../drawing/sheet.ts';
import type { FilmFaults } from './film-faults.ts';

const { width, height } = PAGE;

/** The sheet that blurred copies are made on, and pixels in a page unit. */
export interface BlurRoom {
  readonly small: Sheet;
  readonly scale: number;
}

/** A copy made smaller; laid on again at full size it is out of focus. Gives its size, pixels. */
function shrink(gate: Sheet, { small, scale }: BlurRoom, times: number): readonly [number, number] {
  const size = [(width / times) * scale, (height / times) * scale] as const;
  small.pen.clearRect(0, 0, small.width, small.height);
  small.pen.drawImage(gate.image, 0, 0, ...size);
  return size;
}

function softAllOver(gate: Sheet, room: BlurRoom, soft: number): void {
  const times = 1 + soft * 5;
  const size = shrink(gate, room, times);
  for (let copy = 0; copy < 3; copy += 1) {
    gate.pen.globalAlpha = 1 / (copy + 1);
    const aside = (copy - 1) * times * 0.5;
    const down = (copy === 1 ? 1 : -0.5) * times * 0.4;
    gate.pen.drawImage(room.small.image, 0, 0, ...size, aside, down, width, height);
  }
  gate.pen.globalAlpha = 1;
}

/** Lens not square to the gate: from the left on ever softer, in narrow slices. */
function softAtSide(gate: Sheet, room: BlurRoom, softSide: number): void {
  const [w, h] = shrink(gate, room, 2 + softSide * 6);
  const slice = 0.0325;
  for (let step = 0; step < 20; step += 1) {
    const left = 0.35 + step * slice;
    gate.pen.globalAlpha = Math.min(1, (step + 1) / 12);
    const place = [left * width, 0, slice * width + 0.5, height] as const;
    gate.pen.drawImage(room.small.image, left * w, 0, slice * w, h, ...place);
  }
  gate.pen.globalAlpha = 1;
}

function mask(pen: Pen, w: number, h: number, isMiddle: boolean): void {
  const round = pen.createRadialGradient(w / 2, h / 2, 0, w / 2, h / 2, w * 0.56);
  round.addColorStop(0, isMiddle ? '#000' : '#0000');
  round.addColorStop(0.45, isMiddle ? '#000c' : '#0003');
  round.addColorStop(1, isMiddle ? '#0000' : '#000');
  pen.globalCompositeOperation = 'destination-in';
  pen.fillStyle = round;
  pen.fillRect(0, 0, w, h);
  pen.globalCompositeOperation = 'source-over';
}

/** Film that curls and buckles: its middle and its rim go out of focus in turn. */
function warped(gate: Sheet, room: BlurRoom, filmFrame: number, warp: number): void {
  const bend = warp * wander(filmFrame / 3.2, 221);
  const size = shrink(gate, room, 1.5 + Math.abs(bend) * 7);
  mask(room.small.pen, ...size, bend > 0);
  gate.pen.drawImage(room.small.image, 0, 0, ...size, 0, 0, width, height);
}

/** Takes the gate out of focus where a fault says so. */
export function focus(gate: Sheet, room: BlurRoom, filmFrame: number, faults: FilmFaults): void {
  if (faults.warp > 0) warped(gate, room, filmFrame, faults.warp);
  if (faults.soft > 0) softAllOver(gate, room, faults.soft);
  if (faults.softSide > 0) softAtSide(gate, room, faults.softSide);
}
