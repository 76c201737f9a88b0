import { readoutAssumed } from '../../gate/readout-words.ts';
import { BLADES_MODEL } from '../../gate/shutter-inputs.ts';
import { defineWorksheet } from '../../machine/define-worksheet.ts';
import { answersOf, labels } from './answers.ts';
import { findWholeFrames } from './findings.ts';
import { inputs } from './inputs.ts';
import { purityPicture, purityTable } from './picture.ts';
import { promiseSentence } from './verdict.ts';
import { wholeFramesWorking } from './working.ts';

export const worksheet = defineWorksheet({
  id: 'whole-frames',
  title: 'Whole frames',
  question: 'Does the recording hold every film frame whole, and which camera frames blend two?',
  chapter: 'file/whole-frames',
  inputs,
  model: `${BLADES_MODEL} The film stands still while the gate is lit. A camera frame is whole when every one of its rows gets light, and of one film frame only; a row without light is a dark row, never whole. Window, rates and shares are exact for that. The table follows one common cycle of film and camera; a cycle of more than 500 camera frames is cut there.`,
  answers: labels,
  find: findWholeFrames,
  outcome(found, settings) {
    const { level, sentence } = promiseSentence(found, settings);
    return {
      verdict: {
        level,
        sentence: `${sentence}${readoutAssumed(settings.readoutSeconds, settings.cameraFps)}`,
      },
      answers: answersOf(found, settings, level),
      tables: [purityTable(found.cycle)],
      pictures: [purityPicture(found.cycle)],
    };
  },
  working: wholeFramesWorking,
  cautions: [
    'Whole is about light, not about sharpness: a film that still moves while the gate opens smears even a whole frame.',
    'Whole frames do not end flicker. Match the exposure time first.',
  ],
  sources: ['common-practice', 'arithmetic'],
});
