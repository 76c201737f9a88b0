import { area, between, line, shade } from './brush.ts';
import { boathouse } from './boathouse.ts';
import { chance } from './noise.ts';
import { SHORE } from './score.ts';
import type { Pen } from './sheet.ts';
import { hedge, massBefore, massBehind, treeRow } from './trees.ts';

const FAR_HILLS = [
  ...[0, 200, 90, 172, 190, 160, 300, 178, 420, 156, 560, 170, 690, 150, 800, 166],
  ...[900, 160, 900, 240, 0, 240],
];
const NEAR_HILLS = [
  ...[0, 214, 120, 190, 260, 196, 380, 184, 520, 196, 640, 182, 760, 192],
  ...[900, 184, 900, 240, 0, 240],
];

/** Millbrook's church, small in the haze. */
function church(pen: Pen): void {
  area(pen, '#9aaca4', 226, 200, 226, 176, 240, 176, 240, 200);
  area(pen, '#8fa89c', 224, 177, 233, 140, 242, 177);
  area(pen, '#a2b1a7', 240, 200, 240, 186, 268, 186, 272, 200);
}

/** Everything beyond the water, drawn once for a size: the still layer. */
export function farBank(pen: Pen): void {
  area(pen, '#a9bdbb', ...FAR_HILLS);
  church(pen);
  area(pen, '#8fa89c', ...NEAR_HILLS);
  pen.fillStyle = shade(pen, 0, 208, 0, SHORE.y, '#a7ad67', '#7d8a48');
  pen.fillRect(0, 212, SHORE.width, 26);
  hedge(pen);
  treeRow(pen);
  massBehind(pen);
  boathouse(pen);
  massBefore(pen);
  pen.fillStyle = shade(pen, 0, 234, 0, 242, '#8d7a55', '#4a3a2c');
  pen.fillRect(0, 235, SHORE.width, 6);
  for (let blade = 0; blade < 240; blade += 1) {
    const x = chance(blade, 21) * SHORE.width;
    const paint = between([60, 68, 38], [150, 150, 78], chance(blade, 22));
    line(pen, paint, 1.4, x, 241, x + chance(blade, 23) * 6 - 3, 230 - chance(blade, 24) * 6);
  }
}
