// What the scripts say, once for both shells: comments, and the sentence for each thing that can go wrong.
import { FILE_NAMES } from '../file-names.ts';
import type { CodeRange } from '../recorded-picture.ts';

/** Sentences for what is found before or between the commands. */
export const TROUBLE = {
  noTools: 'The programs ffmpeg and ffprobe are needed; one of them does not run here.',
  unforeseen: 'Something went wrong that this script did not expect. The computer says:',
  noSuchWork: 'The first word after the name of the script is try or all, not:',
  noRecording: 'There is no such recording here:',
  noList: 'The measured keep list is not here:',
  otherCount: 'The measured keep list has another number of film frames. Wanted, and there:',
  otherMaking: 'The measured keep list was written for another native rate, way round or range:',
  noSound: 'There is no such sound file here:',
  inTheWay: 'This file is here already, and nothing may be written over it:',
  clearFirst: 'Move the results of the earlier run into another folder, then start again.',
  unreadable: 'The recording cannot be read. Look whether it plays, and whether the copy is whole.',
  fields:
    'The recording is made of fields, two moments in one picture. Make pictures of the fields first, as the chapter on files tells.',
  uneven:
    'The pictures of the recording are not all as long as each other. Lay them on an even grid first, as the chapter on files tells.',
  otherRate: 'The recording has another rate than the numbers of this reel say. It says:',
  otherRange:
    'The recording names another range or colour matrix than the numbers of this reel say. It says:',
  tooShort: 'The recording ends before the last film frame that is wanted. Its pictures:',
  notLooked:
    'The program did not tell whether the recording has fields or uneven pictures, so nobody knows.',
  noLook:
    'No picture could be drawn. Look whether the crop lies inside the frame, and whether the drive is full.',
  badSound: 'The sound file cannot be read.',
  otherSampleRate: 'The sound has another sample rate than the numbers of this reel say. It says:',
  wrongCount: 'The master does not hold every film frame once. Frames wanted, and frames there:',
  damaged: 'The master is damaged. The program says:',
  wrongLength: 'The copy to watch does not last as long as the film. Seconds wanted, and there:',
  noChecksums: 'The checksums could not be made.',
  badChecksums: 'A file does not read back as it was written. Look at the lines above.',
} as const;

/** What a recording may say of itself where a range was entered: values of range and matrix. */
export interface ExpectedColour {
  readonly ranges: readonly string[];
  /** Values of the matrix, or those that it must not have. */
  readonly matrices:
    | { readonly allowed: readonly string[] }
    | { readonly refused: readonly string[] };
}

const LIMITED = ['tv', 'unknown'];

export const EXPECTED_COLOURS: Readonly<Record<CodeRange, ExpectedColour>> = {
  limited: { ranges: LIMITED, matrices: { refused: ['unknown'] } },
  'limited-unnamed': { ranges: LIMITED, matrices: { allowed: ['unknown'] } },
  'full-bt709': { ranges: ['pc'], matrices: { allowed: ['bt709'] } },
  'full-bt601': { ranges: ['pc'], matrices: { allowed: ['smpte170m', 'bt470bg'] } },
  'full-unnamed': { ranges: ['pc'], matrices: { allowed: ['unknown'] } },
};

/** Rates that differ by less are one rate typed in decimals, such as 29.97 and 30000/1001. */
export const SAME_RATE_SHARE = 0.0002;

/** Lines at the top of both scripts, under the name of the reel. */
export function headLines(call: string, preparation: readonly string[]): readonly string[] {
  return [
    'From the recording to the copy to watch, with the numbers of this one reel.',
    '',
    'It needs ffmpeg, version 5 or later, with ffprobe. Put this file into the folder',
    'of the reel, beside the recording, and open a terminal in that folder.',
    ...preparation,
    'First try it: it asks the recording what it is and takes one picture to look at,',
    `${FILE_NAMES.look}. The first step reads the recording once, which can take minutes.`,
    `    ${call} try`,
    'Look at the picture: is it the right way round, and is the edge right? Then make all:',
    `    ${call}`,
    'If your files have other names, say so:',
    `    ${call} all "${FILE_NAMES.recording}" "${FILE_NAMES.taken}"`,
    '',
    `It writes over nothing but ${FILE_NAMES.look}. Where something is wrong it stops, says what,`,
    `and leaves what it has finished. What it does is written down in ${FILE_NAMES.log}.`,
    'A result bears its name only when it is complete; until then the name begins with',
    '"unfinished-".',
  ];
}
