import type { LoupePlace } from '../../scene/looks/look.ts';

/** Side of what the loupe shows, share of the picture's width; the glass is three times as wide. */
const SEEN = 100 / 640;
/** One press of an arrow key moves it by this share of the picture. */
const STEP = 3 / 64;
/** Pixels of the glass. */
const GLASS = 300;

const ARROWS: Readonly<Record<string, readonly [x: number, y: number]>> = {
  ArrowLeft: [-STEP, 0],
  ArrowRight: [STEP, 0],
  ArrowUp: [0, -STEP],
  ArrowDown: [0, STEP],
};

/** A loupe over the picture: pixels three times as large, hard, while nothing plays. */
export interface Loupe {
  toggle(): void;
  readonly isOn: boolean;
  draw(): void;
}

const held = (value: number, most = 1): number => Math.min(most, Math.max(0, value));

/**
 * Puts a loupe over a picture. It follows the pointer or a finger, and the arrow keys.
 *
 * @param glass   what it is drawn on, and the button: both take the arrow keys
 * @param at      where it is held at first
 */
export function makeLoupe(
  picture: HTMLElement,
  canvas: HTMLCanvasElement,
  [lens, button]: readonly [HTMLCanvasElement, HTMLElement],
  // The child's face, in the middle of the second half.
  at: LoupePlace = { x: 0.7, y: 0.45 },
): Loupe {
  let isOn = false;
  let place = at;
  lens.width = GLASS;
  lens.height = GLASS;

  /** Shows what lies at the place; the glass lies over it, or beside it where a finger would hide it. */
  function draw(glassAt = place.x): void {
    if (!isOn) return;
    const side = canvas.width * SEEN;
    const left = held(place.x * canvas.width - side / 2, canvas.width - side);
    const top = held(place.y * canvas.height - side / 2, canvas.height - side);
    const pen = lens.getContext('2d');
    if (pen === null) return;
    pen.imageSmoothingEnabled = false;
    pen.drawImage(canvas, left, top, side, side, 0, 0, GLASS, GLASS);
    lens.style.setProperty('--loupe-x', String(glassAt));
    lens.style.setProperty('--loupe-y', String(place.y));
  }

  function follow({ clientX, clientY, pointerType }: PointerEvent): void {
    if (!isOn) return;
    const box = picture.getBoundingClientRect();
    place = {
      x: held((clientX - box.left) / box.width),
      y: held((clientY - box.top) / box.height),
    };
    draw(pointerType === 'touch' ? Number(place.x < 0.5) : place.x);
  }
  picture.addEventListener('pointerdown', follow);
  picture.addEventListener('pointermove', follow);
  for (const target of [lens, button]) {
    target.addEventListener('keydown', (event) => {
      const arrow = ARROWS[event.key];
      if (!isOn || arrow === undefined) return;
      // The page must not scroll as well.
      event.preventDefault();
      place = { x: held(place.x + arrow[0]), y: held(place.y + arrow[1]) };
      draw();
    });
  }
  return {
    draw: () => {
      draw();
    },
    get isOn() {
      return isOn;
    },
    toggle() {
      isOn = !isOn;
      lens.hidden = !isOn;
      // A finger moves the loupe, not the page.
      picture.toggleAttribute('data-loupe', isOn);
      draw();
    },
  };
}
