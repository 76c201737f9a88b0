import { child } from './child.ts';
import { dog } from './dog.ts';
import { flags } from './flags.ts';
import { jetty } from './jetty.ts';
import { ease, held, wander } from './noise.ts';
import { reeds } from './reeds.ts';
import { inLoop, PAGE, REEL, sinceSplice } from './reel.ts';
import { CLOSE_SHOT, JETTY, PAN, SHORE } from './score.ts';
import type { Pen } from './sheet.ts';
import { skiff } from './skiff.ts';
import { sky } from './sky.ts';
import { BANK_HEIGHT, type StillLayers } from './still-layers.ts';
import { water } from './water.ts';

/** How far the hand-held camera has turned to the right, page units at the far bank. */
export function panAt(filmFrame: number): number {
  const part = held((filmFrame - PAN.from) / PAN.lasts, 0, 1);
  return PAN.start + PAN.travel * ease(part) + wander(filmFrame / 7, 91) * 2;
}

function frameShot(pen: Pen, filmFrame: number, isClose: boolean): void {
  const shakeX = wander(filmFrame / 5, 92) * 2.4 + wander(filmFrame / 2.3, 94) * 0.8;
  const shakeY = wander(filmFrame / 6, 93) * 2.2 + wander(filmFrame / 2.1, 95) * 0.8;
  const enlarged = isClose ? CLOSE_SHOT.enlarged : 1.025;
  const middleX = isClose ? CLOSE_SHOT.x : PAGE.width / 2;
  const middleY = isClose ? CLOSE_SHOT.y : PAGE.height / 2;
  pen.translate(PAGE.width / 2, PAGE.height / 2);
  pen.scale(enlarged, enlarged);
  pen.translate(shakeX - middleX, shakeY - middleY);
}

/**
 * Draws a film frame of the rowing club's home movie: the regatta skiff passes the boathouse; after the
 * splice the child on the jetty, closer. Depends on the number of the film frame alone.
 *
 * @param pen        scaled so that 640 × 480 page units fill its sheet
 * @param filmFrame  whole; the reel is a loop of 108
 */
export function drawFilmFrame(pen: Pen, filmFrame: number, layers: StillLayers): void {
  const frame = inLoop(filmFrame);
  const isClose = frame >= REEL.splice;
  const pan = isClose ? PAN.whole : panAt(frame);
  const jettyX = isClose ? 0 : JETTY.x - pan * JETTY.parallax;
  pen.save();
  frameShot(pen, frame, isClose);
  sky(pen, sinceSplice(frame), pan);
  pen.drawImage(layers.bank, -pan, 0, SHORE.width, BANK_HEIGHT);
  flags(pen, frame, pan);
  water(pen, frame, pan, layers);
  if (!isClose) skiff(pen, frame, pan);
  jetty(pen, jettyX);
  child(pen, JETTY.childX + jettyX, JETTY.childY, frame);
  dog(pen, JETTY.dogX + jettyX, JETTY.childY + 2, frame);
  if (!isClose) reeds(pen, frame, pan);
  pen.restore();
}
