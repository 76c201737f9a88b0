import { statSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { filmPosition } from '../../src/core/file/film-position.ts';
import { measuredKeepList } from '../../src/core/file/measured-keep-list.ts';
import { makeEqualShutter } from '../../src/core/gate/shutter.ts';
import demoFilm from '../../src/ui/recording/demo-film.json';
import demoGate from '../../src/ui/recording/demo-gate.json';
import {
  demoLuma,
  demoPath,
  demoTruths,
  readDemoFilm,
  readDemoGate,
} from '../tools/demo-recordings/demo-readings.ts';
import { chainTitle, runsWholeChain } from '../tools/ffmpeg.ts';
import { bandsByHand, frameSecondsOf, gramByHand } from '../tools/measured-by-hand.ts';

const [gate, film] = demoTruths();

const rounded = (_: string, value: unknown): unknown =>
  typeof value === 'number' ? Number(Number(value.toPrecision(8)).toPrecision(6)) : value;

describe('the demo recordings', () => {
  it('weigh less than 400 kB together', () => {
    expect(statSync(demoPath(gate)).size + statSync(demoPath(film)).size).toBeLessThan(400_000);
  });

  it('hold a whole camera frame for every film frame', () => {
    const whole = film.wholeFilmFrames!.filter((each) => each !== null);
    const first = Math.min(...whole);
    const last = Math.max(...whole);
    expect(last - first).toBeGreaterThan(140);
    expect(new Set(whole).size).toBe(last - first + 1);
  });
});

describe.skipIf(!runsWholeChain)(chainTitle('the coded demo recordings'), () => {
  it.each([gate, film])('keep the times of their camera frames: $fileName', (truth) => {
    const seconds = frameSecondsOf(demoPath(truth));
    expect(seconds).toHaveLength(truth.positions.length);
    seconds.forEach((time, at) => {
      expect(time).toBeCloseTo(at / truth.cameraFps, 5);
    });
  });

  it('still flicker at the flash rate of the gate', () => {
    const bands = bandsByHand(demoLuma(gate));
    const means = Array.from({ length: 12 }, (_, band) =>
      bands.reduce((sum, frame) => sum + frame[band]! / bands.length, 0),
    );
    /** Strength of a flash rate in the light of the bands, each at its own moment. */
    const strength = (filmFps: number): number => {
      let cosine = 0;
      let sine = 0;
      bands.forEach((frame, at) => {
        frame.forEach((light, band) => {
          const time = at / gate.cameraFps + ((band + 0.5) / 12) * gate.readoutSeconds;
          const turn = 2 * Math.PI * filmFps * gate.flashesPerFrame * time;
          cosine += (light / means[band]! - 1) * Math.cos(turn);
          sine += (light / means[band]! - 1) * Math.sin(turn);
        });
      });
      return Math.hypot(cosine, sine) / (bands.length * 12);
    };
    const rates = Array.from({ length: 401 }, (_, at) => 17 + at / 200);
    const strongest = rates.reduce((best, rate) => (strength(rate) > strength(best) ? rate : best));
    expect(Math.abs(strongest / gate.filmFps - 1)).toBeLessThan(0.001);
    expect(strength(strongest)).toBeGreaterThan(0.03);
  });

  it('give what the sheet of the empty gate prints before a file is there', () => {
    const reading = readDemoGate();
    if (reading.kind !== 'reading') throw new Error(reading.reason);
    // As the book prints it, and as another machine may round it.
    expect(JSON.parse(JSON.stringify(reading, rounded))).toEqual(
      JSON.parse(JSON.stringify(demoGate, rounded)),
    );
    const { filmFps, errorFps } = reading.filmRate!;
    expect(Math.abs(filmFps - gate.filmFps)).toBeLessThan(errorFps);
    const late = Math.abs(reading.readoutSeconds! - gate.readoutSeconds);
    expect(late).toBeLessThan(reading.readoutErrorSeconds!);
  });

  it('give what the sheet of the film prints before a file is there', () => {
    expect(JSON.parse(JSON.stringify(readDemoFilm(), rounded))).toEqual(
      JSON.parse(JSON.stringify(demoFilm, rounded)),
    );
  });

  it('still change from film frame to film frame, and not within one', () => {
    const { frames } = demoLuma(film);
    const within: number[] = [];
    const across: number[] = [];
    let before = -1;
    film.wholeFilmFrames!.forEach((whole, at) => {
      if (whole === null) return;
      if (before >= 0) {
        const change = frames[at]!.reduce(
          (sum, code, place) => sum + Math.abs(code - frames[before]![place]!),
          0,
        );
        const isSame = film.wholeFilmFrames![before] === whole;
        (isSame ? within : across).push(change / frames[at]!.length);
      }
      before = at;
    });
    expect(within.length).toBeGreaterThan(20);
    expect(across.length).toBeGreaterThan(20);
    const middle = (list: number[]): number => list.sort((a, b) => a - b)[list.length >> 1]!;
    expect(middle(across)).toBeGreaterThan(3 * middle(within));
  });

  it('give every film frame whole and once, with what the bench would enter', () => {
    const gram = new Float64Array(gramByHand(demoLuma(film)).flatMap((numbers) => [...numbers]));
    const motion = { frameSeconds: Float64Array.from(frameSecondsOf(demoPath(film))), gram };
    const bench = {
      filmFps: 18,
      shutter: makeEqualShutter(film.flashesPerFrame, 0.5),
      exposureSeconds: film.exposureSeconds,
      readoutSeconds: film.readoutSeconds,
    };
    const position = filmPosition(motion, bench);
    if (position.kind !== 'position') throw new Error(position.reason);
    expect(Math.abs(position.filmFps / film.filmFps - 1)).toBeLessThan(0.001);
    const { frames } = measuredKeepList(position, motion, bench);
    expect(frames.length).toBeGreaterThan(138);
    const truth = frames.map(({ cameraFrame }) => film.wholeFilmFrames![cameraFrame]);
    expect(truth).toEqual(frames.map((_, at) => truth[0]! + at));
    expect(frames.every(({ status }) => status === 'whole')).toBe(true);
  });
});
