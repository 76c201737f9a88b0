import { isSureFilmFrame } from '../../../core/file/keep-drift.ts';
import { LAST_CAMERA_FRAME, MOST_FILM_FRAMES } from '../../../core/file/keep-list.ts';
import { keepReelCsv } from '../../../core/file/keep-ties.ts';
import { keepCommand } from '../../../core/file/picture-commands.ts';
import { formatNumber, formatQuantity } from '../../../quantity/format.ts';
import { durationAnswer, quantityAnswer, wordsAnswer } from '../../machine/labelled-answers.ts';
import {
  cameraFpsInput,
  edgeWipeDegreesInput,
  exposureSecondsInput,
  filmFpsInput,
  flashesPerFrameInput,
  openPercentInput,
  pulldownBladeDegreesInput,
  readoutSecondsInput,
} from '../../gate/gate-inputs.ts';
import { findKeepList, type KeepFindings } from './findings.ts';
import { startOfList } from './picture.ts';
import { keepVerdict, spacingWords, sureAroundTies, sureTable, wanderWords } from './words.ts';
import { readoutAssumed } from '../../gate/readout-words.ts';
import { codeRangeInput, PICTURE_TURNS, pictureTurnInput } from '../recording-inputs.ts';
import { BLADES_MODEL } from '../../gate/shutter-inputs.ts';
import { defineWorksheet, type ResultFile } from '../../machine/types.ts';

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

/** Ties in between at most; beyond that the command grows too long for a terminal. */
const MOST_TIES = 40;

function cautionsFor(found: KeepFindings, filmFps: number): readonly string[] {
  const { ratio, bench, isTied, wanderSource } = found;
  const isFarOff = isTied && Math.abs(bench.cameraFps / ratio / filmFps - 1) > 0.05;
  return [
    ...(isFarOff
      ? [
          'The film rate from the two ends and the one you typed differ by more than 5 %: check the frame numbers and the count.',
        ]
      : []),
    ...(wanderSource === 'disproved'
      ? [
          'The ties contradict the wander that you declare: the film ran at different speeds between them. Check the frame numbers; if they are right, the machine wanders by more than you declare, and nobody knows by how much.',
        ]
      : []),
  ];
}

export const worksheet = defineWorksheet({
  id: 'keep-list',
  title: 'Keep list',
  question: 'Which camera frame stands for each film frame, and how far does the list hold?',
  chapter: 'file/whole-frames',
  inputs: {
    filmFps: {
      ...filmFpsInput,
      label: 'Film rate while recording',
      help: 'As measured while the recording was made.',
    },
    cameraFps: { ...cameraFpsInput, default: '50' },
    nativeFps: {
      kind: 'quantity',
      label: 'Native rate',
      unit: 'fps',
      minimum: 1,
      maximum: 60,
      default: '18',
      accepted: '18, 16 or 24',
      help: 'Rate at which the film was shot; the film file is stamped with it.',
      bench: 'reel.nativeFps',
    },
    filmFrames: {
      kind: 'count',
      unit: 'frames',
      label: 'Film frames wanted',
      minimum: 1,
      maximum: MOST_FILM_FRAMES,
      default: '3600',
      accepted: '3600',
      help: 'From the first film frame to the last, both counted. 50 ft of Super 8 hold 3600.',
    },
    firstCameraFrame: {
      kind: 'quantity',
      label: 'Camera frame of the first film frame',
      unit: 'frames',
      minimum: 0,
      maximum: LAST_CAMERA_FRAME,
      default: '126',
      accepted: '126, 126 1/2 or 126.3',
      help: 'Step through the recording, counting from 0. The middle one of the camera frames that show the first film frame clean; 126 1/2 when 126 and 127 are clean. Tenths are for moving the start by trial; they leave the list unsure.',
    },
    lastCameraFrame: {
      kind: 'optional-quantity',
      label: 'Camera frame of the last film frame',
      unit: 'frames',
      minimum: 0,
      maximum: LAST_CAMERA_FRAME,
      default: '',
      accepted: '10123 or 10123 1/2',
      help: 'The same for the last film frame, if you know its number. Ties the list at both ends. Leave it empty to trust the rates.',
    },
    tieFilmFrames: {
      kind: 'list',
      label: 'Film frames tied in between',
      unit: 'frames',
      minimum: 2,
      maximum: MOST_FILM_FRAMES,
      longest: MOST_TIES,
      mayBeEmpty: true,
      default: '',
      accepted: '1201; 2401',
      help: 'More film frames that you found in the recording, for instance the first one after a splice. Their numbers, the first film frame of the reel being 1, in order and separated by semicolons.',
    },
    tieCameraFrames: {
      kind: 'list',
      label: 'Their camera frames',
      unit: 'frames',
      minimum: 0,
      maximum: LAST_CAMERA_FRAME,
      longest: MOST_TIES,
      mayBeEmpty: true,
      default: '',
      accepted: '3463; 6801 1/2',
      help: 'The middle of the clean camera frames of each, counted from 0, in the same order.',
    },
    rateErrorPercent: {
      kind: 'quantity',
      label: 'The film rate may be out by',
      unit: 'percent',
      minimum: 0,
      maximum: 10,
      default: '0.1',
      accepted: '0.1 %',
      help: 'Either way: what your measurement leaves unsure. Counts where no tie follows. 0 only where one clock drives projector and camera.',
    },
    wanderPercent: {
      kind: 'optional-quantity',
      label: 'The speed wanders by',
      unit: 'percent',
      minimum: 0,
      maximum: 10,
      default: '',
      accepted: '0.1 %',
      help: 'How far the film rate strays from its steady value while the reel runs, either way, as measured with film in the gate. Empty means not measured: ±1 % is assumed. A motor that follows the mains strays by 0.1 to 0.4 %, others by more. 0 only where one clock drives both machines.',
    },
    exposureSeconds: { ...exposureSecondsInput, default: '1/54' },
    readoutSeconds: readoutSecondsInput,
    flashesPerFrame: flashesPerFrameInput,
    openPercent: openPercentInput,
    pulldownBladeDegrees: pulldownBladeDegreesInput,
    edgeWipeDegrees: edgeWipeDegreesInput,
    turn: pictureTurnInput,
    codeRange: codeRangeInput,
  },
  model: `The first film frame lies in the middle of the camera frames you name, and so does every other tie; between two ties the nearest camera frame is picked for each film frame, in exact fractions. A film frame is called sure when its camera frame is whole for every speed that stays within the wander, slow or fast, and for every place of the ties that fits what you saw: a tie is the middle of the camera frames that look clean, and a ghost of up to a tenth of the light in the top or bottom row may be overlooked. A tie in other tenths was found by trial and bounds nothing. ${BLADES_MODEL} In the file camera frames and film frames are both counted from 0; here film frames are counted from 1.`,
  compute(entries, exact) {
    const found = findKeepList(entries, exact.filmFps, exact.cameraFps);
    const { filmFrames, filmFps, cameraFps, nativeFps } = entries;
    const { rules, firstKept, lastKept, ratio, trust, bench } = found;
    // Exposures over several film frames hold no whole frame anywhere; there is nothing to list.
    const isShort = (entries.exposureSeconds + bench.readoutSeconds) * filmFps < 3;
    const start = isShort ? startOfList(entries, found) : undefined;
    const verdict = keepVerdict(found, entries);
    const cautions = cautionsFor(found, filmFps);
    return {
      verdict: {
        level: verdict.level,
        sentence: `${verdict.sentence}${readoutAssumed(entries.readoutSeconds, cameraFps)}`,
      },
      answers: {
        sureFilmFrames: quantityAnswer(
          'Film frames that are sure',
          trust.sureFilmFrames,
          'one',
          9,
          {
            level: trust.sureFilmFrames === filmFrames ? 'good' : 'care',
            note: `Of ${formatNumber(filmFrames)}; the others may be blended, doubled or missing.`,
          },
        ),
        wanderPercent: quantityAnswer('Wander counted with', found.wanderPercent, 'percent', 2, {
          note: `${wanderWords(found)}.`,
        }),
        sureAroundTies: quantityAnswer(
          'Sure on either side of a tie',
          sureAroundTies(found),
          'one',
          9,
          {
            note: 'Film frames; the tie with the fewest.',
          },
        ),
        wanderBornePercent:
          found.bornePercent === undefined
            ? wordsAnswer('Wander that the whole list bears', 'none', {
                note: 'Not even a film that holds its speed is sure all through.',
              })
            : quantityAnswer('Wander that the whole list bears', found.bornePercent, 'percent', 2, {
                note: 'Up to it every film frame of this list is sure.',
              }),
        tiesNeeded:
          found.tiesNeeded === undefined || found.hasDarkRows
            ? wordsAnswer('Ties that make the whole list sure', 'no number is enough')
            : quantityAnswer('Ties that make the whole list sure', found.tiesNeeded, 'one', 9, {
                note: 'Spread evenly, the first and the last film frame included.',
              }),
        provenWanderPercent:
          found.reel.ties.length < 3
            ? wordsAnswer('Wander that the ties prove', 'not known', {
                note: 'It takes a third tie, best in the middle.',
              })
            : quantityAnswer(
                'Wander that the ties prove',
                found.provenWanderPercent,
                'percent',
                2,
                {
                  note: 'The true wander is at least this.',
                },
              ),
        tieErrorFrames: quantityAnswer(
          'A tie may be off by',
          Math.max(...trust.tieErrorFrames),
          'frames',
          2,
          { note: 'Camera frames either way; follows from the count of clean ones.' },
        ),
        roomCameraFrames: quantityAnswer(
          'Room in the window',
          Math.max(0, trust.halfWindowFrames),
          'frames',
          2,
          {
            note: 'Camera frames that the kept one may lie from the middle of its film frame, rounding and all errors together.',
          },
        ),
        driftFilmFrames: quantityAnswer(
          'The list may be out by',
          trust.worstErrorFrames / ratio,
          'one',
          3,
          { note: 'Film frames either way, where it is worst.' },
        ),
        cameraFramesPerFilmFrame: quantityAnswer('Camera frames per film frame', ratio, 'one', 6),
        spacing: wordsAnswer('Kept frames are', spacingWords(found)),
        lastKept: quantityAnswer('Camera frame kept for the last film frame', lastKept, 'one', 9),
        droppedFrames: quantityAnswer(
          'Camera frames dropped between first and last',
          Math.max(0, lastKept - firstKept + 1 - filmFrames),
          'one',
          9,
        ),
        nativeSeconds: durationAnswer('Running time at the native rate', filmFrames / nativeFps),
        ...(found.isTied
          ? { listFps: quantityAnswer('Film rate between the ends', cameraFps / ratio, 'fps', 6) }
          : {}),
      },
      ...(cautions.length === 0 ? {} : { cautions }),
      ...(rules === undefined
        ? {}
        : {
            commands: [
              {
                label: 'Pick the kept frames, turn them and stamp them at the native rate',
                text: keepCommand(rules, exact.nativeFps, {
                  turn: PICTURE_TURNS[entries.turn],
                  codeRange: entries.codeRange,
                }),
              },
            ],
          }),
      tables: [sureTable(found), ...(start === undefined ? [] : [start.table])],
      ...(start === undefined ? {} : { pictures: [start.picture] }),
      files: [new KeepListFile(found)],
    };
  },
  working(entries, { answers }, exact) {
    const { ratio, reel, trust, isTied, wanderPercent } = findKeepList(
      entries,
      exact.filmFps,
      exact.cameraFps,
    );
    const { firstCameraFrame, lastCameraFrame, filmFrames, cameraFps, filmFps } = entries;
    const textOf = (key: string): string => answers[key]?.text ?? '';
    const shown = (value: number, digits = 4): string => formatNumber(value, digits);
    return [
      isTied && lastCameraFrame !== undefined
        ? {
            words:
              'Camera frames from end to end, divided by the steps between film frames, give the camera frames per film frame.',
            sum: `(${shown(lastCameraFrame, 9)} − ${shown(firstCameraFrame, 9)}) ÷ (${filmFrames} − 1) = ${shown(ratio, 6)}`,
          }
        : {
            words: 'Camera rate divided by film rate gives the camera frames per film frame.',
            sum: `${formatQuantity(cameraFps, 'fps', 6)} ÷ ${formatQuantity(filmFps, 'fps', 6)} = ${shown(cameraFps / filmFps, 6)}`,
          },
      {
        words:
          'Each film frame lies so many camera frames after the one before; between ties the share of the way counts. The nearest camera frame is kept, for the last film frame:',
        sum: `${reel.ties.length} ${reel.ties.length === 1 ? 'tie' : 'ties'}; kept: ${textOf('lastKept')}`,
      },
      {
        words:
          'The room is half the window P + c − T − R in camera frames, at the fastest that the film may run with this wander.',
        sum: `room ${textOf('roomCameraFrames')}`,
      },
      {
        words:
          'Midway between two ties G film frames apart a wander w moves a film frame by up to w × G ÷ 2; the farther from a tie, the more, and without a second tie without end.',
        sum: `w = ${formatQuantity(wanderPercent, 'percent', 2)}: out by up to ${shown(trust.worstErrorFrames, 3)} camera frames, ties included`,
      },
      {
        words:
          'A film frame is sure while that error and its rounding to a whole camera frame fit into the room.',
        sum: `${textOf('sureFilmFrames')} of ${formatNumber(filmFrames)} film frames`,
      },
    ];
  },
  cautions: [
    'Keep the recording until the picked film has been checked: first and last frame, a cut and a fast movement in between.',
    'A camera that drops frames while recording shifts every frame after it; check the frame count of the recording against its length.',
  ],
  sources: ['arithmetic', 'common-practice', 'ffmpeg-documentation'],
});
