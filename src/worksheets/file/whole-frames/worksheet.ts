import { smallestCameraFps } from '../../../core/gate/whole-frames.ts';
import { quantityAnswer, wordsAnswer } from '../../machine/labelled-answers.ts';
import { DARK_ROWS_SENTENCE } from '../../gate/dark-rows-words.ts';
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
import { formatNumber } from '../../../quantity/format.ts';
import { readoutAssumed } from '../../gate/readout-words.ts';
import { defineWorksheet } from '../../machine/types.ts';
import { BLADES_MODEL } from '../../gate/shutter-inputs.ts';
import { cycleText, promiseAnswer, promiseSentence, sweepAnswer } from './answers.ts';
import { lostFilmFrames, wholeFrameCycle, wholeFrameFindings } from './findings.ts';
import { purityPicture, purityTable } from './picture.ts';
import { wholeFramesWorking } from './working.ts';

export const worksheet = defineWorksheet({
  id: 'whole-frames',
  title: 'Whole frames',
  question: 'Does the recording hold every film frame whole, and which camera frames blend two?',
  chapter: 'file/whole-frames',
  inputs: {
    filmFps: filmFpsInput,
    flashesPerFrame: flashesPerFrameInput,
    openPercent: openPercentInput,
    pulldownBladeDegrees: pulldownBladeDegreesInput,
    edgeWipeDegrees: edgeWipeDegreesInput,
    cameraFps: cameraFpsInput,
    exposureSeconds: { ...exposureSecondsInput, default: '1/54' },
    readoutSeconds: readoutSecondsInput,
    running: {
      kind: 'choice',
      label: 'Projector and camera',
      options: {
        free: 'run free of each other',
        locked: 'hold an exact ratio',
      },
      default: 'free',
      help: 'Free is the rule. They hold a ratio only when one is driven by the other or both by one clock.',
    },
    phasePercent: {
      kind: 'quantity',
      label: 'Start phase',
      unit: 'percent',
      minimum: 0,
      maximum: 100,
      default: '0',
      accepted: '0 or 25 %',
      help: 'Where the first exposure starts, in percent of a film frame after the middle of the pulldown blade. For the table, and for an exact ratio.',
    },
    speedErrorPercent: {
      kind: 'quantity',
      label: 'Drift of the ratio',
      unit: 'percent',
      minimum: 0.001,
      maximum: 5,
      default: '0.1',
      accepted: '0.1 or 0.02 %',
      help: 'How far the ratio of film rate to camera rate may be off. A mains motor is often out by 0.1 % or more.',
    },
  },
  model: `${BLADES_MODEL} The film stands still while the gate is lit. A camera frame is whole when every one of its rows gets light, and of one film frame only; a row without light is a dark row, never whole. Window, rates and shares are exact for that. The table follows one common cycle of film and camera; a cycle of more than 500 camera frames is cut there.`,
  compute(settings, exact) {
    const found = wholeFrameFindings(settings, exact);
    const { window, closed, longestReadout } = found;
    const cycle = wholeFrameCycle(settings, exact);
    const lost = lostFilmFrames(cycle);
    const promise = promiseSentence(found, settings, lost);
    const verdict = {
      level: promise.level,
      sentence: `${promise.sentence}${readoutAssumed(settings.readoutSeconds, settings.cameraFps)}`,
    };
    const { filmFps, cameraFps, exposureSeconds, readoutSeconds, running } = settings;
    const smallest = smallestCameraFps(filmFps, closed, exposureSeconds, readoutSeconds);
    const whole = cycle.frames.filter(({ kind }) => kind === 'whole').length;
    const blended = cycle.frames.filter(({ kind }) => kind === 'blended').length;
    const dark = cycle.frames.filter(({ darkRowsShare }) => darkRowsShare > 0).length;
    const stretch = cycle.isCut
      ? `of the first ${cycle.frames.length}`
      : `of ${cycle.frames.length}`;
    return {
      verdict,
      answers: {
        wholeFrames: promiseAnswer(found, settings, verdict.level),
        windowMilliseconds:
          window === undefined
            ? wordsAnswer('Window for the start', 'none', { note: DARK_ROWS_SENTENCE })
            : quantityAnswer('Window for the start', window * 1000, 'ms', 4, {
                note:
                  window > 0
                    ? 'An exposure that starts inside it holds one film frame only.'
                    : 'Negative: no exposure can be whole.',
              }),
        smallestCameraFps:
          smallest === undefined
            ? wordsAnswer('Smallest sure camera rate', 'none')
            : quantityAnswer('Smallest sure camera rate', smallest, 'fps', 4, {
                note: 'For machines that run free of each other.',
              }),
        oneFlashCameraFps:
          found.oneFlash === undefined
            ? wordsAnswer('The same if you expose one flash', 'none', {
                note: 'No rate leaves time for one flash and this readout.',
              })
            : quantityAnswer('The same if you expose one flash', found.oneFlash, 'fps', 4, {
                note: 'The matching exposure time at this film rate.',
              }),
        longestReadoutMilliseconds:
          longestReadout === undefined
            ? wordsAnswer('Longest readout time', 'none', {
                note: found.hasDarkRows
                  ? DARK_ROWS_SENTENCE
                  : `At ${formatNumber(cameraFps, 4)} frames/s not even a global shutter is sure.`,
              })
            : quantityAnswer('Longest readout time', longestReadout * 1000, 'ms', 3, {
                note: `With it, ${formatNumber(cameraFps, 4)} frames/s is just sure.`,
              }),
        wholeSharePercent: quantityAnswer(
          'Whole camera frames in the long run',
          found.longRunShare * 100,
          'percent',
          3,
          { note: 'The rest blend two film frames or have dark rows, and are left out.' },
        ),
        commonCycle: wordsAnswer('Common cycle', cycleText(cycle)),
        wholeCameraFrames: quantityAnswer('Whole in the cycle', whole, 'one', 3, {
          note: `${stretch} camera frames, started at this phase.`,
        }),
        blendedCameraFrames: quantityAnswer('Blended in the cycle', blended, 'one', 3, {
          note: `${stretch} camera frames.`,
        }),
        darkCameraFrames: quantityAnswer('With dark rows in the cycle', dark, 'one', 3, {
          note: `${stretch} camera frames; a row without light is never whole.`,
        }),
        filmFramesWithoutWhole: quantityAnswer('Film frames without a whole one', lost, 'one', 3, {
          level: lost === 0 ? 'good' : 'care',
          note: `${cycle.isCut ? 'In this stretch' : `Of ${cycle.filmFramesInCycle}`}, at this phase.`,
        }),
        phaseSweepSeconds: sweepAnswer(found, settings),
        ...(running === 'locked'
          ? {
              goodPhasePercent: quantityAnswer(
                'Start phases that lose no film frame',
                found.goodPhases * 100,
                'percent',
                3,
              ),
            }
          : {}),
      },
      tables: [purityTable(cycle)],
      pictures: [purityPicture(cycle)],
    };
  },
  working: wholeFramesWorking,
  cautions: [
    'Whole is about light, not about sharpness: a film that still moves while the gate opens smears even a whole frame.',
    'Whole frames do not end flicker. Match the exposure time first.',
  ],
  sources: ['common-practice', 'arithmetic'],
});
