import { READABLE_COPY_COMMAND } from '../../core/file/readable-copy.ts';

/** Why a file cannot be read as a recording. */
export type ReadObstacle =
  | 'empty'
  | 'not-a-recording'
  | 'container-not-read'
  | 'no-pictures'
  | 'codec-not-decoded'
  | 'protected'
  | 'browser-too-old'
  | 'cut-off'
  | 'damaged'
  | 'trimmed'
  | 'picture-too-large'
  | 'planes-not-given'
  | 'nothing-there'
  | 'unreadable'
  | 'not-loaded'
  | 'stopped';

/** An obstacle with its own sentence, what to do, and a command where one helps. */
export interface ReadRefusal {
  readonly obstacle: ReadObstacle;
  readonly sentence: string;
  readonly advice: string;
  /** Makes a copy that can be read; frames, times and rows stay as they are. */
  readonly command?: string;
  /** Place in the recording at which it shows, s from its first frame. */
  readonly atSeconds?: number;
}

const CONVERT =
  'Make a copy to be read with this command, and choose that copy. Frames and times stay as they are.';
const AGAIN = 'Copy the recording from the camera once more, and choose that copy.';

const ADVICE: Readonly<Record<ReadObstacle, string>> = {
  empty: AGAIN,
  'not-a-recording': 'Choose the video file that the camera wrote.',
  'container-not-read': CONVERT,
  'no-pictures': 'Choose a recording with pictures.',
  'codec-not-decoded': CONVERT,
  protected: 'Choose a recording that is not protected: as the camera wrote it.',
  'browser-too-old': 'Open this page in a browser of this year, over https.',
  'cut-off': AGAIN,
  damaged: AGAIN,
  trimmed: 'Choose the recording as the camera wrote it, before it was trimmed.',
  'picture-too-large': CONVERT,
  'planes-not-given': CONVERT,
  'nothing-there': 'Choose a part that lies within the recording.',
  unreadable: 'Leave the card or the drive in, and choose the file once more.',
  'not-loaded': 'Connect to the network and choose the file once more.',
  stopped: 'Read it again when you are ready.',
};

const HELPED_BY_COPY: ReadonlySet<ReadObstacle> = new Set([
  'container-not-read',
  'codec-not-decoded',
  'picture-too-large',
  'planes-not-given',
]);

/** A refusal with the advice and the command that belong to it. */
export function readRefusal(
  obstacle: ReadObstacle,
  sentence: string,
  atSeconds?: number,
): ReadRefusal {
  return {
    obstacle,
    sentence,
    advice: ADVICE[obstacle],
    ...(HELPED_BY_COPY.has(obstacle) ? { command: READABLE_COPY_COMMAND } : {}),
    ...(atSeconds === undefined ? {} : { atSeconds }),
  };
}

/** Thrown inside this room; the public functions give the refusal back as data. */
export class ReadRefusedError extends Error {
  override readonly name = 'ReadRefusedError';
  readonly refusal: ReadRefusal;

  constructor(obstacle: ReadObstacle, sentence: string, atSeconds?: number) {
    super(sentence);
    this.refusal = readRefusal(obstacle, sentence, atSeconds);
  }
}
