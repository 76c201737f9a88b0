import Fraction from 'fraction.js';
import { commandRate } from '../command-rate.ts';
import { FILE_NAMES, type FileName } from '../file-names.ts';
import { frameFilterCommands, frameFilterText } from '../frame-filter.ts';
import { keepCommand, repeatCommand } from '../picture-commands.ts';
import { offsetCommands, respeedCommands } from '../sound-commands.ts';
import { speedRatio } from '../sound-retiming.ts';
import {
  MASTER_WITH_SOUND_COMMAND,
  PICTURE_CHECKSUMS_COMMAND,
  viewingCommand,
} from '../viewing-commands.ts';
import { commandWords } from './command-words.ts';
import { plannedKeep, type ReelScriptEntries, type ScriptSound } from './script-entries.ts';

/** A command that makes one file, which its last word names. */
export interface MakeStep {
  readonly kind: 'make';
  readonly result: FileName;
  readonly words: readonly string[];
  /** The spelling for versions before 7, where it differs. */
  readonly olderWords?: readonly string[];
}

/** One step of the chain, in terms that both shells can do. */
export interface ScriptStep {
  /** What is done, for screen and log. */
  readonly title: string;
  /** Why, in comment lines. */
  readonly why: readonly string[];
  /** What is said when it fails. */
  readonly trouble: string;
  readonly work:
    | MakeStep
    | { readonly kind: 'write'; readonly result: FileName; readonly text: string }
    | { readonly kind: 'count-pictures'; readonly filmFrames: number }
    | { readonly kind: 'read-master' }
    | { readonly kind: 'measure-viewing'; readonly seconds: number; readonly bySeconds: number }
    | { readonly kind: 'remove'; readonly files: readonly FileName[] };
}

/** A command of the book as a step; what is there already is refused, and nobody is asked. */
function makeStep(line: string, result: FileName): MakeStep {
  const [program = '', ...rest] = commandWords(line);
  if (rest.at(-1) !== result) throw new Error(`${line} does not make ${result}`);
  return {
    kind: 'make',
    result,
    words: [program, '-nostdin', '-n', '-v', 'warning', '-stats', ...rest.slice(0, -1)],
  };
}

function keepSteps(entries: ReelScriptEntries): readonly ScriptStep[] {
  const { keep, nativeFps, recorded } = entries;
  const { rules, filmFrames } = plannedKeep(entries);
  const pick = {
    title: `Pick the film frames, ${filmFrames} in all, turn them, and write the master`,
    why: [
      'Exactly the camera frames of the keep list are taken, in order, turned the right way',
      'round, and stamped at the native rate. Nothing is lost: every code value stays.',
    ],
    trouble:
      'The film frames could not be picked. Look at what the program says above, and whether the drive is full.',
  };
  if (rules !== undefined) {
    const work = makeStep(keepCommand(rules, nativeFps, recorded), FILE_NAMES.film);
    return [{ ...pick, work }];
  }
  const { current, older } = frameFilterCommands(nativeFps, recorded);
  const pickByFile: ScriptStep = {
    ...pick,
    work: {
      ...makeStep(current, FILE_NAMES.film),
      olderWords: makeStep(older, FILE_NAMES.film).words,
    },
  };
  if (keep.by === 'file') return [pickByFile];
  const cameraFrames = keep.by === 'measured' ? keep.cameraFrames : [];
  return [
    {
      title: 'Write down the measured keep list',
      why: ['It is too long for a command, so it goes into a file that the next step reads.'],
      trouble: 'The list could not be written. Look whether the drive is full.',
      work: {
        kind: 'write',
        result: FILE_NAMES.keepFilter,
        text: frameFilterText(cameraFrames, nativeFps, recorded),
      },
    },
    pickByFile,
  ];
}

function proofSteps(filmFrames: number): readonly ScriptStep[] {
  return [
    {
      title: 'Read the master from end to end',
      why: ['Each slice of each picture carries a checksum. If all is well nothing is said.'],
      trouble: 'The master could not be read.',
      work: { kind: 'read-master' },
    },
    {
      title: 'List a checksum for each picture of the master',
      why: ['With this list any later copy can be compared picture by picture.'],
      trouble: 'The checksums of the pictures could not be made.',
      work: makeStep(PICTURE_CHECKSUMS_COMMAND, FILE_NAMES.pictureChecksums),
    },
    {
      title: 'Count the pictures of the master',
      why: [],
      trouble: 'The pictures could not be counted.',
      work: { kind: 'count-pictures', filmFrames },
    },
  ];
}

function soundSteps({ takenFps, sampleRateHz, lateSeconds }: ScriptSound, nativeFps: Fraction) {
  const ratio = speedRatio(takenFps, nativeFps);
  const isRight = ratio.equals(1);
  const respeed: ScriptStep = {
    title: 'Bring the sound to the speed of the film',
    why: [
      'The film ran at another rate while the sound was taken. Speed and pitch change together.',
    ],
    trouble: 'The speed of the sound could not be changed.',
    work: makeStep(respeedCommands(sampleRateHz, ratio).ffmpeg, FILE_NAMES.corrected),
  };
  const move = lateSeconds < 0 ? 'Silence is put before it' : 'A piece is cut from its head';
  const offset: ScriptStep = {
    title: 'Put the sound in step with the picture',
    why: [lateSeconds === 0 ? 'It is in step already and is passed on as it is.' : `${move}.`],
    trouble: 'The sound could not be put in step.',
    work: makeStep(
      offsetCommands(isRight ? 'taken' : 'corrected', lateSeconds).ffmpeg,
      FILE_NAMES.sound,
    ),
  };
  const join: ScriptStep = {
    title: 'Put the sound beside the pictures of the master',
    why: ['Neither sound nor picture is touched.'],
    trouble: 'Sound and picture could not be put into one file.',
    work: makeStep(MASTER_WITH_SOUND_COMMAND, FILE_NAMES.filmWithSound),
  };
  return [...(isRight ? [] : [respeed]), offset, join];
}

/**
 * The chain of one reel from the recording to the copy to watch, step by step, made of the commands of
 * the book. What comes before, the questions to the recording, and after, the checksums of the files,
 * is not the same in both shells and stands in them.
 *
 * @param entries  numbers of the reel
 * @returns the steps in order
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source ffmpeg-documentation
 */
export function scriptSteps(entries: ReelScriptEntries): readonly ScriptStep[] {
  const { nativeFps, deliveryFps, crop, sound } = entries;
  const { filmFrames } = plannedKeep(entries);
  const { rate } = commandRate('deliveryFps', deliveryFps);
  const isRespeeded = sound !== undefined && !sound.takenFps.equals(nativeFps);
  return [
    ...keepSteps(entries),
    ...proofSteps(filmFrames),
    ...(sound === undefined ? [] : soundSteps(sound, nativeFps)),
    {
      title: `Lay the film on ${rate} frames a second`,
      why: ['Film frames are shown again where needed; no two are blended.'],
      trouble: 'The film could not be laid on the rate of the screen.',
      work: makeStep(repeatCommand(nativeFps, deliveryFps), FILE_NAMES.delivery),
    },
    {
      title: 'Make the copy to watch',
      why: [
        crop === undefined
          ? 'Small, in a form that every player takes. All of the frame is shown.'
          : 'Small, in a form that every player takes. Only here is the picture cropped.',
      ],
      trouble: 'The copy to watch could not be made.',
      work: makeStep(viewingCommand(crop, sound !== undefined), FILE_NAMES.viewing),
    },
    {
      title: 'Measure the copy to watch',
      why: [],
      trouble: 'The length of the copy to watch could not be read.',
      work: {
        kind: 'measure-viewing',
        seconds: new Fraction(filmFrames).div(nativeFps).valueOf(),
        bySeconds: 2 / deliveryFps.valueOf(),
      },
    },
    {
      title: 'Remove what can be made again in minutes',
      why: ['These files were made by this very run and have done their work.'],
      trouble: 'A file could not be removed.',
      work: {
        kind: 'remove',
        files: [...(isRespeeded ? [FILE_NAMES.corrected] : []), FILE_NAMES.delivery],
      },
    },
  ];
}

/** Every file that the steps and the checksums make, in order. */
export function resultsOf(steps: readonly ScriptStep[]): readonly FileName[] {
  const made = steps.flatMap(({ work }) =>
    work.kind === 'make' || work.kind === 'write' ? [work.result] : [],
  );
  return [...made, FILE_NAMES.fileChecksums];
}
