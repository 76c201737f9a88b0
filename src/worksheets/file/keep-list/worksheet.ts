import { isSureFilmFrame } from '../../../core/file/keep-drift.ts';
import { keepReelCsv } from '../../../core/file/keep-ties.ts';
import { readoutAssumed } from '../../gate/readout-words.ts';
import { BLADES_MODEL } from '../../gate/shutter-inputs.ts';
import { defineWorksheet } from '../../machine/define-worksheet.ts';
import type { ResultFile } from '../../machine/types.ts';
import { answersOf, labels } from './answers.ts';
import { findKeepList, type KeepFindings } from './findings.ts';
import { inputs } from './inputs.ts';
import { startPicture, startTable, sureTable } from './picture.ts';
import { keepCautions, keepVerdict } from './words.ts';
import { keepWorking } from './working.ts';

/** The keep list as a file. Its text is only made when it is taken away: a long reel has many lines. */
class KeepListFile implements ResultFile {
  readonly fileName = 'keep-list.csv';
  readonly mediaType = 'text/csv';
  readonly #found: KeepFindings;

  constructor(found: KeepFindings) {
    this.#found = found;
  }

  get text(): string {
    const { reel, bench, trust } = this.#found;
    return keepReelCsv(reel, bench.cameraFps, (filmFrame) => isSureFilmFrame(trust, filmFrame));
  }
}

const COMMAND_LABEL = 'Pick the kept frames, turn them and stamp them at the native rate';

export const worksheet = defineWorksheet({
  id: 'keep-list',
  title: 'Keep list',
  question: 'Which camera frame stands for each film frame, and how far does the list hold?',
  chapter: 'file/whole-frames',
  inputs,
  model: `The first film frame lies in the middle of the camera frames you name, and so does every other tie; between two ties the nearest camera frame is picked for each film frame, in exact fractions. A film frame is called sure when its camera frame is whole for every speed that stays within the wander, slow or fast, and for every place of the ties that fits what you saw: a tie is the middle of the camera frames that look clean, and a ghost of up to a tenth of the light in the top or bottom row may be overlooked. A tie in other tenths was found by trial and bounds nothing. ${BLADES_MODEL} In the file camera frames and film frames are both counted from 0; here film frames are counted from 1.`,
  answers: labels,
  find: findKeepList,
  outcome(found, entries) {
    const { command, start, stretches } = found;
    const { level, sentence } = keepVerdict(found, entries);
    const cautions = keepCautions(found, entries);
    const hasStart = start.length > 0;
    return {
      verdict: {
        level,
        sentence: `${sentence}${readoutAssumed(entries.readoutSeconds, entries.cameraFps)}`,
      },
      answers: answersOf(found, entries),
      ...(cautions.length > 0 && { cautions }),
      ...(command !== undefined && { commands: [{ label: COMMAND_LABEL, text: command }] }),
      tables: [sureTable(stretches), ...(hasStart ? [startTable(start)] : [])],
      ...(hasStart && { pictures: [startPicture(start)] }),
      files: [new KeepListFile(found)],
    };
  },
  working: keepWorking,
  cautions: [
    'Keep the recording until the picked film has been checked: first and last frame, a cut and a fast movement in between.',
    'A camera that drops frames while recording shifts every frame after it; check the frame count of the recording against its length.',
  ],
  sources: ['arithmetic', 'common-practice', 'ffmpeg-documentation'],
});
