import { FILE_NAMES } from '../../../core/file/file-names.ts';
import { resultsOf } from '../../../core/file/reel-script/script-steps.ts';
import { formatNumber, formatQuantity } from '../../../quantity/format.ts';
import { duration, quantity, words } from '../../machine/answers.ts';
import { defineWorksheet } from '../../machine/define-worksheet.ts';
import type { Outcome, ResultTable } from '../../machine/types.ts';
import { findScript, type ScriptFindings } from './findings.ts';
import { inputs } from './inputs.ts';
import { scriptFiles } from './script-file.ts';

/** What is done before and after the steps that make files. */
const ASKING = 'Ask the recording what it is, and take one picture to look at';
const SUMMING = 'List a checksum for every file, and read each file back';

function stepsTable(steps: NonNullable<ScriptFindings['steps']>): ResultTable {
  const rows = [
    [ASKING, FILE_NAMES.look],
    ...steps.map(({ title, work }) => [
      title,
      work.kind === 'make' || work.kind === 'write' ? work.result : 'no file',
    ]),
    [SUMMING, FILE_NAMES.fileChecksums],
  ];
  return {
    caption: 'What the script does, in order',
    columns: ['Step', 'File'],
    rows: rows.map((cells) => ({ cells })),
  };
}

function verdictFor({
  list,
  steps,
  script: { keep, recordingName },
}: ScriptFindings): Outcome['verdict'] {
  if (steps === undefined) {
    return { level: 'stop', sentence: `There is no script for this reel. ${list.sentence}` };
  }
  if (keep.by === 'file') {
    return { level: 'care', sentence: `The script is ready. ${list.sentence}` };
  }
  if (list.level !== 'good') {
    return {
      level: 'care',
      sentence: `The script does what the keep list says, and the list is not sure. ${list.sentence}`,
    };
  }
  return {
    level: 'good',
    sentence: `The script is ready: from ${recordingName} to ${FILE_NAMES.viewing} in ${steps.length + 2} steps, with a keep list that is sure of every film frame.`,
  };
}

function offsetWords(lateSeconds: number): string {
  if (lateSeconds === 0) return 'in step already';
  const amount = formatQuantity(Math.abs(lateSeconds), 's', 4);
  return lateSeconds > 0 ? `${amount} cut from its head` : `${amount} of silence before it`;
}

function cropWords({ script: { crop } }: ScriptFindings): string {
  return crop === undefined
    ? 'all of the frame'
    : `${crop.widthPixels} × ${crop.heightPixels} pixels, from ${crop.leftPixels} and ${crop.topPixels}`;
}

export const worksheet = defineWorksheet({
  id: 'reel-script',
  title: 'One script for the reel',
  question: 'How do I run the whole chain of one reel, from recording to copy to watch, in one go?',
  chapter: 'file/one-script',
  inputs,
  model:
    'The script is put together from the same commands that the other sheets print, with the numbers of this reel. Before it works it asks the recording for its rate, its range, its length, fields and uneven pictures, and stops where the answers are not those of the reel. It counts the pictures of the master, but it cannot see whether the right ones were picked: that rests on the keep list, and on your eyes. A fault after the first minute of a recording is only found if it changes the number of pictures or the mean rate.',
  answers: {
    filmFrames: 'Pictures in the master',
    nativeSeconds: 'Running time',
    steps: 'Steps',
    results: 'Files that it makes',
    shows: 'The copy to watch shows',
    soundRatio: 'Speed of the sound',
    soundMove: 'Sound is moved',
  },
  find: findScript,
  outcome(found, { filmFrames, nativeFps }) {
    const { script, steps, soundRatio } = found;
    const { sound } = script;
    return {
      verdict: verdictFor(found),
      answers: {
        filmFrames: quantity(filmFrames, 'one', 9, {
          note: 'The script stops where it counts another number.',
        }),
        nativeSeconds: duration(filmFrames / nativeFps),
        ...(steps !== undefined && {
          steps: quantity(steps.length + 2, 'one', 3),
          results: words([FILE_NAMES.look, ...resultsOf(steps), FILE_NAMES.log].join(', ')),
        }),
        shows: words(cropWords(found)),
        ...(soundRatio !== undefined && {
          soundRatio: words(soundRatio === 1 ? 'right' : `× ${formatNumber(soundRatio, 6)}`),
        }),
        ...(sound !== undefined && { soundMove: words(offsetWords(sound.lateSeconds)) }),
      },
      ...(steps !== undefined && {
        tables: [stepsTable(steps)],
        files: scriptFiles(script),
      }),
    };
  },
  working({ script: { sound }, soundRatio = 1 }, told, { filmFrames, nativeFps }) {
    const native = formatQuantity(nativeFps, 'fps', 6);
    return [
      {
        words: 'Film frames divided by the native rate: the time that the copy to watch must last.',
        sum: `${formatNumber(filmFrames)} ÷ ${native} = ${told('nativeSeconds')}`,
      },
      ...(sound === undefined
        ? []
        : [
            {
              words:
                'Native rate divided by the rate while the sound was taken: the change of its speed.',
              sum: `${native} ÷ ${formatQuantity(sound.takenFps.valueOf(), 'fps', 6)} = ${formatNumber(soundRatio, 6)}`,
            },
          ]),
    ];
  },
  cautions: [
    'Try the script with “try” first, and look at the picture that it takes: a picture the wrong way round or a wrong crop costs an hour.',
    'Keep the recording until the master is proven. The script does not delete it, and neither should you.',
    'Read a script before you run it, this one too. It can do everything that you can do on this computer.',
  ],
  sources: [
    'arithmetic',
    'common-practice',
    'ffmpeg-documentation',
    'ffmprovisr',
    'rfc-9043',
    'posix-shell',
    'powershell-language',
  ],
});
