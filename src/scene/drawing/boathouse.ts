import { area, line, oval, shade } from './brush.ts';
import { chance } from './noise.ts';
import { COLOUR, SHORE } from './score.ts';
import type { Pen } from './sheet.ts';

const HULLS = ['#b07a40', '#d8c9a8', '#7e3f2e', '#b07a40'] as const;
const CLOTHES = [COLOUR.flagRed, COLOUR.cream, '#39607a', '#d8b45e', '#8d9a6a', '#e9dfc8'] as const;

function walls(pen: Pen): void {
  pen.fillStyle = shade(pen, 470, 0, 600, 0, '#e9dfc8', '#d8c9a8');
  pen.fillRect(476, 176, 120, 60);
  area(pen, '#efe3c4', 476, 178, 536, 132, 596, 178);
  for (let x = 482; x < 596; x += 7) {
    line(pen, '#785f3c47', 1, x, 236, x, 178 - (60 - Math.abs(x - 536)) * 0.74);
  }
  // The roof throws its shadow on the gable.
  line(pen, '#46321e52', 5, 476, 186, 536, 140, 596, 186);
  line(pen, '#7e3f2e', 6, 468, 184, 536, 130, 604, 184);
  line(pen, '#a85a40', 1.6, 469, 181, 536, 128);
  line(pen, '#fbf4e0', 2.2, 472, 187, 536, 136, 600, 187);
}

/** One door stands open on hulls in their racks; above it the balcony and the club's crossed sculls. */
function doors(pen: Pen): void {
  area(pen, '#26352f', 486, 236, 486, 200, 530, 200, 530, 236);
  HULLS.forEach((paint, shelf) => {
    line(pen, paint, 2.6, 490, 207 + shelf * 8, 526, 206 + shelf * 8);
  });
  area(pen, '#2f5a4c', 542, 236, 542, 200, 564, 200, 564, 236);
  area(pen, '#2a5145', 565, 236, 565, 200, 587, 200, 587, 236);
  line(pen, COLOUR.cream, 2, 478, 192, 594, 192);
  line(pen, COLOUR.cream, 1.6, 478, 180, 594, 180);
  for (let x = 480; x < 596; x += 8) line(pen, COLOUR.cream, 1, x, 180, x, 192);
  oval(pen, '#fbf4e0', 536, 158, 9);
  oval(pen, COLOUR.club, 536, 158, 7);
  line(pen, '#f2d9a0', 1.3, 531, 153, 541, 163);
  line(pen, '#f2d9a0', 1.3, 541, 153, 531, 163);
}

/** Members: some on the balcony, the others on the landing. */
function members(pen: Pen): void {
  for (let index = 0; index < 13; index += 1) {
    const isUp = index < 5;
    const scatter = chance(index, 9);
    const x = isUp ? 488 + index * 21 + scatter * 9 : 452 + (index - 5) * 21 + scatter * 12;
    const y = isUp ? 180 : 235;
    line(pen, CLOTHES[index % 6] ?? COLOUR.cream, 5, x, y - 3, x, y - 10);
    if (!isUp) line(pen, index % 2 === 1 ? '#4b4a50' : '#d8c9a8', 3.6, x, y, x, y - 4);
    oval(pen, COLOUR.skin, x + 0.4, y - 15, 2.5);
    oval(pen, index % 3 === 0 ? '#f2d9a0' : '#6b4426', x, y - 16, 2.9, 1.6);
  }
}

/** The club's boathouse with its people. */
export function boathouse(pen: Pen): void {
  walls(pen);
  doors(pen);
  members(pen);
  line(pen, '#8d7a55', 3, 446, SHORE.y, 612, SHORE.y);
}
