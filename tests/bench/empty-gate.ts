// How long the reading of ten seconds of an empty gate takes, by camera rate.
import assert from 'node:assert/strict';
import { readEmptyGate } from '../../src/core/gate/recording/read-empty-gate.ts';
import { makeEqualShutter } from '../../src/core/gate/shutter.ts';
import { isLong } from './parts/is-long.ts';
import { CLUB_GATE, simulateGate, type GateScene } from '../core/gate/recording/simulated-gate.ts';

const ROUNDS = isLong ? 8 : 3;

const scene: GateScene = { ...CLUB_GATE, seed: 11, wanderShare: 0.004 };
const bench = {
  nominalFilmFps: 18,
  flashesPerFrame: 3,
  shutter: makeEqualShutter(3, 0.5),
  exposureSeconds: 1 / 50,
  mainsHz: 50,
  rippleLimitPercent: 1,
};

for (const cameraFps of [25, 30_000 / 1001, 50, 60_000 / 1001]) {
  const recording = simulateGate({
    ...scene,
    cameraFps,
    readoutSeconds: Math.min(0.012, 0.9 / cameraFps),
  });
  const reading = readEmptyGate(recording, bench);
  assert.ok(reading.kind === 'reading' && reading.filmRate !== undefined);
  assert.ok(Math.abs(reading.filmRate.filmFps / recording.meanFilmFps - 1) < 3e-4);
  const times = Array.from({ length: ROUNDS }, () => {
    const start = performance.now();
    readEmptyGate(recording, bench);
    return performance.now() - start;
  }).sort((a, b) => a - b);
  console.log(
    `${cameraFps.toFixed(2).padStart(6)} frames/s: ${times[Math.floor(ROUNDS / 2)]!.toFixed(0)} ms for a clip of 10 s (median of ${ROUNDS})`,
  );
}
