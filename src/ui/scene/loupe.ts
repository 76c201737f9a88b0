import type { LoupePlace } from '../../scene/looks/look.ts';

/** Side of what the loupe shows, share of the picture's width; it is enlarged three times. */
const SEEN = 100 / 640;
const TIMES = 3;
/** One press of an arrow key moves it by this share of the width. */
const STEP = 1 / 64;

/** A loupe over the picture: pixels three times as large, hard, while nothing plays. */
export interface Loupe {
  toggle(): boolean;
  readonly isOn: boolean;
  draw(): void;
}

const held = (value: number): number => Math.min(1, Math.max(0, value));

/** Puts a loupe over a picture; it follows the pointer, and the arrow keys while it has the focus. */
export function makeLoupe(
  picture: HTMLElement,
  canvas: HTMLCanvasElement,
  lens: HTMLCanvasElement,
  // The child's face, in the middle of the second half.
  at: LoupePlace = { x: 0.7, y: 0.45 },
): Loupe {
  let isOn = false;
  let place = at;
  lens.width = 300;
  lens.height = 300;

  function draw(): void {
    if (!isOn) return;
    const side = canvas.width * SEEN;
    const left = held(place.x) * (canvas.width - side);
    const top = held(place.y) * (canvas.height - side);
    const pen = lens.getContext('2d');
    if (pen === null) return;
    pen.imageSmoothingEnabled = false;
    pen.drawImage(canvas, left, top, side, side, 0, 0, lens.width, lens.height);
    lens.style.setProperty('--loupe-x', String(place.x));
    lens.style.setProperty('--loupe-y', String(place.y));
  }

  picture.addEventListener('pointermove', (event) => {
    if (!isOn) return;
    const box = picture.getBoundingClientRect();
    place = {
      x: (event.clientX - box.left) / box.width,
      y: (event.clientY - box.top) / box.height,
    };
    draw();
  });
  lens.addEventListener('keydown', ({ key }) => {
    const x = Number(key === 'ArrowRight') - Number(key === 'ArrowLeft');
    const y = Number(key === 'ArrowDown') - Number(key === 'ArrowUp');
    place = { x: held(place.x + x * STEP * TIMES), y: held(place.y + y * STEP * TIMES) };
    draw();
  });
  return {
    draw,
    get isOn() {
      return isOn;
    },
    toggle() {
      isOn = !isOn;
      lens.hidden = !isOn;
      draw();
      return isOn;
    },
  };
}
