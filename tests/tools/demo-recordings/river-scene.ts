// A summer afternoon on the river, drawn by code: far bank, boathouse, a skiff that rows past while the
// camera follows it by hand. Colours are light, not codes.

export type Colour = readonly [red: number, green: number, blue: number];

/** Size of a recorded picture. */
export const WIDTH = 320;
export const HEIGHT = 240;

const mixed = (a: Colour, b: Colour, share: number): Colour => {
  const part = Math.min(1, Math.max(0, share));
  return [0, 1, 2].map((at) => a[at]! + (b[at]! - a[at]!) * part) as unknown as Colour;
};

const SKY_TOP: Colour = [0.16, 0.34, 0.62];
const SKY_LOW: Colour = [0.7, 0.72, 0.66];
const CLOUD: Colour = [0.86, 0.85, 0.8];
const HILL: Colour = [0.12, 0.22, 0.16];
const TREE_DARK: Colour = [0.03, 0.085, 0.03];
const TREE_LIGHT: Colour = [0.16, 0.26, 0.07];
const GRASS: Colour = [0.22, 0.34, 0.1];
const WALL: Colour = [0.5, 0.36, 0.24];
const ROOF: Colour = [0.3, 0.09, 0.06];
const DOOR: Colour = [0.04, 0.1, 0.12];
const WATER: Colour = [0.08, 0.17, 0.22];
const HULL: Colour = [0.62, 0.33, 0.11];
const SHIRT: Colour = [0.8, 0.76, 0.68];
const CAP: Colour = [0.5, 0.07, 0.05];
const SKIN: Colour = [0.55, 0.34, 0.24];
const OAR: Colour = [0.75, 0.62, 0.38];

/** Smooth chance between 0 and 1 along a line. */
function wave(x: number, seed: number): number {
  const hash = (at: number): number => {
    const mix = Math.sin(at * 127.1 + seed * 311.7) * 43_758.545_3;
    return mix - Math.floor(mix);
  };
  const at = Math.floor(x);
  const part = x - at;
  const soft = part * part * (3 - 2 * part);
  return hash(at) * (1 - soft) + hash(at + 1) * soft;
}

/** Where the bank meets the water, in picture rows of the scene. */
const WATERLINE = 128;

/** The far bank without water, at scene columns that run on beyond the picture. */
function bank(x: number, y: number): Colour {
  const hilltop = 78 - 22 * wave(x / 90, 1) - 6 * wave(x / 23, 2);
  const treetop = 104 - 26 * wave(x / 17, 3) - 9 * wave(x / 5, 4);
  const shore = 122 - 3 * wave(x / 40, 5);
  const house = x - 330;
  if (house > -34 && house < 34 && y > 84 && y <= 124) {
    const isRoof = y < 100 && Math.abs(house) < (y - 84) * 2.3;
    if (isRoof) return mixed(ROOF, [0, 0, 0], wave(y / 2, 6) * 0.3);
    if (y >= 100) {
      const isDoor = Math.abs(Math.abs(house) - 15) < 9 && y > 106;
      return isDoor ? DOOR : mixed(WALL, [0.2, 0.14, 0.1], (Math.floor(y / 4) % 2) * 0.25);
    }
  }
  const mast = x - 392;
  if (Math.abs(mast) < 1 && y > 70 && y < 124) return [0.8, 0.8, 0.78];
  if (mast > 0 && mast < 22 && y > 71 && y < 84) return y < 77.5 ? CAP : SHIRT;
  if (y > shore) return mixed(GRASS, [0.1, 0.16, 0.05], wave(x / 3, 7) * 0.7);
  if (y > treetop) {
    const leaf = wave(x / 4 + 3 * wave(y / 5, 8), 9) * wave(y / 4, 10) * 1.8;
    return mixed(TREE_DARK, TREE_LIGHT, leaf);
  }
  if (y > hilltop) return mixed(HILL, SKY_LOW, 0.25);
  const cloud = wave(x / 60 + 7, 11) * wave(y / 13 + x / 160, 12) - 0.3;
  return mixed(mixed(SKY_TOP, SKY_LOW, y / 90), CLOUD, cloud * 3);
}

/** A skiff with two scullers and a cox, its middle at (0, 0), rowing to the right; nothing where it is not. */
function skiff(x: number, y: number, stroke: number): Colour | undefined {
  const reach = Math.sin(stroke);
  for (const seat of [-16, 14]) {
    const lean = seat + 6 * reach;
    const hands = seat - 8 + 5 * reach;
    // Oars swing between bow and stern, and dip on the way aft.
    const tip = seat + 25 * Math.cos(stroke);
    const dip = 9 - 4 * Math.max(0, Math.sin(stroke));
    const along = (x - hands) / (tip - hands || 1);
    if (along > 0 && along < 1) {
      const line = -3 + along * dip;
      if (Math.abs(y - line) < (along > 0.78 ? 1.8 : 0.8)) return OAR;
    }
    if ((x - lean) ** 2 + (y + 19) ** 2 < 11) return y < -20 ? CAP : SKIN;
    const back = seat + (lean - seat) * ((-y - 3) / 13);
    if (y > -16 && y < -3 && Math.abs(x - back) < 3.6) return SHIRT;
    if (Math.abs(y + 9 - 0.3 * (x - lean)) < 1 && x < lean && x > hands) return SKIN;
  }
  if ((x + 42) ** 2 + (y + 15) ** 2 < 8) return SKIN;
  if (y > -13 && y < -2 && Math.abs(x + 42) < 3) return [0.1, 0.14, 0.3];
  const half = 66 - Math.max(0, y + 2) * 5;
  if (y > -4 && y < 4.5 && Math.abs(x) < half) {
    return y < -2 ? [0.85, 0.6, 0.3] : mixed(HULL, [0.2, 0.08, 0.02], (y + 2) / 7);
  }
  return undefined;
}

/** What the scene shows at one point of the picture at one film frame. */
function scenePoint(column: number, row: number, filmFrame: number): Colour {
  const boat = 60 + 4.1 * filmFrame + 2.2 * Math.sin(filmFrame * 0.35);
  const pan = 3.3 * filmFrame + 3 * wave(filmFrame / 5, 20) - 20;
  const tilt = 2.5 * (wave(filmFrame / 6, 21) - 0.5);
  const x = column + pan;
  const y = row + tilt;
  const stroke = filmFrame * 0.35;
  const bow = skiff(x - boat, y - 168, stroke);
  if (bow !== undefined) return bow;
  if (y < WATERLINE) return bank(x, y);
  const depth = y - WATERLINE;
  const ripple =
    Math.sin(depth * (3 - depth / 60) + filmFrame * 0.9 + 4 * wave(x / 22, 22)) * (1 + depth / 14);
  const mirror = skiff(x - boat + ripple, 172 - y + 9, stroke);
  const seen = mirror ?? bank(x + ripple, WATERLINE - depth * 1.15 + ripple);
  const glitter = wave(x / 7 + filmFrame * 0.8, 23) * wave(y / 2 - filmFrame * 0.6, 24);
  return mixed(mixed(seen, WATER, 0.35 + depth / 300), CLOUD, Math.max(0, glitter - 0.62) * 1.6);
}

/** Light of one film frame, red, green and blue of each point row by row, with grain and a little weave. */
export function drawFilmFrame(filmFrame: number, grain: () => number): Float32Array {
  const picture = new Float32Array(WIDTH * HEIGHT * 3);
  const weaveX = 0.5 * (wave(filmFrame * 1.7, 30) - 0.5);
  const weaveY = 0.5 * (wave(filmFrame * 1.9, 31) - 0.5);
  for (let row = 0; row < HEIGHT; row += 1) {
    for (let column = 0; column < WIDTH; column += 1) {
      const at = (row * WIDTH + column) * 3;
      // Two points in each pixel soften the edges as a lens does.
      const a = scenePoint(column + weaveX + 0.25, row + weaveY + 0.25, filmFrame);
      const b = scenePoint(column + weaveX + 0.75, row + weaveY + 0.75, filmFrame);
      const speck = 1 + 0.05 * grain();
      for (let part = 0; part < 3; part += 1)
        picture[at + part] = ((a[part]! + b[part]!) / 2) * speck;
    }
  }
  return picture;
}

/** Share of the lamp that reaches a point of the gate: the plate around it, and a fall-off to the corners. */
export function apertureLight(column: number, row: number): number {
  const dx = Math.max(Math.abs(column - WIDTH / 2) - (WIDTH / 2 - 20), 0);
  const dy = Math.max(Math.abs(row - HEIGHT / 2) - (HEIGHT / 2 - 18), 0);
  const beyond = Math.hypot(dx, dy) - 10;
  const open = Math.min(1, Math.max(0, 0.5 - beyond / 2));
  const fromMiddle = Math.hypot(column - WIDTH / 2, row - HEIGHT / 2) / 200;
  return open * (1 - 0.22 * fromMiddle * fromMiddle);
}
