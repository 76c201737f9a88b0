import type { BenchNumbers } from '../../scene/camera/setting.ts';
import { parseEntry, type Entries } from '../../worksheets/machine/evaluate.ts';
import type { Worksheet } from '../../worksheets/machine/types.ts';

/**
 * The bench of a scene from entries of the flash match, as they are typed.
 *
 * @param flashMatch  the worksheet whose inputs they are
 * @param entries     a text for each input
 * @throws {Error} with the reader's message, for an entry that the worksheet refuses
 */
export function benchFromEntries(flashMatch: Worksheet, entries: Entries): BenchNumbers {
  const read = (key: string, angleFps?: number): number | undefined => {
    const spec = flashMatch.inputs[key];
    if (spec === undefined) throw new Error(`the flash match has no input “${key}”`);
    const parsed = parseEntry(spec, entries[key] ?? spec.default, angleFps);
    if (!parsed.ok) throw new Error(`${key}: ${parsed.reason}`);
    return parsed.value.value as number | undefined;
  };
  const needed = (key: string, angleFps?: number): number => {
    const value = read(key, angleFps);
    if (value === undefined) throw new Error(`${key} is missing`);
    return value;
  };
  const cameraFps = needed('cameraFps');
  return {
    filmFps: needed('filmFps'),
    flashesPerFrame: needed('flashesPerFrame'),
    openFraction: needed('openPercent') / 100,
    pulldownBladeDegrees: read('pulldownBladeDegrees'),
    edgeWipeDegrees: read('edgeWipeDegrees'),
    cameraFps,
    exposureSeconds: needed('exposureSeconds', cameraFps),
    // Not measured counts as the worst: a whole camera frame.
    readoutSeconds: read('readoutSeconds') ?? 1 / cameraFps,
  };
}
