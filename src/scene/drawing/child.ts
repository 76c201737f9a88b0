import { area, blob, curves, line, oval, shade } from './brush.ts';
import { face } from './face.ts';
import { COLOUR } from './score.ts';
import type { Pen } from './sheet.ts';

function legs(pen: Pen): void {
  line(pen, COLOUR.skinInShade, 9, 8, -34, 9, -8);
  line(pen, COLOUR.skin, 9, -7, -34, -8, -8);
  for (const side of [-1, 1]) {
    line(pen, COLOUR.cream, 9, side * 9, -9, side * 9, -4);
    line(pen, '#5b3a26', 8, side * 9, -1, side * 14, 0);
  }
  const shorts = shade(pen, -18, 0, 20, 0, '#5d7fa0', '#3f5f82', '#2a4562');
  const hem = [19, -29, 2, -28, 1, -36, -1, -28, -17, -29];
  area(pen, shorts, -16, -56, 17, -56, ...hem);
}

function jersey(pen: Pen): void {
  const paint = shade(pen, -20, 0, 20, 0, '#e2604c', COLOUR.red, '#8e2c2a');
  const left = [-20, -76, -15, -90, 0, -97, 15, -90];
  blob(pen, paint, -17, -54, ...left, 21, -74, 18, -54, 0, -50, -17, -54);
  line(pen, '#ffecc8cc', 3, -18, -67, 0, -65, 18, -67);
  line(pen, '#5a141459', 2, -16, -57, 0, -54, 17, -57);
  line(pen, COLOUR.skinInShade, 8, 0, -92, 0, -98);
}

/** The arm that waves: the fastest thing in the second shot. */
function wavingArm(pen: Pen, wave: number): void {
  const elbowX = -13 - 16 * Math.cos(0.5 + wave * 0.4);
  const elbowY = -106;
  const handX = elbowX - 8 + wave * 34;
  const handY = elbowY - 26 + Math.abs(wave) * 7;
  const cuffX = (elbowX + handX) / 2;
  const cuffY = (elbowY + handY) / 2;
  line(pen, '#d9553f', 11, -13, -86, elbowX, elbowY);
  line(pen, '#d9553f', 9, elbowX, elbowY, cuffX, cuffY);
  line(pen, COLOUR.skin, 7, cuffX, cuffY, handX, handY);
  pen.save();
  pen.translate(handX, handY);
  pen.rotate(wave * 0.9 - 0.1);
  oval(pen, COLOUR.skin, 0, -4, 5, 6);
  for (let finger = 0; finger < 4; finger += 1) {
    const tip = -14 + Math.abs(finger - 1.5);
    line(pen, COLOUR.skin, 2.7, -3.8 + finger * 2.5, -8, -5 + finger * 3.5, tip);
  }
  line(pen, COLOUR.skin, 2.7, 4, -4, 8, -8);
  pen.restore();
}

function pennant(pen: Pen, time: number): void {
  line(pen, '#e8d6a8', 2, 17, -48, 38, -102);
  const wave = Math.sin(time) * 4;
  curves(pen, 38, -102, 52, -104 + wave, 72, -90 - wave, 50, -90 + wave, 31, -84);
  pen.fillStyle = COLOUR.club;
  pen.fill();
  oval(pen, COLOUR.cream, 42, -94 + wave * 0.2, 4);
}

/** The child on the jetty: waves with the right arm, hops a little; x, y is where the feet stand. */
export function child(pen: Pen, x: number, y: number, filmFrame: number): void {
  const time = filmFrame * 0.55;
  const wave = Math.sin(time) * 0.5;
  oval(pen, '#281c0e66', x + 10, y + 1, 26, 5);
  pen.save();
  pen.translate(x, y - Math.abs(Math.sin(time * 0.5)) * 4);
  legs(pen);
  line(pen, '#9c2f2c', 10, 15, -84, 24, -66, 20, -56);
  line(pen, COLOUR.skinInShade, 7, 20, -56, 17, -52);
  jersey(pen);
  wavingArm(pen, wave);
  face(pen, wave * 2);
  pennant(pen, time * 1.7);
  pen.restore();
}
