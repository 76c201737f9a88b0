import { chance } from '../drawing/noise.ts';
import { PAGE } from '../drawing/reel.ts';
import type { Pen } from '../drawing/sheet.ts';

/** A growth is on this many film frames, as it was on the turns of the stored reel. */
const FRAMES_GROWN = 46;
const GROWTHS = 11;
const THREADS = 26;
const JOINTS = 6;

function growth(pen: Pen, index: number, filmFrame: number, strength: number): void {
  const age = Math.floor((filmFrame + index * 17) / FRAMES_GROWN);
  const x = chance(index, age + 50) * PAGE.width;
  const y = chance(index, age + 51) * PAGE.height;
  const reach = 22 + chance(index, age + 52) * 58 * strength;
  for (let thread = 0; thread < THREADS; thread += 1) {
    let angle = (thread / THREADS) * 6.283 + chance(thread, index + age);
    let tipX = x;
    let tipY = y;
    pen.lineWidth = 0.8 + chance(thread, index) * 1.3;
    pen.strokeStyle = thread % 3 === 0 ? '#34422899' : '#f0f3d88c';
    pen.beginPath();
    pen.moveTo(tipX, tipY);
    for (let joint = 0; joint < JOINTS; joint += 1) {
      angle += (chance(joint, thread * 31 + index) - 0.5) * 1.3;
      tipX += (Math.cos(angle) * reach) / JOINTS;
      tipY += (Math.sin(angle) * reach) / JOINTS;
      pen.lineTo(tipX, tipY);
    }
    pen.stroke();
  }
}

/** Mould: threads that branch from a core, in one place for many film frames. */
export function mould(pen: Pen, filmFrame: number, strength: number): void {
  for (let index = 0; index < GROWTHS * strength; index += 1) {
    growth(pen, index, filmFrame, strength);
  }
}
