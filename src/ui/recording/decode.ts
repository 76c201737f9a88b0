import type { ReadOptions } from '../../clip/read-recording.ts';
import type { ReadOutcome, Reading } from '../../clip/read/reading.ts';
import { formatDuration } from '../../quantity/format.ts';
import type { Refusal } from './recording-kind.ts';

const NOT_LOADED: Refusal = {
  kind: 'refusal',
  says: 'The part of this book that reads recordings could not be loaded.',
  toDo: 'Connect to the network and choose the file once more.',
};

/** A refusal for what breaks off by itself. */
export const BROKE_OFF: Refusal = {
  kind: 'refusal',
  says: 'The sums over this recording broke off; it may need more memory than there is.',
  toDo: 'Close other pages and try again, or read a shorter part.',
};

/** A place in a recording, for a sentence. */
export function placeWords(seconds: number | undefined): string | undefined {
  return seconds === undefined ? undefined : `at ${formatDuration(seconds)} in the recording.`;
}

/** Decodes a recording with code that is loaded now and not before. Undefined when it was stopped. */
export async function decode(
  file: Blob,
  options: ReadOptions,
): Promise<Reading | Refusal | undefined> {
  let outcome: ReadOutcome;
  try {
    const { readRecording } = await import('../../clip/read-recording.ts');
    outcome = await readRecording(file, options);
  } catch {
    return NOT_LOADED;
  }
  if (outcome.kind !== 'refused') return outcome;
  const { obstacle, sentence, advice, command, atSeconds } = outcome.refusal;
  if (obstacle === 'stopped') return undefined;
  return { kind: 'refusal', says: sentence, toDo: advice, command, place: placeWords(atSeconds) };
}
