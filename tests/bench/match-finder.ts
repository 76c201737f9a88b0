// The match finder over 20 camera rates × 40 exposure times × 200 film rates, against judging every
// combination with the general exact ripple and sorting them all. Lists first, times after.
import assert from 'node:assert/strict';
import { cpus } from 'node:os';
import { findMatches, searchMatches, type FinderBench } from '../../src/core/gate/match-finder.ts';
import { isLong } from './parts/is-long.ts';
import { judgeAllByTrial, rankByTrial } from '../tools/match-by-trial.ts';

const FAST_ROUNDS = isLong ? 200 : 60;
const SLOW_ROUNDS = isLong ? 5 : 2;
const LONGEST = 12;

const spread = (from: number, to: number, count: number): readonly number[] =>
  Array.from({ length: count }, (_, index) => from + ((to - from) * index) / (count - 1));

const bench: FinderBench = {
  filmRates: spread(14, 26, 200),
  flashesPerFrame: 3,
  openFraction: 0.5,
  cameraRates: spread(20, 60, 20),
  exposureTimes: spread(1 / 200, 1 / 24, 40),
  readoutSeconds: 0,
  nativeFps: 18,
  rippleLimitPercent: 2,
  speedErrorPercent: 0.5,
};

interface Place {
  readonly filmFps: number;
  readonly cameraFps: number;
  readonly exposureSeconds: number;
}

const place = ({ filmFps, cameraFps, exposureSeconds }: Place): string =>
  [filmFps, cameraFps, exposureSeconds].map((one) => one.toPrecision(9)).join(', ');

function fast(): readonly Place[] {
  return findMatches(bench, LONGEST).best;
}

function sliced(): readonly Place[] {
  const search = searchMatches(bench, LONGEST, 4000);
  let step = search.next();
  while (step.done !== true) step = search.next();
  return step.value.best;
}

function general(): readonly Place[] {
  return rankByTrial(judgeAllByTrial(bench), bench).slice(0, LONGEST);
}

const tried = judgeAllByTrial(bench);
const all = rankByTrial(tried, bench);
const found = findMatches(bench, 1_000_000);
assert.equal(found.combinations, tried.length);
assert.ok(all.length > 100, 'the bench must have usable settings to rank');
assert.deepEqual(found.best.map(place), all.map(place));
assert.deepEqual(fast().map(place), general().map(place));
assert.deepEqual(sliced().map(place), general().map(place));

function timesOf(work: () => unknown, rounds: number): readonly number[] {
  work();
  return Array.from({ length: rounds }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  }).sort((a, b) => a - b);
}

const at = (sorted: readonly number[], share: number): number =>
  sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? 0;

const [processor] = cpus();
console.log(
  `${new Date().toISOString().slice(0, 10)} · ${cpus().length} × ${processor?.model ?? 'unknown'} · Node ${process.versions.node}`,
);
console.log(
  `${found.combinations} combinations, ${found.usable} usable; all lists equal before timing`,
);
console.log(
  `${'way'.padEnd(34)}${'rounds'.padStart(8)}${'median ms'.padStart(12)}${'p95 ms'.padStart(12)}`,
);
for (const [name, work, rounds] of [
  ['closed form, in one go', fast, FAST_ROUNDS],
  ['closed form, in slices of 4000', sliced, FAST_ROUNDS],
  ['general ripple, judge and sort all', general, SLOW_ROUNDS],
] as const) {
  const times = timesOf(work, rounds);
  const cells = [String(rounds), at(times, 0.5).toFixed(2), at(times, 0.95).toFixed(2)];
  console.log(
    `${name.padEnd(34)}${cells[0]!.padStart(8)}${cells[1]!.padStart(12)}${cells[2]!.padStart(12)}`,
  );
}
