import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { makeAnyFilmInGate } from '../../src/scene/gate/any-film-in-gate.ts';
import { SOUND_FILM } from '../../src/scene/gate/film-faults.ts';
import type { Look } from '../../src/scene/looks/look.ts';
import { LOOKS, sideOf, type LookId } from '../../src/scene/looks/looks.ts';
import { strokeAt } from '../../src/scene/drawing/stroke.ts';
import { makePaper } from './paper.ts';
import { goldenBlocks, GOLDEN_FILM_FRAMES, GOLDEN_FILE } from './golden.ts';

const film = makeAnyFilmInGate(makePaper, 320);
const ids = Object.keys(LOOKS) as LookId[];

describe('film in the gate', () => {
  it('is the same film frame to the byte whenever it is drawn', () => {
    for (const id of ['sound', 'dust', 'smear-up', 'warped'] as const) {
      const faults = sideOf(LOOKS[id]).film;
      const once = film(61, faults);
      film(7, SOUND_FILM);
      film(62, faults);
      expect(Buffer.compare(Buffer.from(film(61, faults)), Buffer.from(once))).toBe(0);
      const anew = makeAnyFilmInGate(makePaper, 320)(61, faults);
      expect(Buffer.compare(Buffer.from(anew), Buffer.from(once))).toBe(0);
    }
  });

  it('moves on from film frame to film frame', () => {
    const [first, second] = [60, 61].map((frame) => film(frame, SOUND_FILM));
    expect(Buffer.compare(Buffer.from(first!), Buffer.from(second!))).not.toBe(0);
  });

  it('looks as it did when it was last looked at, block by block', () => {
    const golden = JSON.parse(readFileSync(GOLDEN_FILE, 'utf8')) as Record<string, number[]>;
    expect(Object.keys(golden).length).toBeGreaterThanOrEqual(6);
    for (const [name, frame, faults] of GOLDEN_FILM_FRAMES) {
      const blocks = goldenBlocks(film(frame, faults), 320);
      const expected = golden[name]!;
      expect(blocks).toHaveLength(expected.length);
      // Two makes of the drawing library differ at the edges: the means of blocks by a code or two.
      blocks.forEach((mean, at) => {
        expect(Math.abs(mean - expected[at]!), `${name}, block ${at}`).toBeLessThanOrEqual(2);
      });
    }
  });

  it('has a look for every fault, and each changes the picture or the way it is filmed', () => {
    expect(ids.length).toBeGreaterThanOrEqual(29);
    const sound = sideOf(LOOKS.sound);
    const drawn = new Map<number, Uint8ClampedArray>();
    const wellAt = (at: number): Uint8ClampedArray => {
      const well = drawn.get(at) ?? film(at, sound.film);
      drawn.set(at, well);
      return well;
    };
    for (const id of ids) {
      if (id === 'sound') continue;
      const side = sideOf(LOOKS[id]);
      const isOther =
        JSON.stringify([side.film, side.bench, side.tone, side.file]) !==
        JSON.stringify([sound.film, sound.bench, sound.tone, sound.file]);
      expect(isOther, id).toBe(true);
      if (JSON.stringify(side.film) === JSON.stringify(sound.film)) continue;
      const { filmFrame: from = 60, wants } = LOOKS[id] as Look;
      // In strips thirteen pictures are seen: the splice passes among them.
      const frames = Array.from({ length: wants === 'strips' ? 13 : 1 }, (_, at) => from + at);
      let changed = 0;
      for (const at of frames) {
        // Enough is seen: the rest of the strips need not be drawn.
        if (changed > 100) break;
        const [faulty, well] = [film(at, side.film), wellAt(at)];
        for (let byte = 0; byte < well.length; byte += 4) {
          if (Math.abs(faulty[byte]! - well[byte]!) > 8) changed += 1;
        }
      }
      expect(changed, id).toBeGreaterThan(100);
    }
  });

  it('keeps dust on the film and the hair in the gate', () => {
    // A dark film: where the plate lies nothing of the film may shine.
    const mirrored = film(60, { ...SOUND_FILM, mirrored: 1 });
    const faded = film(60, { ...SOUND_FILM, fade: 1 });
    for (const picture of [mirrored, faded]) {
      expect([...picture.subarray(0, 3)].every((code) => code < 8)).toBe(true);
    }
  });
});

describe('the stroke', () => {
  it('takes the blades aft through the water and forward through the air', () => {
    for (let frame = 0; frame < 36; frame += 1) {
      const [now, next] = [strokeAt(frame), strokeAt(frame + 0.5)];
      if (now.isDrive && next.isDrive) {
        expect(next.turn).toBeLessThan(now.turn);
        expect(now.lift).toBeLessThanOrEqual(0);
      }
      if (!now.isDrive && !next.isDrive) {
        expect(next.turn).toBeGreaterThan(now.turn);
        expect(now.lift).toBeGreaterThanOrEqual(0);
      }
    }
    // At the catch the blades are at the bow side and the hands at the stern.
    expect(strokeAt(0).turn).toBeGreaterThan(0.5);
    expect(strokeAt(0).pulled).toBe(0);
  });
});
