// What the sheet says for each thing that a set of files lacks.

import { FILE_NAMES } from '../../../core/file/file-names.ts';
import { KEPT_PLACES, KEPT_SETS, type FileSetLack } from '../../../core/file/file-set.ts';

interface LackWords {
  readonly what: string;
  readonly how: string;
  /** True where something would be lost for good if the folder were shelved as it is. */
  readonly isGrave: boolean;
}

export const LACK_WORDS: Readonly<Record<FileSetLack, LackWords>> = {
  recording: {
    what: 'Find the recording',
    how: `${FILE_NAMES.recording} stays until the master is proven: checksums of its pictures, and every set read back.`,
    isGrave: true,
  },
  'taken-sound': {
    what: 'Find the sound as it was taken',
    how: `${FILE_NAMES.taken} is kept for good; everything else of the sound is made from it.`,
    isGrave: true,
  },
  master: {
    what: 'Make the master',
    how: `${FILE_NAMES.film} is made from the recording, every film frame once.`,
    isGrave: true,
  },
  'master-with-sound': {
    what: 'Join master and sound',
    how: `${FILE_NAMES.filmWithSound} is kept for good.`,
    isGrave: true,
  },
  viewing: {
    what: 'Make the copy to watch',
    how: `${FILE_NAMES.viewing} is made from the master; the customer is never given one in place of the other.`,
    isGrave: false,
  },
  'picture-checksums': {
    what: 'List a checksum for each picture',
    how: `${FILE_NAMES.pictureChecksums} proves each picture of the master, now and later.`,
    isGrave: false,
  },
  'file-checksums': {
    what: 'List a checksum for each file',
    how: `${FILE_NAMES.fileChecksums} is made last of all files, so that it names them all.`,
    isGrave: false,
  },
  sets: {
    what: 'Make more sets',
    how: `Keep ${KEPT_SETS} sets, each on a medium of its own.`,
    isGrave: false,
  },
  places: {
    what: 'Take a set to another house',
    how: `Keep them in ${KEPT_PLACES} places: water and fire take a whole house.`,
    isGrave: false,
  },
  'read-back': {
    what: 'Read every set back',
    how: 'Check each against its list of checksums before you delete anything.',
    isGrave: false,
  },
};
