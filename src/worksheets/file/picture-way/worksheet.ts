import { FILE_NAMES } from '../../../core/file/file-names.ts';
import {
  bothTurns,
  isMirrored,
  isSameTurn,
  turnFilters,
  type PictureTurn,
} from '../../../core/gate/picture-turn.ts';
import {
  expectedTurn,
  threadedFilm,
  type HoleRows,
  type PicturePath,
  type ThreadedFilm,
} from '../../../core/gate/picture-way.ts';
import { lookCommand } from '../../../core/file/recording-commands.ts';
import { wordsAnswer } from '../../machine/labelled-answers.ts';
import { PICTURE_TURNS, TURN_WORDS, type TurnName } from '../recording-inputs.ts';
import { defineWorksheet, type Outcome, type ResultTable } from '../../machine/types.ts';

const PATHS = {
  gate: 'camera looks straight into the gate, lens out',
  'gate-mirror': 'camera looks into the gate over one mirror at its side',
  'screen-front': 'camera films a screen from the projector’s side',
  'screen-front-mirror': 'camera films a screen over one mirror',
  'screen-behind': 'camera films a translucent screen from behind',
} as const satisfies Readonly<Record<PicturePath, string>>;

interface Seen {
  readonly heads: 'up' | 'down' | 'not-looked';
  readonly lettering: 'right' | 'mirrored' | 'not-looked';
  readonly motion: 'forwards' | 'backwards' | 'not-looked';
}

/** A way round that agrees with everything that was looked at, and how the film then lies. */
interface Reading {
  readonly name: TurnName;
  readonly film: ThreadedFilm;
}

function readingsOf(seen: Seen, expected: PictureTurn, rows: HoleRows): readonly Reading[] {
  return (Object.keys(PICTURE_TURNS) as TurnName[])
    .map((name) => ({ name, film: threadedFilm(PICTURE_TURNS[name], expected, rows) }))
    .filter(({ name, film }) => {
      const turn = PICTURE_TURNS[name];
      const heads = turn.isUpsideDown ? 'down' : 'up';
      const lettering = isMirrored(turn) ? 'mirrored' : 'right';
      const motion = film.isTailFirst ? 'backwards' : 'forwards';
      return (
        film.fitsClaw &&
        (seen.heads === 'not-looked' || seen.heads === heads) &&
        (seen.lettering === 'not-looked' || seen.lettering === lettering) &&
        (seen.motion === 'not-looked' || seen.motion === motion)
      );
    });
}

function causeWords({ isTailFirst, isBackToFront }: ThreadedFilm): string {
  if (!isTailFirst) return isBackToFront ? 'the film is in back to front' : 'the film lies right';
  return isBackToFront ? 'tail first and back to front' : 'tail first, with the right face';
}

function handWords({ isTailFirst, isBackToFront }: ThreadedFilm, rows: HoleRows): string {
  if (!isTailFirst) {
    return isBackToFront
      ? 'Take the film out and thread it again, the same end first and the other face to the lens.'
      : 'Leave the film as it is.';
  }
  if (rows === 'single') {
    return 'Take the film out and rewind it, so that the head comes first. The claw takes the holes on one side only, so the face then comes right by itself.';
  }
  return isBackToFront
    ? 'Take the film out, rewind it, and thread it with the other face to the lens.'
    : 'Take the film out and rewind it. The same face looks at the lens again.';
}

function fileWords(turn: PictureTurn): string {
  const filters = turnFilters(turn);
  if (filters.length === 0) return 'nothing to turn';
  if (filters.length === 2) return 'a half turn: hflip,vflip';
  return filters[0] === 'vflip' ? 'top to bottom: vflip' : 'left to right: hflip';
}

function nameOf(turn: PictureTurn): TurnName {
  const names = Object.keys(PICTURE_TURNS) as TurnName[];
  return names.find((name) => isSameTurn(PICTURE_TURNS[name], turn)) ?? 'right';
}

function verdictFor(
  seen: Seen,
  readings: readonly Reading[],
  expected: PictureTurn,
): Outcome['verdict'] {
  const [only] = readings;
  if (only === undefined) {
    return {
      level: 'stop',
      sentence:
        'No film can lie so on this path: look again at lettering, heads and movement, and count the mirrors. If all of it stands, the print itself is odd, and its lettering decides.',
    };
  }
  if (readings.length > 1) {
    const missing = [
      ...(seen.heads === 'not-looked' ? ['heads'] : []),
      ...(seen.lettering === 'not-looked' ? ['lettering'] : []),
      ...(seen.motion === 'not-looked' ? ['movement'] : []),
    ].join(', ');
    return {
      level: 'care',
      sentence: `Not decided yet: ${readings.map(({ film }) => causeWords(film)).join(', or ')}. Still to look at: ${missing}.`,
    };
  }
  const { film } = only;
  if (film.isTailFirst || film.isBackToFront) {
    return {
      level: 'stop',
      sentence: `Stop: ${causeWords(film)}. Mend it in hand, not in the file.`,
    };
  }
  const file = fileWords(expected);
  const filters = turnFilters(expected);
  const end = filters.length === 0 ? 'the file needs no turn.' : `turn it in the file, ${file}.`;
  if (seen.lettering === 'not-looked' || seen.motion === 'not-looked') {
    const missing = seen.lettering === 'not-looked' ? 'lettering' : 'something that moves';
    return {
      level: 'care',
      sentence: `The film seems to lie right; ${end} Find ${missing} before you record the reel: an odd print is found in no other way.`,
    };
  }
  return {
    level: 'good',
    sentence: `The film lies right: this is what the camera has to see on this path; ${end}`,
  };
}

function pathsTable(isUpsideDown: boolean): ResultTable {
  return {
    caption: 'What the camera sees of a film that lies right',
    columns: ['Path', 'Picture', 'In the file'],
    rows: (Object.keys(PATHS) as PicturePath[]).map((path) => {
      const turn = expectedTurn(path, isUpsideDown);
      return { cells: [PATHS[path], TURN_WORDS[nameOf(turn)], fileWords(turn)] };
    }),
  };
}

export const worksheet = defineWorksheet({
  id: 'picture-way',
  title: 'Way of the picture',
  question:
    'The picture is upside down, mirrored or runs backwards: is that right, and what do I do?',
  chapter: 'gate/lens',
  inputs: {
    path: {
      kind: 'choice',
      label: 'Path of the light',
      options: PATHS,
      default: 'gate',
      help: 'How the camera gets to see the film.',
    },
    camera: {
      kind: 'choice',
      label: 'Camera stands',
      options: { upright: 'upright', 'upside-down': 'on its head' },
      default: 'upright',
      help: 'And does not turn the picture itself; many cameras have a setting that does.',
    },
    rows: {
      kind: 'choice',
      label: 'Holes',
      options: {
        single: 'one row',
        symmetric: 'two rows, or holes in the middle',
      },
      default: 'single',
      help: 'A single row fits the claw on one side only. Two rows and holes in the middle fit either way.',
    },
    heads: {
      kind: 'choice',
      label: 'Heads',
      options: { down: 'down', up: 'up', 'not-looked': 'not looked at' },
      default: 'down',
      help: 'In the recording, before anything turns it. People, trees, horizon.',
    },
    lettering: {
      kind: 'choice',
      label: 'Lettering',
      options: {
        mirrored: 'mirrored',
        right: 'reads right, if need be with your head turned',
        'not-looked': 'none found yet',
      },
      default: 'mirrored',
      help: 'A title, a street sign, a boat’s name, a number plate. A picture on its head but not mirrored reads right when you turn your head.',
    },
    motion: {
      kind: 'choice',
      label: 'Movement',
      options: {
        forwards: 'forwards',
        backwards: 'backwards',
        'not-looked': 'not looked at',
      },
      default: 'forwards',
      help: 'Somebody who walks, jumps into the water, pours a drink.',
    },
  },
  model:
    'The screen shows a film that lies right as an audience should see it. The lens turns the picture by half, so in the gate it stands on its head; a camera that looks at it from the screen’s side sees it mirrored as well. A mirror beside the gate and a look through the screen from behind each change left and right. Film can lie in four ways; a single row of holes leaves two of them. Decide by picture and movement, never by the emulsion: prints of 16 mm are made with it on either side.',
  compute({ path, camera, rows, heads, lettering, motion }) {
    const seen = { heads, lettering, motion };
    const expected = expectedTurn(path, camera === 'upside-down');
    const readings = readingsOf(seen, expected, rows);
    const [only] = readings;
    const isDecided = readings.length === 1 && only !== undefined;
    return {
      verdict: verdictFor(seen, readings, expected),
      answers: {
        cause: wordsAnswer('Cause', isDecided ? causeWords(only.film) : 'not decided'),
        inHand: wordsAnswer(
          'Mend in hand',
          isDecided ? handWords(only.film, rows) : 'Look first; change nothing yet.',
        ),
        inFile: wordsAnswer('Turn in the file, once the film lies right', fileWords(expected)),
        expected: wordsAnswer('A film that lies right shows', TURN_WORDS[nameOf(expected)], {
          note: 'Choose this in the keep list; its command then turns the picture.',
        }),
      },
      commands: [
        {
          label: 'Take one picture and read its lettering',
          text: lookCommand(FILE_NAMES.recording, turnFilters(expected), 10),
        },
      ],
      tables: [pathsTable(camera === 'upside-down')],
    };
  },
  working({ path, camera, rows, heads, lettering }) {
    const expected = expectedTurn(path, camera === 'upside-down');
    const steps = [
      {
        words: 'A film that lies right, seen on this path:',
        sum: TURN_WORDS[nameOf(expected)],
      },
    ];
    if (heads === 'not-looked' || lettering === 'not-looked') {
      return [
        ...steps,
        { words: 'Heads and lettering together tell how the film lies; one of them is missing.' },
      ];
    }
    const isUpsideDown = heads === 'down';
    const seen = {
      isUpsideDown,
      isLeftRightChanged: isUpsideDown !== (lettering === 'mirrored'),
    };
    const film = threadedFilm(seen, expected, rows);
    return [
      ...steps,
      {
        words: 'What was seen, against that: what is left over is the way the film lies.',
        sum: `${TURN_WORDS[nameOf(seen)]} → ${isSameTurn(bothTurns(seen, expected), PICTURE_TURNS.right) ? 'no difference' : TURN_WORDS[nameOf(film.turn)]}`,
      },
      {
        words: 'Heads that differ mean that the tail went in first; then time runs backwards too.',
        sum: causeWords(film),
      },
      ...(film.fitsClaw
        ? []
        : [{ words: 'A single row of holes would then lie on the side without a claw.' }]),
    ];
  },
  cautions: [
    'Lamp and motor off before you take the film out, and let the gate cool. Rewind on the bench, not in the machine.',
    'Try the way round with a film you can spare, not with the customer’s.',
  ],
  sources: ['arithmetic', 'iso-26-1993', 'common-practice', 'ffmpeg-documentation'],
});
