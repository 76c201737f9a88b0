import { drawFilmFrame } from '../drawing/draw-film-frame.ts';
import { PAGE } from '../drawing/reel.ts';
import type { MakeSheet, Sheet } from '../drawing/sheet.ts';
import { makeStillLayers } from '../drawing/still-layers.ts';
import { CLEAN, type FilmFaults, type FilmInGate } from './film-faults.ts';
import { develop, GRAIN_PARTS, grainTile } from './grain.ts';
import { marksOnFilm } from './marks-on-film.ts';
import { PITCH, placeInGate } from './place-in-gate.ts';
import { plate } from './plate.ts';
import type { RareFaults } from './rare-faults.ts';
import { freshStock, type StockTables } from './stock.ts';
import { EVEN, unevenLight } from './uneven-light.ts';

/** Film is softer than a screen: pictures are drawn smaller and enlarged, which costs half as well. */
const DRAWN_SHARE = 0.75;

/** Share of its own blurred light that a bright part spreads around itself. */
const GLOW_SHARE = 0.13;
const GLOW_SIZE = 1 / 6;

/** What is drawn without the rare faults, up to so much of it. */
const USUAL: Readonly<Record<string, number>> = {
  dust: CLEAN,
  hair: CLEAN,
  grain: 9,
  weave: 9,
  spliceJump: 9,
  plate: 1,
  vignette: 1,
  hotSpot: 1,
  mirrored: 1,
  tailFirst: 1,
} satisfies Partial<FilmFaults>;

/** Whether a film needs the rare faults. */
export function hasRareFaults(faults: FilmFaults): boolean {
  return Object.entries(faults).some(([name, amount]) => amount > (USUAL[name] ?? 0));
}

/** Remembers what was last made for a key, so that frames of one fault share their tables. */
function kept<T>(make: (faults: FilmFaults) => T, keyOf: (faults: FilmFaults) => string) {
  let key: string | undefined;
  let last: T | undefined;
  return (faults: FilmFaults): T => {
    const asked = keyOf(faults);
    if (last === undefined || asked !== key) {
      last = make(faults);
      key = asked;
    }
    return last;
  };
}

/**
 * Prepares film in the gate for one size.
 *
 * @param makeSheet  makes canvases
 * @param width      pixels; the height is three quarters of it
 * @param rare       what draws the rare faults, if it is there; without it they are left out
 */
export function makeFilmInGate(
  makeSheet: MakeSheet,
  width: number,
  rare: () => RareFaults | undefined,
): FilmInGate {
  const height = Math.round((width * PAGE.height) / PAGE.width);
  const scale = width / PAGE.width;
  const sheet = (share: number, isRead = false): Sheet =>
    makeSheet(Math.round(width * share), Math.round(height * share), isRead);
  const layers = makeStillLayers(makeSheet, scale * DRAWN_SHARE);
  const picture = sheet(DRAWN_SHARE);
  const gate = sheet(1, true);
  const tiny = sheet(GLOW_SIZE);
  const cover = sheet(1, true);
  const blurRoom = { small: sheet(1), scale };
  const tile = grainTile();
  const allSharp = new Float32Array(width).fill(1 / GRAIN_PARTS);
  const stockOf = kept<StockTables>(
    ({ fade }) => (fade > 0 ? rare()?.fadedStock(fade) : undefined) ?? freshStock(),
    ({ fade }) => String(fade),
  );
  const lightOf = kept(
    (faults) => unevenLight(width, height, faults),
    ({ vignette, hotSpot }) => `${vignette} ${hotSpot}`,
  );
  picture.pen.scale(scale * DRAWN_SHARE, scale * DRAWN_SHARE);
  gate.pen.scale(scale, scale);
  cover.pen.scale(scale, scale);

  /** Lays a film frame in the gate, `down` page units below its place. */
  function lay(filmFrame: number, faults: FilmFaults, x: number, down: number): void {
    drawFilmFrame(picture.pen, filmFrame, layers);
    rare()?.damageOnFilm(picture.pen, filmFrame, faults);
    marksOnFilm(picture.pen, filmFrame, faults);
    gate.pen.drawImage(picture.image, x - 4, down - 3, PAGE.width + 8, PAGE.height + 6);
    if (faults.aside > 0) rare()?.holeBeside(gate.pen, x, down);
  }

  /** The strip in the gate: the film frame, and its neighbours where it leaves room for them. */
  function strip(filmFrame: number, faults: FilmFaults): void {
    const place = placeInGate(filmFrame, faults);
    const moved = rare()?.displaced(filmFrame, faults) ?? { x: 0, y: 0, slid: 0 };
    const x = place.x + moved.x;
    const pitch = PAGE.height * PITCH;
    const { mirrored, tailFirst } = faults;
    const { pen } = gate;
    pen.fillStyle = '#0b0806';
    pen.fillRect(0, 0, PAGE.width, PAGE.height);
    pen.save();
    pen.translate(mirrored * PAGE.width, tailFirst * PAGE.height);
    pen.scale(1 - 2 * mirrored, 1 - 2 * tailFirst);
    const down = place.y + moved.y - moved.slid * pitch;
    if (down < -12) lay(filmFrame + 1, faults, x, down + pitch);
    if (down > 12) lay(filmFrame - 1, faults, x, down - pitch);
    lay(filmFrame, faults, x, down);
    pen.restore();
  }

  function glowing(): void {
    tiny.pen.drawImage(gate.image, 0, 0, tiny.width, tiny.height);
    gate.pen.globalCompositeOperation = 'screen';
    gate.pen.globalAlpha = GLOW_SHARE;
    gate.pen.drawImage(tiny.image, 0, 0, PAGE.width, PAGE.height);
    gate.pen.globalCompositeOperation = 'source-over';
    gate.pen.globalAlpha = 1;
  }

  function developed(filmFrame: number, faults: FilmFaults): Uint8ClampedArray<ArrayBuffer> {
    strip(faults.tailFirst > 0 ? -filmFrame : filmFrame, faults);
    glowing();
    rare()?.focus(gate, blurRoom, filmFrame, faults);
    const { data } = gate.pen.getImageData(0, 0, width, height);
    const out = new Uint8ClampedArray(data.length);
    const sharp = rare()?.keptByColumn(width, faults) ?? allSharp;
    develop(data, out, width, filmFrame, faults.grain, tile, stockOf(faults), sharp);
    return out;
  }

  /** Lamp, lens and gate over the film: neither fade nor smear touches them. */
  function underPlate(out: Uint8ClampedArray, filmFrame: number, faults: FilmFaults): void {
    cover.pen.clearRect(0, 0, PAGE.width, PAGE.height);
    plate(cover.pen, filmFrame, faults);
    if (faults.hair > CLEAN) rare()?.longHair(cover.pen, filmFrame);
    const shadow = cover.pen.getImageData(0, 0, width, height).data;
    const light = lightOf(faults);
    for (let pixel = 0, at = 0; pixel < light.length; pixel += 1, at += 4) {
      const part = ((light[pixel] ?? EVEN) * (255 - (shadow[at + 3] ?? 0))) / (EVEN * 255);
      out[at] = (out[at] ?? 0) * part;
      out[at + 1] = (out[at + 1] ?? 0) * part;
      out[at + 2] = (out[at + 2] ?? 0) * part;
    }
  }

  let smeared: FilmInGate | undefined;
  function lit(filmFrame: number, faults: FilmFaults): Uint8ClampedArray<ArrayBuffer> {
    if (faults.smearShare === 0) return developed(filmFrame, faults);
    smeared ??= rare()?.makeSmeared(developed, width, height);
    return (smeared ?? developed)(filmFrame, faults);
  }

  return (filmFrame, faults) => {
    const out = lit(filmFrame, faults);
    underPlate(out, filmFrame, faults);
    return out;
  };
}
