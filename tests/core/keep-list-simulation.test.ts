import Fraction from 'fraction.js';
import { describe, expect, test } from 'vitest';
import {
  isSureFilmFrame,
  keepTrust,
  provenWanderPercent,
  tiesNeeded,
  wanderBornePercent,
  type KeepBench,
} from '../../src/core/file/keep-drift.ts';
import { cameraFrameInReel, makeKeepReel, type KeepTie } from '../../src/core/file/keep-ties.ts';
import {
  dice,
  tieByEye,
  unequalBlades,
  wander,
  wanderingRun,
  WANDERS,
  wholeFilmFrame,
  type Bench,
  type Run,
} from '../tools/film-run.ts';

/** Time step of the wander, s; shorter than an exposure, so the speed changes inside one. */
const STEP_SECONDS = 0.004;

interface Machine {
  readonly bench: Bench;
  readonly keepBench: KeepBench;
  readonly run: Run;
  readonly steadyFps: number;
  readonly wanderPercent: number;
}

interface Wish {
  readonly filmFrames: number;
  readonly wanderPercent: number;
  readonly kind: (typeof WANDERS)[number];
  /** Step of the wander in simulated steps; more is slower. */
  readonly slowness: number;
}

/** A machine at random that can hold whole frames, and the way its speed goes along the reel. */
function machine(roll: () => number, wish: Wish): Machine {
  const steadyFps = 14 + 12 * roll();
  const count = 2 + Math.floor(2 * roll());
  const open = 0.4 + 0.2 * roll();
  const closed = 1 - open;
  const pulldown = roll() < 0.5 ? closed / count : (closed / count) * (0.8 + 0.5 * roll());
  const narrowest = Math.min((closed - pulldown) / (count - 1), pulldown);
  const wipe = roll() < 0.5 ? 0 : 0.3 * narrowest * roll();
  const cameraFps = [50, 60, 100, 120][Math.floor(4 * roll())] ?? 50;
  const exposureSeconds = Math.min(1 / cameraFps, 1 / steadyFps / count);
  const readoutSeconds = roll() < 0.3 ? 0 : 0.3 * roll() * (1 / cameraFps);
  return {
    bench: {
      blades: unequalBlades(count, open, pulldown),
      wipe,
      exposureSeconds,
      readoutSeconds,
      cameraFps,
    },
    keepBench: {
      cameraFps,
      exposureSeconds,
      readoutSeconds,
      pulldownDarkFraction: pulldown - wipe,
      longestDarkFraction: Math.max(pulldown, (closed - pulldown) / (count - 1)) - wipe,
    },
    run: runOf(roll, steadyFps, wish),
    steadyFps,
    wanderPercent: wish.wanderPercent,
  };
}

function runOf(roll: () => number, steadyFps: number, wish: Wish): Run {
  const steps = Math.ceil((wish.filmFrames + 60) / steadyFps / STEP_SECONDS / wish.slowness);
  const share = wander(wish.kind, steps, roll);
  const speeds = share
    .flatMap((each) => Array.from({ length: wish.slowness }, () => each))
    .map((each) => steadyFps * (1 + (each * wish.wanderPercent) / 100));
  return wanderingRun(STEP_SECONDS, speeds, -(2 + roll()));
}

/** Ties as a worker reads them, at the given film frames. */
function readTies(
  { bench, run }: Machine,
  filmFrames: readonly number[],
  overlooked: number,
): readonly KeepTie[] | undefined {
  const ties = filmFrames.map((filmFrame) => ({
    filmFrame,
    cameraFrame: tieByEye(bench, run, filmFrame, overlooked),
  }));
  const isTie = (tie: (typeof ties)[number]): tie is KeepTie => tie.cameraFrame !== undefined;
  return ties.every(isTie) ? ties : undefined;
}

const evenly = (count: number, filmFrames: number): readonly number[] =>
  Array.from({ length: count }, (_, tie) => Math.round((tie * (filmFrames - 1)) / (count - 1)));

describe('keep list against a film whose speed wanders', () => {
  test('every film frame that is called sure has a whole camera frame in the list', () => {
    const roll = dice(21);
    let sure = 0;
    let unsure = 0;
    let blendedAmongUnsure = 0;
    for (let trial = 0; trial < 1500; trial += 1) {
      const filmFrames = 40 + Math.floor(160 * roll());
      const wanderPercent = [0, 0.1, 0.2, 0.5, 1, 2][Math.floor(6 * roll())] ?? 0;
      const kind = WANDERS[trial % WANDERS.length] ?? 'sine';
      const slowness = [1, 5, 50][Math.floor(3 * roll())] ?? 1;
      const made = machine(roll, { filmFrames, wanderPercent, kind, slowness });
      const tieCount = 1 + Math.floor(4 * roll());
      const places = tieCount === 1 ? [0] : evenly(tieCount, filmFrames);
      const ties = readTies(made, places, roll() < 0.5 ? 0 : 0.1 * roll());
      if (ties === undefined) continue;
      const rateErrorPercent = 0.5 * roll();
      const typedFps = made.steadyFps * (1 + ((roll() * 2 - 1) * rateErrorPercent * 0.99) / 100);
      const reel = makeKeepReel(
        ties,
        new Fraction(typedFps.toFixed(9)),
        new Fraction(made.bench.cameraFps),
        filmFrames,
      );
      const trust = keepTrust(reel, made.keepBench, { rateErrorPercent, wanderPercent });
      for (let filmFrame = 0; filmFrame < filmFrames; filmFrame += 1) {
        const kept = cameraFrameInReel(reel, filmFrame);
        const held = wholeFilmFrame(made.bench, made.run, kept / made.bench.cameraFps, 9);
        if (isSureFilmFrame(trust, filmFrame)) {
          sure += 1;
          if (held !== filmFrame) {
            expect.fail(
              `film frame ${filmFrame} of ${filmFrames} called sure, ${kind}, ties ${JSON.stringify(ties)}, ${JSON.stringify(made.bench)}`,
            );
          }
        } else {
          unsure += 1;
          if (held !== filmFrame) blendedAmongUnsure += 1;
        }
      }
    }
    expect(sure).toBeGreaterThan(10_000);
    expect(unsure).toBeGreaterThan(10_000);
    expect(blendedAmongUnsure).toBeGreaterThan(1000);
  }, 120_000);

  test.each([
    { swings: 4, least: 0.15, most: 0.3 },
    { swings: 1, least: 0.6, most: 0.75 },
  ])(
    'tied at both ends, 16 ms readout, ±0.1 % in $swings swings: $least to $most blended, none of them sure',
    ({ swings, least, most }) => {
      const filmFrames = 3600;
      const bench: Bench = {
        blades: unequalBlades(3, 0.5, 1 / 6),
        wipe: 0,
        exposureSeconds: 1 / 54,
        readoutSeconds: 0.016,
        cameraFps: 50,
      };
      const keepBench: KeepBench = {
        cameraFps: 50,
        exposureSeconds: 1 / 54,
        readoutSeconds: 0.016,
        pulldownDarkFraction: 1 / 6,
        longestDarkFraction: 1 / 6,
      };
      const steps = Math.ceil(((filmFrames + 60) / 18) * 100);
      const speeds = Array.from(
        { length: steps },
        (_, step) => 18 * (1 + 0.001 * Math.sin((2 * Math.PI * swings * step) / steps)),
      );
      const run = wanderingRun(0.01, speeds, -2.3);
      const made = { bench, keepBench, run, steadyFps: 18, wanderPercent: 0.1 };
      const ties = readTies(made, [0, filmFrames - 1], 0) ?? [];
      const reel = makeKeepReel(ties, new Fraction(18), new Fraction(50), filmFrames);
      const trust = keepTrust(reel, keepBench, { rateErrorPercent: 0.1, wanderPercent: 0.1 });
      const holds = (cameraFrame: number, filmFrame: number): boolean =>
        wholeFilmFrame(bench, run, cameraFrame / 50, 9) === filmFrame;
      let blended = 0;
      let blendedAndSure = 0;
      let hasWhole = 0;
      for (let filmFrame = 0; filmFrame < filmFrames; filmFrame += 1) {
        const kept = cameraFrameInReel(reel, filmFrame);
        const isBlended = !holds(kept, filmFrame);
        if (isBlended) blended += 1;
        if (isBlended && isSureFilmFrame(trust, filmFrame)) blendedAndSure += 1;
        const near = [0, -1, 1, -2, 2, -3, 3, -4, 4, -5, 5, -6, 6, -7, 7];
        if (near.some((by) => holds(kept + by, filmFrame))) hasWhole += 1;
      }
      // The recording holds a whole frame of each; the list misses many of them.
      expect(hasWhole).toBe(filmFrames);
      expect(blended / filmFrames).toBeGreaterThan(least);
      expect(blended / filmFrames).toBeLessThan(most);
      expect(blendedAndSure).toBe(0);
      expect(trust.sureFilmFrames).toBeLessThan(filmFrames / 20);
    },
    60_000,
  );

  test('so many ties as it asks for make the whole list sure', () => {
    const roll = dice(22);
    let tried = 0;
    for (let trial = 0; trial < 200; trial += 1) {
      const filmFrames = 300;
      const wanderPercent = 0.1 + 0.4 * roll();
      const made = machine(roll, { filmFrames, wanderPercent, kind: 'sine', slowness: 20 });
      const open = makeKeepReel(
        readTies(made, [0], 0) ?? [{ filmFrame: 0, cameraFrame: 10 }],
        new Fraction(made.steadyFps.toFixed(9)),
        new Fraction(made.bench.cameraFps),
        filmFrames,
      );
      const count = tiesNeeded(open, made.keepBench, wanderPercent);
      if (count === undefined || count > 60) continue;
      const ties = readTies(made, evenly(count, filmFrames), 0);
      if (ties === undefined) continue;
      tried += 1;
      const reel = makeKeepReel(
        ties,
        new Fraction(made.steadyFps.toFixed(9)),
        new Fraction(made.bench.cameraFps),
        filmFrames,
      );
      const trust = keepTrust(reel, made.keepBench, { rateErrorPercent: 0, wanderPercent });
      expect(trust.sureFilmFrames, JSON.stringify({ made, count })).toBe(filmFrames);
    }
    expect(tried).toBeGreaterThan(40);
  }, 60_000);

  test('the wander that it says the list bears is borne, and a little more is not', () => {
    const roll = dice(23);
    let tried = 0;
    for (let trial = 0; trial < 100; trial += 1) {
      const filmFrames = 200;
      const made = machine(roll, { filmFrames, wanderPercent: 0.2, kind: 'walk', slowness: 20 });
      const ties = readTies(made, evenly(4, filmFrames), 0);
      if (ties === undefined) continue;
      const rate = new Fraction(made.steadyFps.toFixed(9));
      const reel = makeKeepReel(ties, rate, new Fraction(made.bench.cameraFps), filmFrames);
      const borne = wanderBornePercent(reel, made.keepBench, 0);
      if (borne === undefined) continue;
      tried += 1;
      const sureAt = (wanderPercent: number): number =>
        keepTrust(reel, made.keepBench, { rateErrorPercent: 0, wanderPercent }).sureFilmFrames;
      expect(sureAt(borne)).toBe(filmFrames);
      expect(sureAt(borne + 0.0001)).toBeLessThan(filmFrames);
    }
    expect(tried).toBeGreaterThan(20);
  }, 60_000);

  test('ties never prove more wander than there is', () => {
    const roll = dice(24);
    let proved = 0;
    for (let trial = 0; trial < 300; trial += 1) {
      const filmFrames = 1200;
      const wanderPercent = roll();
      const kind = trial % 2 === 0 ? 'there-and-back' : 'walk';
      const made = machine(roll, { filmFrames, wanderPercent, kind, slowness: 50 });
      const ties = readTies(made, evenly(3, filmFrames), 0);
      if (ties === undefined) continue;
      const rate = new Fraction(made.steadyFps.toFixed(9));
      const reel = makeKeepReel(ties, rate, new Fraction(made.bench.cameraFps), filmFrames);
      const proven = provenWanderPercent(reel);
      expect(proven).toBeLessThanOrEqual(wanderPercent + 1e-9);
      if (proven > wanderPercent / 2) proved += 1;
    }
    expect(proved).toBeGreaterThan(30);
  }, 60_000);
});
