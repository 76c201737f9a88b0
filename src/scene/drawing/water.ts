import { oval, shade } from './brush.ts';
import { chance } from './noise.ts';
import { PAGE } from './reel.ts';
import { SHORE, SUN } from './score.ts';
import type { Pen } from './sheet.ts';
import type { StillLayers } from './still-layers.ts';

const DEPTHS = ['#96aaa04c', '#6892989e', '#467682', '#36687a', '#29586a', '#204655'] as const;

/** The far bank upside down, in slices that sway; opaque ones that overlap, or seams would show. */
function reflection(pen: Pen, filmFrame: number, pan: number, layers: StillLayers): void {
  const { mirrored, scale } = layers;
  pen.fillStyle = '#c9d3c6';
  pen.fillRect(-20, SHORE.y + 3, 700, 130);
  for (let y = 0; y < 120; y += 3) {
    const sway =
      Math.sin(y * 0.5 + filmFrame * 0.7) * (0.6 + y * 0.03) +
      Math.sin(y * 0.21 - filmFrame * 0.43) * (0.4 + y * 0.03);
    const cut = [0, y * scale, SHORE.width * scale, 4 * scale] as const;
    pen.drawImage(mirrored, ...cut, -pan + sway, SHORE.y + 4 + y, SHORE.width, 4);
  }
}

/** Wavelets: the nearer, the longer and the further apart. */
function wavelets(pen: Pen, filmFrame: number, pan: number): void {
  for (let index = 0; index < 190; index += 1) {
    const depth = chance(index, 31) ** 2;
    const y = SHORE.y + 8 + depth * 235;
    const near = (y - SHORE.y) / 244;
    const path = chance(index, 32) * 900 - pan * (1 + near) + filmFrame * (0.5 + near);
    const x = (((path % 760) + 760) % 760) - 60;
    const life = Math.sin(filmFrame * (0.3 + chance(index, 33) * 0.3) + index);
    if (life < -0.2) continue;
    const width = (4 + near * 40) * (0.5 + chance(index, 34)) * (0.6 + 0.4 * life);
    const paint = index % 3 === 0 ? '#10303e4c' : '#ceded64c';
    oval(pen, paint, x, y, width, 0.6 + near * 2.1 * (0.5 + 0.5 * life));
  }
}

/** Glitter under the sun, new on every film frame. */
function glitter(pen: Pen, filmFrame: number, pan: number): void {
  for (let index = 0; index < 120; index += 1) {
    if (chance(index, filmFrame + 40) < 0.45) continue;
    const depth = chance(index, filmFrame * 3 + 1) ** 2;
    const y = SHORE.y + 6 + depth * 180;
    const spread = 26 + (y - SHORE.y) * 0.42;
    const series = filmFrame * 5 + 2;
    const x =
      SUN.x - pan * 0.1 + (chance(index, series) + chance(index + 500, series) - 1) * spread;
    const width = 1 + depth * 5.5 * chance(index, filmFrame + 7);
    oval(pen, '#fffaebe6', x, y, width, 0.5 + depth * 1.1);
  }
}

/** The river. */
export function water(pen: Pen, filmFrame: number, pan: number, layers: StillLayers): void {
  reflection(pen, filmFrame, pan, layers);
  pen.fillStyle = shade(pen, 0, SHORE.y + 3, 0, PAGE.height, ...DEPTHS);
  pen.fillRect(-20, SHORE.y + 3, 920, PAGE.height);
  wavelets(pen, filmFrame, pan);
  glitter(pen, filmFrame, pan);
}
