import { FILE_NAMES } from '../../../core/file/file-names.ts';
import { isSameTurn, RIGHT_WAY_ROUND, turnFilters } from '../../../core/gate/picture-turn.ts';
import { lookCommand } from '../../../core/file/recording-commands.ts';
import { words } from '../../machine/answers.ts';
import { defineWorksheet } from '../../machine/define-worksheet.ts';
import type { ResultTable } from '../../machine/types.ts';
import { findWay, motionOf, rowsCountedAs, type Found } from './findings.ts';
import { inputs, PATHS } from './inputs.ts';
import { causeWords, fileWords, handWords, turnWords, verdictFor } from './words.ts';

function pathsTable({ paths }: Found): ResultTable {
  return {
    caption: 'What the camera sees of a film that is threaded right',
    columns: ['Path', 'Picture', 'In the file'],
    rows: paths.map(({ path, turn }) => ({
      cells: [PATHS[path], turnWords(turn), fileWords(turn)],
    })),
  };
}

export const worksheet = defineWorksheet({
  id: 'picture-way',
  title: 'Picture the wrong way round',
  question:
    'The picture is upside down, mirrored or runs backwards: is that right, and what do I do?',
  chapter: 'gate/lens',
  inputs,
  model:
    'A film that is threaded right looks right to an audience in front of the screen. The lens gives the picture half a turn, so in the gate it is upside down; a camera that looks at it from the screen’s side sees it mirrored as well. A mirror beside the gate and a view through the screen from behind each change left and right. Film can go in four ways round; a single row of holes leaves two of them. Decide by picture and movement, never by the emulsion: prints of 16 mm are made with it on either side.',
  answers: {
    cause: 'Cause',
    inHand: 'At the machine',
    inFile: 'Turn in the file, once the film is threaded right',
    expected: 'A film that is threaded right shows',
  },
  find: findWay,
  outcome(found, values) {
    const { expected, decided } = found;
    return {
      verdict: verdictFor(found, values),
      answers: {
        cause: words(decided === undefined ? 'not decided' : causeWords(decided.film)),
        inHand: words(
          decided === undefined
            ? 'Look first; change nothing yet.'
            : handWords(decided.film, rowsCountedAs(values)),
        ),
        inFile: words(fileWords(expected)),
        expected: words(turnWords(expected), {
          note: 'If the recording shows this, choose it in the keep list; its command then turns the picture.',
        }),
      },
      commands: [
        {
          label: 'Take one picture and read its lettering',
          text: lookCommand(FILE_NAMES.recording, turnFilters(expected), 10),
        },
      ],
      tables: [pathsTable(found)],
    };
  },
  working({ seen }, told, { motion }) {
    const steps = [
      { words: 'A film that is threaded right, seen on this path:', sum: told('expected') },
    ];
    if (seen === undefined) {
      return [
        ...steps,
        {
          words:
            'It takes heads and lettering together to tell how the film is threaded; not both were seen.',
        },
      ];
    }
    const { turn, film } = seen;
    return [
      ...steps,
      {
        words: 'What was seen, against that: the difference is how the film is threaded.',
        sum: `${turnWords(turn)} → ${isSameTurn(film.turn, RIGHT_WAY_ROUND) ? 'no difference' : turnWords(film.turn)}`,
      },
      {
        words: 'Heads that differ mean that the tail went in first; then time runs backwards too.',
        sum: causeWords(film),
      },
      ...(film.fitsClaw
        ? []
        : [{ words: 'A single row of holes would then be on the side without a claw.' }]),
      ...(motion === 'not-looked' || motion === motionOf(film)
        ? []
        : [
            {
              words: `Film threaded so runs ${motionOf(film)}, and what was seen runs ${motion}: one of the two was seen wrongly.`,
            },
          ]),
    ];
  },
  cautions: [
    'Lamp and motor off before you take the film out, and let the gate cool. Rewind on the bench, not in the machine.',
    'Find the right way round with a film you can spare, not with the customer’s.',
  ],
  sources: ['arithmetic', 'iso-26-1993', 'common-practice', 'ffmpeg-documentation'],
});
