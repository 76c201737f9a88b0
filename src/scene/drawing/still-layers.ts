import { farBank } from './far-bank.ts';
import { SHORE } from './score.ts';
import type { MakeSheet } from './sheet.ts';

/** Height of the far bank's layer, page units, down to a little below the waterline. */
export const BANK_HEIGHT = 260;

/** What stands still on the reel, drawn once for a size. */
export interface StillLayers {
  /** The far bank. */
  readonly bank: CanvasImageSource;
  /** The same upside down, for the water. */
  readonly mirrored: CanvasImageSource;
  /** Pixels in a page unit. */
  readonly scale: number;
}

/** Draws the still layers. */
export function makeStillLayers(makeSheet: MakeSheet, scale: number): StillLayers {
  const bank = makeSheet(Math.round(SHORE.width * scale), Math.round(BANK_HEIGHT * scale), false);
  bank.pen.scale(scale, scale);
  farBank(bank.pen);
  const mirrored = makeSheet(bank.width, Math.round(130 * scale), false);
  mirrored.pen.scale(scale, -scale);
  mirrored.pen.translate(0, -SHORE.y - 4);
  mirrored.pen.drawImage(bank.image, 0, 0, SHORE.width, BANK_HEIGHT);
  return { bank: bank.image, mirrored: mirrored.image, scale };
}
