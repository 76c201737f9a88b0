import Fraction from 'fraction.js';
import { FILE_NAMES } from '../../../core/file/file-names.ts';
import {
  requireScriptEntries,
  type ReelScriptEntries,
  type ScriptSound,
} from '../../../core/file/reel-script/script-entries.ts';
import { scriptSteps } from '../../../core/file/reel-script/script-steps.ts';
import { cropRectangle } from '../../../core/gate/picture-crop.ts';
import { nearestSimpleRatio } from '../../../quantity/simple-ratio.ts';
import { findKeepList, type KeepFindings } from '../keep-list/findings.ts';
import { keepVerdict } from '../keep-list/words.ts';
import { codeRangeForCommand, PICTURE_TURNS } from '../recording-inputs.ts';
import type { ScriptEntries, ScriptRates } from './inputs.ts';

/** Longest denominator of a film rate that was measured, not set. */
const LONGEST_MEASURED_RATE = 10_000;

/** A list in a file says nothing here of how sure it is. */
const MEASURED_LIST = {
  level: 'care',
  sentence: `The film frames are those that ${FILE_NAMES.keepFilter} names. The page that measured them says how sure they are.`,
} as const;

/** Film rate while the sound was taken: as typed, or that of the picture. */
function takenFpsOf(
  { takenFps, keepBy }: ScriptEntries,
  rates: ScriptRates,
  { ends }: KeepFindings,
) {
  const measured = takenFps ?? (keepBy === 'ties' ? ends?.filmFps : undefined);
  return measured === undefined
    ? rates.filmFps
    : nearestSimpleRatio(new Fraction(measured), LONGEST_MEASURED_RATE);
}

function soundOf(
  entries: ScriptEntries,
  rates: ScriptRates,
  keep: KeepFindings,
): ScriptSound | undefined {
  if (entries.sound === 'none') return undefined;
  const { soundOffSeconds, soundWay, sampleRate } = entries;
  return {
    fileName: entries.soundName,
    takenFps: takenFpsOf(entries, rates, keep),
    sampleRateHz: Number(sampleRate),
    // Nothing to move is plain zero, whichever way was chosen.
    lateSeconds: soundWay === 'early' && soundOffSeconds > 0 ? -soundOffSeconds : soundOffSeconds,
  };
}

/** The numbers of the reel as the script takes them, with what its keep list is worth. */
export function findScript(entries: ScriptEntries, rates: ScriptRates) {
  const keep = findKeepList(entries, rates);
  const script: ReelScriptEntries = {
    reelName:
      entries.reelName === ''
        ? `${entries.filmFrames} film frames at ${rates.nativeFps.toFraction(true)} a second`
        : entries.reelName,
    recordingName: entries.recordingName,
    cameraFps: rates.cameraFps,
    nativeFps: rates.nativeFps,
    deliveryFps: rates.deliveryFps,
    keep:
      entries.keepBy === 'list'
        ? { by: 'file', filmFrames: entries.filmFrames }
        : { by: 'ties', reel: keep.reel },
    recorded: {
      turn: PICTURE_TURNS[entries.turn],
      codeRange: codeRangeForCommand(entries.codeRange),
    },
    crop:
      entries.copyShows === 'cropped'
        ? cropRectangle(entries, entries.trimPercent / 100)
        : undefined,
    sound: soundOf(entries, rates, keep),
  };
  requireScriptEntries(script);
  const list = entries.keepBy === 'list' ? MEASURED_LIST : keepVerdict(keep, entries);
  const isPossible = list.level !== 'stop';
  return {
    script,
    list,
    /** Without a keep list that can be made there is no script. */
    steps: isPossible ? scriptSteps(script) : undefined,
    /** New speed of the sound against the old. */
    soundRatio:
      script.sound === undefined ? undefined : rates.nativeFps.div(script.sound.takenFps).valueOf(),
  };
}

export type ScriptFindings = ReturnType<typeof findScript>;
