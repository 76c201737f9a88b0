import { fileSetLacks, KEPT_PLACES, KEPT_SETS } from '../../../core/file/file-set.ts';
import { FILE_NAMES } from '../../../core/file/file-names.ts';
import { withSmallInitial } from '../../../quantity/sentence.ts';
import { words } from '../../machine/answers.ts';
import { defineWorksheet } from '../../machine/define-worksheet.ts';
import type { ChoiceInput } from '../../machine/types.ts';
import { LACK_WORDS } from './words.ts';

type Presence = 'there' | 'missing' | 'not-looked';

/** A file that is in the folder or not; it opens as not looked for. */
function file(label: string, help: string): ChoiceInput<Presence> {
  return {
    kind: 'choice',
    label,
    options: { 'not-looked': 'not looked for', there: 'there', missing: 'missing' },
    default: 'not-looked',
    help,
  };
}

export const worksheet = defineWorksheet({
  id: 'file-set',
  title: 'Is the set complete?',
  question: 'What does the folder of this reel still lack?',
  chapter: 'file/files',
  inputs: {
    sound: {
      kind: 'choice',
      label: 'The film',
      options: { silent: 'is silent', sound: 'has sound' },
      default: 'silent',
      help: 'A silent film needs no sound file.',
    },
    recording: file(FILE_NAMES.recording, 'As the camera wrote it.'),
    master: file(FILE_NAMES.film, 'The master: every film frame once.'),
    takenSound: file(FILE_NAMES.taken, 'The sound as it was recorded.'),
    masterWithSound: file(FILE_NAMES.filmWithSound, 'The master with its sound.'),
    viewing: file(FILE_NAMES.viewing, 'The copy to watch.'),
    pictureChecksums: file(FILE_NAMES.pictureChecksums, 'One checksum for each picture.'),
    fileChecksums: file(FILE_NAMES.fileChecksums, 'One checksum for each file of the folder.'),
    setCount: {
      kind: 'count',
      label: 'Sets of the files',
      minimum: 1,
      maximum: 20,
      default: '1',
      accepted: '1 or 3',
      help: 'This folder and its copies, on media of their own.',
    },
    placeCount: {
      kind: 'count',
      label: 'Places',
      minimum: 1,
      maximum: 20,
      default: '1',
      accepted: '1 or 2',
      help: 'Houses in which they are kept.',
    },
    readBack: {
      kind: 'choice',
      label: 'Read back against the checksums',
      options: { 'not-yet': 'not yet', some: 'some sets', all: 'every set' },
      default: 'not-yet',
      help: 'A copy that nobody has read back may not be there.',
    },
  },
  model: `What was not looked for counts as missing. What cannot be made again comes first, then what can, then the checksums, then ${KEPT_SETS} sets in ${KEPT_PLACES} places, then the proof that they read. The recording is wanted until the master is proven: checksums of its pictures, and every set read back.`,
  answers: { first: 'First', lacking: 'Still lacking', mayHandOver: 'Ready for the shelf' },
  find({ sound, ...rest }) {
    return fileSetLacks({ ...rest, hasSound: sound === 'sound' });
  },
  outcome(lacks) {
    const [first] = lacks;
    if (first === undefined) {
      return {
        verdict: {
          level: 'good',
          sentence:
            'The set is complete, proven, and kept in more than one place. Keep the film itself as well.',
        },
        answers: {
          first: words('none'),
          lacking: words('nothing'),
          mayHandOver: words('yes', { level: 'good' }),
        },
      };
    }
    const isSafe = lacks.every((lack) => !LACK_WORDS[lack].isGrave);
    const level = isSafe ? 'care' : 'stop';
    const { what, how } = LACK_WORDS[first];
    return {
      verdict: { level, sentence: `Not complete: first ${withSmallInitial(what)}. ${how}` },
      answers: {
        first: words(what),
        lacking: words(lacks.length === 1 ? 'one thing' : `${lacks.length} things`),
        mayHandOver: words('not yet', { level }),
      },
      tables: [
        {
          caption: 'What is lacking, in this order',
          columns: ['Step', 'Do this'],
          rows: lacks.map((lack, index) => ({
            cells: [String(index + 1), `${LACK_WORDS[lack].what}. ${LACK_WORDS[lack].how}`],
          })),
        },
      ],
    };
  },
  working(lacks, _told, { setCount }) {
    return [
      { words: 'Each file that is kept, each checksum, the sets and the places are gone through.' },
      ...(setCount < KEPT_SETS
        ? [
            {
              words: 'Sets still to make.',
              sum: `${KEPT_SETS} − ${setCount} = ${KEPT_SETS - setCount}`,
            },
          ]
        : []),
      ...lacks.map((lack) => ({
        words: `Still to do: ${withSmallInitial(LACK_WORDS[lack].what)}.`,
      })),
      ...(lacks.length === 0 ? [{ words: 'Nothing is lacking.' }] : []),
    ];
  },
  cautions: ['Delete nothing before every set is read back, and keep the film itself.'],
  sources: ['common-practice'],
});
