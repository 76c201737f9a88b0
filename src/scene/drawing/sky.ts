import { glow, shade } from './brush.ts';
import { chance } from './noise.ts';
import { COLOUR, SUN } from './score.ts';
import type { Pen } from './sheet.ts';

/** Fair-weather clouds: middle x and y, width, height. Flat below, heaped above. */
const CLOUDS = [
  [318, 70, 190, 30],
  [492, 112, 120, 15],
  [726, 58, 230, 34],
  [196, 132, 110, 10],
  [866, 118, 130, 18],
] as const;
const PUFFS = 34;

/** Light about the sun, from its rim outwards. */
const RAYS = ['#fff0c49e', '#fff0c457', '#fff0c42b', '#fff0c412', '#fff0c400'] as const;

function cloud(
  pen: Pen,
  x: number,
  y: number,
  width: number,
  height: number,
  series: number,
): void {
  for (let puff = 0; puff < PUFFS; puff += 1) {
    const along = chance(puff, series) * 2 - 1;
    const heap = 1 - along * along;
    const radius = height * (0.3 + heap * 0.75 * chance(puff, series + 1)) + 3;
    const lift = radius * 0.72 + height * heap * 1.5 * chance(puff, series + 2);
    pen.save();
    pen.translate(x + along * width * 0.5, y - lift * 0.62);
    pen.scale(1.4, 0.85);
    glow(pen, 0, 0, radius, '#fffcf24c', '#fcf5e62b', '#faf2e200');
    pen.restore();
  }
  // The flat, shaded base.
  pen.save();
  pen.translate(x, y + height * 0.12);
  pen.scale(1, 0.09);
  glow(pen, 0, 0, width * 0.5, '#a0b2b833', '#a0b2b81a', '#a0b2b800');
  pen.restore();
}

/** Sky, clouds and sun. */
export function sky(pen: Pen, filmFrame: number, pan: number): void {
  pen.fillStyle = shade(pen, 0, -20, 0, 215, ...COLOUR.sky);
  pen.fillRect(-20, -20, 700, 262);
  CLOUDS.forEach(([x, y, width, height], index) => {
    const left = x - pan * 0.35 + filmFrame * 0.05;
    if (left + width > -20 && left - width < 660) cloud(pen, left, y, width, height, index * 7 + 3);
  });
  const x = SUN.x - pan * 0.1;
  glow(pen, x, SUN.y, 210, '#fffdf2', ...RAYS);
  glow(pen, x, SUN.y, 26, '#fffef8', '#fffdf2', '#fffbe6', '#fffae200');
}
