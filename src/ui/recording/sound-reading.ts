import type { ClawNoiseReading, ClawNoiseReason } from '../../core/gate/recording/claw-noise.ts';
import { formatNumber } from '../../quantity/format.ts';
import { Thinking } from './thinking.ts';
import { withError } from './with-error.ts';

/** What the pictures of the same stretch tell of the film rate. */
export interface PicturesRate {
  readonly filmFps: number;
  readonly errorFps: number;
}

/** What is asked of the sound of a recording. */
export interface SoundQuestion {
  /** Stretch of the recording, s from its first frame. */
  readonly fromSeconds: number;
  readonly seconds: number;
  /** Rate by the pictures; undefined where they do not tell it. */
  readonly pictures: PicturesRate | undefined;
}

/** A second reading of the film rate, or why there is none; as sentences. */
export interface SoundReading {
  readonly level: 'good' | 'care' | 'note';
  readonly sentence: string;
}

const REASON_WORDS: Readonly<Record<ClawNoiseReason | 'no-sound' | 'slow-sound', string>> = {
  'no-sound': 'the recording has no sound.',
  'slow-sound': 'its sound has fewer than 8000 samples a second.',
  silent: 'its sound track is silent.',
  'too-short': 'it holds less than four seconds of sound.',
  'no-rhythm':
    'no steady rhythm of the projector is heard in it. Put the microphone near the gate, away from the fan.',
  clipped:
    'the sound is overloaded, and no steady rhythm is heard in it. Turn the recording level down.',
};

const SLOWEST_SAMPLES = 8000;
/** Film rates that the sound is searched for, and how far around the pictures’ rate at least. */
const USUAL = { least: 12, most: 30 };
const AROUND = 1.35;
/** Clocks of sound and picture, and speed that wanders between the two stretches, as a share. */
const CLOCKS_SHARE = 0.002;

const NOTHING = (reason: string): SoundReading => ({
  level: 'note',
  sentence: `No second reading from the sound: ${reason}`,
});

const NO_CLAW =
  'a rhythm is heard, but not the claw once a film frame: it may be the wind of the shutter or the motor. Put the microphone near the gate, away from the fan.';

/**
 * Compares the rate by the sound with that by the pictures. A rhythm without the claw may confirm the
 * pictures; it never speaks against them.
 */
export function soundSentence(
  { filmFps, errorFps, isClawHeard, alternatives }: ClawNoiseReading,
  pictures: PicturesRate | undefined,
): SoundReading {
  const rate = (fps: number): string =>
    withError(fps, Math.max(0.001, (errorFps / filmFps) * fps), 'fps');
  const also = alternatives.map((fps) => formatNumber(fps, 4)).join(' or ');
  const fits = also === '' ? '' : ` The same rhythm would fit ${also} frames/s.`;
  if (pictures === undefined) {
    if (!isClawHeard) return NOTHING(NO_CLAW);
    return {
      level: 'care',
      sentence: `Reading from the sound: ${rate(filmFps)}.${fits} The pictures do not tell the film rate, so nothing confirms it.`,
    };
  }
  const bears = (fps: number): boolean =>
    Math.abs(fps - pictures.filmFps) <=
    errorFps * (fps / filmFps) + pictures.errorFps + CLOCKS_SHARE * fps;
  const borne = [filmFps, ...alternatives].find(bears);
  if (borne !== undefined) {
    const doubt =
      borne === filmFps
        ? fits
        : ` Alone, the rhythm would rather be taken for ${formatNumber(filmFps, 4)} frames/s.`;
    return {
      level: 'good',
      sentence: `Second reading from the sound: ${rate(borne)}. It agrees with the pictures.${doubt}`,
    };
  }
  if (!isClawHeard) return NOTHING(NO_CLAW);
  return {
    level: 'care',
    sentence: `Second reading from the sound: ${rate(filmFps)}.${fits} It does not agree with the pictures, which give ${formatNumber(pictures.filmFps, 4)} frames/s over the same stretch. Check the film rate and the shutter of your bench, and count ten seconds of film frames by eye.`,
  };
}

/** Film rates between which the sound is asked. */
function expectedRange(pictures: PicturesRate | undefined): { least: number; most: number } {
  if (pictures === undefined) return USUAL;
  const { filmFps } = pictures;
  return {
    least: Math.max(2, Math.min(USUAL.least, filmFps / AROUND)),
    most: Math.min(60, Math.max(USUAL.most, filmFps * AROUND)),
  };
}

/** Listens to a recording, with code that is loaded now. Undefined when it was stopped. */
export async function readSoundOf(
  file: Blob,
  { fromSeconds, seconds, pictures }: SoundQuestion,
  signal: AbortSignal,
): Promise<SoundReading | undefined> {
  const thinking = new Thinking();
  try {
    const { readSound } = await import('../../clip/read-recording.ts');
    const heard = await readSound(file, fromSeconds, seconds, signal);
    if (signal.aborted) return undefined;
    if (heard.kind === 'none') return NOTHING(REASON_WORDS['no-sound']);
    if (heard.kind === 'not-decoded') {
      return NOTHING(`it is coded as ${heard.codec}, which this browser does not decode.`);
    }
    if (heard.kind === 'refused') return NOTHING(`it cannot be read. ${heard.refusal.sentence}`);
    const { samples, sampleRate } = heard.sound;
    if (sampleRate < SLOWEST_SAMPLES) return NOTHING(REASON_WORDS['slow-sound']);
    const expectedFilmFps = expectedRange(pictures);
    const answer = await thinking.ask(
      { task: 'sound', samples, sampleRate, expectedFilmFps },
      signal,
    );
    if (answer === 'stopped' || answer.answer !== 'sound') return undefined;
    const { found } = answer;
    return found.kind === 'none'
      ? NOTHING(REASON_WORDS[found.reason])
      : soundSentence(found, pictures);
  } catch {
    return NOTHING('listening to it broke off.');
  } finally {
    thinking.end();
  }
}
