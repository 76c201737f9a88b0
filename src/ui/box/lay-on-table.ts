import { reelName, reelOf, type Box } from '../../worksheets/box/job.ts';
import {
  gaugeOf,
  judgedReel,
  projectorRefusal,
  reelNumber,
  triageEntries,
} from '../../worksheets/box/reel-reading.ts';
import type { Reel } from '../../worksheets/box/job.ts';
import type { BenchTexts } from '../bench/bench-state.ts';
import { tableReelText, type TableReel } from '../bench/table-reel.ts';
import { TABLE_KEY } from '../islands/kept-opening.ts';
import { readSound } from '../../worksheets/box/reel-fields.ts';

/** The text of a field where it can be used. */
function usable(
  reel: Reel,
  field: 'nativeFps' | 'filmFps' | 'exposureSeconds',
): string | undefined {
  return reelNumber(reel, field) === undefined ? undefined : reel.texts[field];
}

/** The length as every sheet reads it: a bare number means metres in the box as there. */
function lengthText(reel: Reel): string | undefined {
  if (reelNumber(reel, 'lengthMetres') !== undefined) return reel.texts.lengthMetres;
  return reelNumber(reel, 'size') === undefined ? undefined : reel.texts.size;
}

function without<Value>(
  record: Readonly<Record<string, Value | undefined>>,
): Readonly<Record<string, Value>> {
  const filled = Object.entries(record).filter(
    (pair): pair is [string, Value] => pair[1] !== undefined,
  );
  return Object.fromEntries(filled);
}

/** Why the reel must not go on the projector, as far as it is known; every sheet says it. */
function whyNotRun(reel: Reel, projectorGauge: string): string | undefined {
  const { triage, sentence } = judgedReel(reel);
  if (triage.verdict === 'do-not-open') return sentence;
  if (gaugeOf(reel) === undefined) {
    return 'Its gauge is not known: nothing is threaded before it is.';
  }
  const refusal = projectorRefusal(reel, projectorGauge);
  if (refusal !== undefined) return refusal;
  return triage.verdict === 'run' || triage.verdict === 'run-slowly' ? undefined : sentence;
}

/** What the sheets of the book are told about the reel on the table. */
export function tableReel(box: Box, projectorGauge: string): TableReel | undefined {
  const reel = box.onTable === undefined ? undefined : reelOf(box, box.onTable);
  if (box.onTable === undefined || reel === undefined) return undefined;
  const entries: BenchTexts = without({
    'reel.gauge': gaugeOf(reel),
    'reel.nativeFps': usable(reel, 'nativeFps'),
    'reel.lengthMetres': lengthText(reel),
    'reel.count': '1',
    'projector.filmFps': usable(reel, 'filmFps'),
    'camera.exposureSeconds': usable(reel, 'exposureSeconds'),
  });
  const sound = readSound(reel.texts.sound ?? '');
  // Its gauge is told by the field of the bench.
  const findings = Object.fromEntries(
    Object.entries(triageEntries(reel)).filter(([key]) => key !== 'gauge'),
  );
  return {
    name: reelName(reel),
    ...box.onTable,
    entries,
    sheets: {
      'condition-triage': findings,
      ...(sound === undefined
        ? {}
        : { 'customer-options': { sound: sound === 'none' ? 'silent' : 'sound' } }),
    },
    refusal: whyNotRun(reel, projectorGauge) ?? '',
    judgedFor: projectorGauge,
  };
}

/**
 * Writes what the sheets are told, or takes it away. Where the store has no room the sheets go on with
 * the bench alone: an older reel must not speak for the new one.
 */
export function layOnTable(
  reel: TableReel | undefined,
  openStorage: () => Storage,
  page: EventTarget,
): void {
  try {
    const storage = openStorage();
    const text = reel === undefined ? null : tableReelText(reel);
    if (storage.getItem(TABLE_KEY) === text) return;
    storage.removeItem(TABLE_KEY);
    if (text !== null) storage.setItem(TABLE_KEY, text);
  } catch {
    // Taken away already, or blocked, where nothing was kept before.
  }
  page.dispatchEvent(new Event(TABLE_KEY));
}
