/** Why a recording’s own pictures cannot be copied into a film file without coding them anew. */
export type SaveObstacle =
  | 'not-mp4-or-mov'
  | 'damaged-index'
  | 'no-picture-track'
  | 'fragmented'
  | 'encrypted'
  | 'several-descriptions'
  | 'media-elsewhere'
  | 'edit-list'
  | 'few-stand-alone'
  | 'reordered'
  | 'unknown-codec'
  | 'not-proven'
  | 'parameter-sets'
  | 'frame-not-in-file'
  | 'nothing-kept'
  | 'changed-while-saving'
  | 'stopped';

/** An obstacle with its own sentence, and what to do instead. */
export interface SaveRefusal {
  readonly obstacle: SaveObstacle;
  /** What is in the way, with the figures of this file. */
  readonly sentence: string;
  /** What the reader can do. */
  readonly advice: string;
}

const MASTER =
  'Make the master with the commands on this page: they code every kept picture without loss.';
const AGAIN = 'Copy the recording from the camera once more, and choose that copy.';

const ADVICE: Readonly<Record<SaveObstacle, string>> = {
  'not-mp4-or-mov': MASTER,
  'damaged-index': AGAIN,
  'no-picture-track': 'Choose a recording with pictures.',
  fragmented: MASTER,
  encrypted: 'Choose a recording that is not protected.',
  'several-descriptions': MASTER,
  'media-elsewhere': 'Copy the recording from the camera as one file, and choose that.',
  'edit-list': MASTER,
  'few-stand-alone': MASTER,
  reordered: MASTER,
  'unknown-codec': MASTER,
  'not-proven': MASTER,
  'parameter-sets': MASTER,
  'frame-not-in-file': 'Read the recording again, and save with the list of that reading.',
  'nothing-kept': 'Let the page find the kept frames first.',
  'changed-while-saving': 'Leave the card or the drive in, and save once more.',
  stopped: 'Save again when you are ready; no part of a file was left behind.',
};

/** A refusal with the advice that belongs to it. */
export function saveRefusal(obstacle: SaveObstacle, sentence: string): SaveRefusal {
  return { obstacle, sentence, advice: ADVICE[obstacle] };
}

/** Thrown inside this room; the public functions give the refusal back as data. */
export class SaveRefusedError extends Error {
  override readonly name = 'SaveRefusedError';
  readonly refusal: SaveRefusal;

  constructor(obstacle: SaveObstacle, sentence: string) {
    super(sentence);
    this.refusal = saveRefusal(obstacle, sentence);
  }
}
