// Time from typed entries to answers and working: what a reader waits for after a key press.
import { evaluate } from '../../src/worksheets/machine/evaluate.ts';
import type { Worksheet } from '../../src/worksheets/machine/types.ts';
import { isLong } from './parts/is-long.ts';
import { loadWorksheets } from './parts/load-worksheets.ts';
import { randomEntries, seededChance, seedOf } from '../worksheets/random-entries.ts';

const ROUNDS = isLong ? 400 : 120;
const WARM_UP = 40;

function milliseconds(worksheet: Worksheet): readonly number[] {
  const specs = worksheet.inputs;
  const chance = seededChance(seedOf(worksheet.id));
  const entries = Array.from({ length: ROUNDS }, () => randomEntries(specs, chance));
  for (const each of entries.slice(0, WARM_UP)) evaluate(worksheet, each);
  return entries
    .map((each) => {
      const start = performance.now();
      evaluate(worksheet, each);
      return performance.now() - start;
    })
    .sort((a, b) => a - b);
}

const at = (sorted: readonly number[], share: number): number =>
  sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? 0;

const rows = [...(await loadWorksheets()).values()]
  .map((worksheet) => ({ id: worksheet.id, times: milliseconds(worksheet) }))
  .sort((a, b) => at(b.times, 0.95) - at(a.times, 0.95));

console.log(
  `${'worksheet'.padEnd(30)}${'median ms'.padStart(11)}${'p95 ms'.padStart(9)}${'max ms'.padStart(9)}`,
);
for (const { id, times } of rows) {
  const [median, p95, longest] = [0.5, 0.95, 1].map((share) => at(times, share).toFixed(3));
  console.log(`${id.padEnd(30)}${median!.padStart(11)}${p95!.padStart(9)}${longest!.padStart(9)}`);
}
