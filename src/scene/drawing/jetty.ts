import { area, between, line, oval, shade } from './brush.ts';
import { chance } from './noise.ts';
import type { Pen } from './sheet.ts';

/** The club's jetty in the foreground. */
export function jetty(pen: Pen, shift: number): void {
  pen.save();
  pen.translate(shift, 0);
  for (const x of [432, 520, 612, 704]) {
    pen.fillStyle = shade(pen, x, 0, x + 12, 0, '#7c6444', '#4a3a2c');
    pen.fillRect(x, 404, 11, 90);
    line(pen, '#14283073', 9, x + 4, 456, x + 1, 486);
  }
  area(pen, '#b79a6b', 414, 404, 470, 372, 800, 372, 800, 404);
  for (let plank = 0; plank < 20; plank += 1) {
    const near = 415 + plank * 21;
    const far = 471 + plank * 19;
    const paint = between([150, 122, 82], [204, 178, 128], chance(plank, 61));
    area(pen, paint, near, 404, far, 372, far + 17, 372, near + 19, 404);
  }
  pen.fillStyle = shade(pen, 0, 404, 0, 418, '#94764a', '#5b3a26');
  pen.fillRect(414, 404, 400, 13);
  line(pen, '#e8d6a8', 1.4, 414, 404, 800, 404);
  // Mooring post.
  oval(pen, '#5b3a26', 446, 385, 6, 3);
  line(pen, '#6b4426', 9, 446, 384, 446, 372);
  oval(pen, '#94764a', 446, 371, 5, 2.4);
  line(pen, '#e8d6a8', 2.4, 440, 377, 452, 379);
  pen.restore();
}
