import { area, line, oval } from './brush.ts';
import { COLOUR, SHORE } from './score.ts';
import type { Pen } from './sheet.ts';

const BUNTING = [COLOUR.red, COLOUR.cream, COLOUR.club, '#d8b45e'] as const;

function flag(
  pen: Pen,
  x: number,
  y: number,
  width: number,
  height: number,
  wave: number,
  cloth: string,
): void {
  line(pen, '#efe3c4', 2, x, y - 2, x, SHORE.y - 6);
  const upper: number[] = [];
  const lower: number[] = [];
  for (let step = 0; step <= 8; step += 1) {
    const part = step / 8;
    const lift = Math.sin(part * 5 - wave) * 3.2 * part + part * 2;
    upper.push(x + part * width, y + lift);
    lower.unshift(x + part * width, y + height + lift + Math.sin(part * 4 - wave + 1) * part);
  }
  area(pen, cloth, ...upper, ...lower);
  pen.save();
  pen.clip();
  oval(pen, COLOUR.cream, x + width * 0.44, y + height / 2 + 1, height * 0.26);
  const fold = 0.1 * Math.sin(wave);
  const top = [x + width * (0.35 + fold), y - 6, x + width * (0.62 + fold), y - 6];
  area(pen, '#14192838', ...top, x + width * 0.7, y + height + 8, x + width * 0.5, y + 32);
  pen.restore();
}

/** Two flags at the boathouse and the bunting between their poles. */
export function flags(pen: Pen, filmFrame: number, pan: number): void {
  flag(pen, 616 - pan, 78, 42, 25, filmFrame * 0.75, COLOUR.flagRed);
  flag(pen, 456 - pan, 92, 34, 20, filmFrame * 0.82 + 1, COLOUR.club);
  for (let index = 0; index < 15; index += 1) {
    const part = (index + 0.5) / 15;
    const x = 456 - pan + part * 160;
    const sag = Math.sin(part * Math.PI) * 24 + Math.sin(filmFrame * 0.5 + index) * 0.8;
    const y = 116 - part * 14 + sag;
    const swing = Math.sin(filmFrame * 0.9 + index * 1.3) * 2;
    area(pen, BUNTING[index % 4] ?? COLOUR.red, x - 3.6, y, x + 3.6, y, x + swing, y + 9);
  }
}
