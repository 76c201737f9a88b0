// Either side of every limit by which a recording of the gate is taken or refused.
import { describe, expect, it } from 'vitest';
import { BAND_COUNT, type BandLight } from '../../../../src/core/gate/band-light.ts';
import { unusableLight } from '../../../../src/core/gate/recording/gate-refusals.ts';
import { gateSamples } from '../../../../src/core/gate/recording/gate-samples.ts';
import { familyLines } from '../../../../src/core/gate/recording/light-lines.ts';
import { bandAttenuation, lineColumns } from '../../../../src/core/gate/recording/line-columns.ts';
import { periodicCurve } from '../../../../src/core/gate/recording/periodic-curve.ts';
import { phaseFromRates } from '../../../../src/core/gate/recording/film-phase.ts';
import { readEmptyGate } from '../../../../src/core/gate/recording/read-empty-gate.ts';
import { rhythmLine } from '../../../../src/core/gate/recording/rhythm-lines.ts';
import { makeEqualShutter } from '../../../../src/core/gate/shutter.ts';

/** Light that stays the same, band by band. */
function steadyLight(frames: number, band: (index: number) => number = () => 0.3): BandLight {
  return {
    frameSeconds: Float64Array.from({ length: frames }, (_, frame) => frame / 25),
    bands: Float64Array.from({ length: frames * BAND_COUNT }, (_, at) => band(at % BAND_COUNT)),
    clippedShare: 0,
    blackShare: 0,
  };
}

describe('light that is refused before any sum', () => {
  it.each([
    ['four seconds and ninety frames are enough', {}, 4, 90, undefined],
    ['a little less than four seconds is too short', {}, 3.999, 90, 'too-short'],
    ['so are eighty-nine frames', {}, 4, 89, 'too-short'],
    ['one sample in a hundred may be at the top', { clippedShare: 0.01 }, 4, 90, undefined],
    ['more is clipped', { clippedShare: 0.0101 }, 4, 90, 'clipped'],
    ['half of the samples may be black', { blackShare: 0.5 }, 4, 90, undefined],
    ['more than half is black', { blackShare: 0.501 }, 4, 90, 'black'],
  ] as const)('%s', (_, part, seconds, frames, reason) => {
    expect(unusableLight({ ...steadyLight(frames), ...part }, seconds)?.reason).toBe(reason);
  });

  it('is black where one band alone gets less than four thousandths, and named', () => {
    const with_ = (level: number) => steadyLight(90, (band) => (band === 7 ? level : 0.3));
    expect(unusableLight(with_(0.0041), 4)).toBeUndefined();
    expect(unusableLight(with_(0.0039), 4)).toMatchObject({ reason: 'black', band: 7 });
  });
});

describe('a clock that is none', () => {
  it('is refused with the time from the first camera frame on, whatever time the file begins at', () => {
    const light = steadyLight(120);
    const frameSeconds = light.frameSeconds.map((seconds) => 2 + seconds);
    frameSeconds[60] = frameSeconds[59]! - 0.01;
    const refusal = readEmptyGate(
      { ...light, frameSeconds },
      {
        nominalFilmFps: 18,
        flashesPerFrame: 3,
        shutter: makeEqualShutter(3, 0.5),
        exposureSeconds: 1 / 50,
        rippleLimitPercent: 1,
      },
    );
    if (refusal.kind === 'reading') throw new Error('read');
    expect(refusal.reason).toBe('irregular-times');
    expect(refusal.seconds).toBeCloseTo(59 / 25 - 0.01, 9);
  });
});

/** Samples at 25 frames/s whose light follows the film turn by turn. */
function samplesOf(
  seconds: number,
  levelAt: (turns: number) => number,
  filmFps: number,
  readout: number,
) {
  const frames = Math.round(seconds * 25);
  const bands = Float64Array.from({ length: frames * BAND_COUNT }, (_, at) => {
    const band = at % BAND_COUNT;
    // Mean over the rows of the band, a hundred of them.
    let sum = 0;
    for (let row = 0; row < 100; row += 1) {
      const late = ((band + (row + 0.5) / 100) / BAND_COUNT) * readout;
      sum += levelAt(filmFps * (Math.floor(at / BAND_COUNT) / 25 + late)) / 100;
    }
    return sum;
  });
  const light = { ...steadyLight(frames), bands };
  const frameNumbers = Int32Array.from({ length: frames }, (_, frame) => frame);
  return gateSamples(light, { cameraFps: 25, firstSeconds: 0, frameNumbers, missingFrames: 0 })!;
}

const motionOf = (filmFps: number, seconds: number, readoutSeconds: number) => ({
  phase: phaseFromRates([filmFps, filmFps], 10, seconds),
  readoutSeconds,
  lampHz: 0,
  nominalLampHz: 0,
});

describe('the curve of the light over a turn', () => {
  it('is the wave that was drawn, corner and all, whatever the rows average', () => {
    const saw = (turns: number): number => 1 + 0.3 * (turns - Math.floor(turns) - 0.5);
    const [filmFps, readout] = [17.3, 0.03];
    const samples = samplesOf(4, saw, filmFps, readout);
    const motion = motionOf(filmFps, 4, readout);
    const phases = 48;
    const { changes, isSeen, longestGapTurns } = periodicCurve(
      samples,
      samples.changes,
      motion,
      1,
      phases,
      1e-9,
    );
    const { phase } = motion;
    // Where the spline of the film starts, turns.
    const start =
      (phase.coefficients[0]! + 4 * phase.coefficients[1]! + phase.coefficients[2]!) / 6;
    for (let index = 0; index < phases; index += 1) {
      const turns = index / phases - start;
      const within = turns - Math.floor(turns);
      // At the corner itself a step of one phase is left open.
      if (within < 0.04 || within > 0.96) continue;
      expect(Math.abs(changes[index]! - (saw(turns) - 1))).toBeLessThan(0.015);
    }
    expect(isSeen.every(Boolean)).toBe(true);
    expect(longestGapTurns).toBe(0);
  });

  it('tells which phases were not filmed: with rows read at once and film in step with every third frame', () => {
    // 25 : 3 turns a second, so three places of the turn are met again and again.
    const filmFps = 25 / 3;
    const samples = samplesOf(4, (turns) => 1 + 0.1 * Math.cos(2 * Math.PI * turns), filmFps, 0);
    const { isSeen, longestGapTurns } = periodicCurve(
      samples,
      samples.changes,
      motionOf(filmFps, 4, 0),
      1,
      48,
      1e-9,
    );
    // 48 phases: one seen of sixteen, fifteen not.
    expect(longestGapTurns).toBeCloseTo(15 / 48, 12);
    // A phase next to a seen one, up to half of 1/24 of a turn away, counts as seen: three of sixteen.
    expect(isSeen.filter(Boolean)).toHaveLength(9);
  });
});

describe('the columns of lines', () => {
  it('are cosine and sine of each line at each row, less their mean in the band', () => {
    const [filmFps, readoutSeconds, lampHz] = [17.3, 0.021, 99.9];
    const samples = samplesOf(1.2, (turns) => 1 + 0.1 * Math.cos(turns), filmFps, readoutSeconds);
    const motion = { ...motionOf(filmFps, 1.2, readoutSeconds), lampHz, nominalLampHz: 100 };
    const lines = [...familyLines('shutter', 3), ...familyLines('lamp', 3)];
    const { coefficients } = motion.phase;
    const start = (coefficients[0]! + 4 * coefficients[1]! + coefficients[2]!) / 6;
    const columns = lineColumns(samples, lines, motion);
    expect(columns).toHaveLength(2 * lines.length);
    for (const [index, { film, lamp }] of lines.entries()) {
      for (const [part, wave] of [Math.cos, Math.sin].entries()) {
        const plain = Float64Array.from(samples.changes, (_, at) => {
          const seconds =
            Math.floor(at / BAND_COUNT) / 25 + (((at % BAND_COUNT) + 0.5) / 12) * readoutSeconds;
          const film_ = film * (start + filmFps * seconds);
          return wave(2 * Math.PI * (film_ + lamp * lampHz * (seconds - 0.6)));
        });
        const frames = plain.length / BAND_COUNT;
        for (const [at, value] of columns[2 * index + part]!.entries()) {
          const inBand = plain.filter((_, other) => other % BAND_COUNT === at % BAND_COUNT);
          const mean = inBand.reduce((sum, each) => sum + each, 0) / frames;
          expect(Math.abs(value - (plain[at]! - mean))).toBeLessThan(1e-9);
        }
      }
    }
  });

  it('lose by the rows of a band what the mean of a wave loses, and never more than four fifths', () => {
    const motion = motionOf(18, 1, 0.024);
    let sum = 0;
    for (let row = 0; row < 1000; row += 1)
      sum += Math.cos(2 * Math.PI * 54 * ((row - 499.5) / 1000) * (0.024 / 12)) / 1000;
    expect(bandAttenuation({ film: 3, lamp: 0 }, 18, motion)).toBeCloseTo(sum, 6);
    expect(bandAttenuation({ film: 0, lamp: 0 }, 18, motion)).toBe(1);
    expect(bandAttenuation({ film: 30, lamp: 0 }, 18, motion)).toBe(0.2);
  });
});

describe('a line of a rhythm', () => {
  it('has the power of its wave in each piece, and beside it the mean of what lies on both sides', () => {
    const turns = Float64Array.from({ length: 400 }, (_, at) => at / 20);
    const row = turns.map(
      (turn) => 3 * Math.cos(2 * Math.PI * 2 * turn + 0.4) + Math.cos(2 * Math.PI * 2.3 * turn),
    );
    const line = rhythmLine(row, turns, 4, 2);
    const powerAt = (multiple: number): number => {
      let power = 0;
      for (let piece = 0; piece < 4; piece += 1) {
        let [real, imaginary] = [0, 0];
        for (let at = 100 * piece; at < 100 * (piece + 1); at += 1) {
          real += row[at]! * Math.cos(2 * Math.PI * multiple * turns[at]!);
          imaginary += row[at]! * Math.sin(2 * Math.PI * multiple * turns[at]!);
        }
        power += real ** 2 + imaginary ** 2;
      }
      return power;
    };
    expect(line.power / powerAt(2)).toBeCloseTo(1, 9);
    expect(line.besidePower / ((powerAt(1.7) + powerAt(2.3)) / 2)).toBeCloseTo(1, 9);
  });
});
