import { expectedFrames } from '../../../core/file/frame-count.ts';
import { frameStepMillimetres, GAUGE_NAMES } from '../../../core/reel/gauges.ts';
import { formatNumber, formatQuantity } from '../../../quantity/format.ts';
import { quantity } from '../../machine/answers.ts';
import { defineWorksheet } from '../../machine/define-worksheet.ts';
import type { InputSpecs, Outcome } from '../../machine/types.ts';

const frameCount = (label: string, preset: string, help: string) =>
  ({
    kind: 'count',
    label,
    unit: 'frames',
    minimum: 0,
    maximum: 1_000_000,
    default: preset,
    accepted: `${preset} or ${preset} frames`,
    help,
  }) as const;

const inputs = {
  gauge: {
    kind: 'choice',
    label: 'Gauge',
    options: GAUGE_NAMES,
    default: 'super-8',
    help: 'Gives the length of a frame on new film.',
    bench: 'reel.gauge',
  },
  lengthMetres: {
    kind: 'quantity',
    label: 'Length from the first picture to the last',
    unit: 'm',
    minimum: 0.5,
    maximum: 2000,
    default: '60.4',
    accepted: '60.4 m or 198 ft',
    help: 'Measured on this reel, without leader. A counter on the winder or a tape measure laid along the film.',
  },
  lengthErrorMetres: {
    kind: 'quantity',
    label: 'The length may be off by',
    unit: 'm',
    minimum: 0,
    maximum: 50,
    default: '0.1',
    accepted: '0.1 or 4 in',
    help: 'Each time the tape is laid on again costs a few millimetres. A counter: run the same film twice and compare.',
  },
  shrinkagePercent: {
    kind: 'quantity',
    label: 'Shrinkage, mean of the places',
    unit: 'percent',
    minimum: -1,
    maximum: 10,
    default: '0.4',
    accepted: '0.4 or 0.4 %',
    help: 'Shrunken film has more frames to the metre.',
  },
  shrinkageErrorPercent: {
    kind: 'quantity',
    label: 'The shrinkage may be off by',
    unit: 'percent',
    minimum: 0,
    maximum: 5,
    default: '0.1',
    accepted: '0.1 or 0.1 %',
    help: 'Half the range that the shrinkage sheet gives.',
  },
  foundFrames: frameCount(
    'Frames in the file',
    '14321',
    'Of the master, every film frame once. Your player or the keep list tells.',
  ),
  lostFrames: frameCount(
    'Frames known to be lost in the recording',
    '0',
    'Noted on the job sheet: at a break, at a jam, between two takes. Frames cut in mending count only if the length was measured before.',
  ),
} as const satisfies InputSpecs;

function verdictFor(missing: number, errorFrames: number): Outcome['verdict'] {
  const apart = Math.abs(missing);
  const frames = formatQuantity(Math.round(apart), 'frames');
  const error = formatNumber(Math.ceil(errorFrames));
  if (apart <= errorFrames) {
    return {
      level: 'note',
      sentence: `${frames} apart, and the measurement may be off by ${error}: the count agrees. It does not prove that every frame is there.`,
    };
  }
  return missing > 0
    ? {
        level: 'stop',
        sentence: `${frames} too few, more than the ${error} that the measurement may be off: find where they went before you call the master done.`,
      }
    : {
        level: 'stop',
        sentence: `${frames} too many, more than the ${error} that the measurement may be off: frames were kept twice, or leader was counted.`,
      };
}

export const worksheet = defineWorksheet({
  id: 'frame-count',
  title: 'Count the frames',
  question: 'Are as many frames in the file as there were on the reel?',
  chapter: 'gate/run-the-reel',
  inputs,
  model:
    'Frames expected = length ÷ (frame step × (1 − shrinkage)). The frame step is that of new film with the long pitch; film made with the short pitch has about two in a thousand more, which counts as shrinkage if you measured it against the long one. The error is the worst case of both measurements. A count that agrees catches a lost stretch, not a lost frame: the keep list and your eye do that.',
  answers: {
    expectedFrames: 'Frames expected',
    errorFrames: 'Give or take',
    explainedFrames: 'Found and known to be lost',
    missingFrames: 'Expected and not accounted for',
  },
  find({ gauge, ...values }) {
    const step = frameStepMillimetres(gauge, 'long');
    const expected = expectedFrames(
      values.lengthMetres * 1000,
      step,
      values.shrinkagePercent,
      values.lengthErrorMetres * 1000,
      values.shrinkageErrorPercent,
    );
    const explained = values.foundFrames + values.lostFrames;
    return { step, ...expected, explained, missing: expected.frames - explained };
  },
  outcome({ frames, errorFrames, explained, missing }) {
    return {
      verdict: verdictFor(missing, errorFrames),
      answers: {
        expectedFrames: quantity(Math.round(frames), 'frames', 6),
        errorFrames: quantity(Math.ceil(errorFrames), 'frames', 6),
        explainedFrames: quantity(explained, 'frames', 6),
        missingFrames: quantity(Math.round(missing), 'frames', 6, {
          level: Math.abs(missing) <= errorFrames ? 'good' : 'stop',
        }),
      },
    };
  },
  working({ step }, told, values) {
    return [
      {
        words: 'Length by the shrunken step.',
        sum: `${formatQuantity(values.lengthMetres * 1000, 'mm', 6)} ÷ (${formatQuantity(step, 'mm', 4)} × (1 − ${formatNumber(values.shrinkagePercent / 100)})) = ${told('expectedFrames')}`,
      },
      {
        words: 'Less what was found and what is known to be lost.',
        sum: `${told('expectedFrames')} − ${told('explainedFrames')} = ${told('missingFrames')}`,
      },
    ];
  },
  cautions: ['Do not delete the recording until the master is proven.'],
  sources: ['arithmetic', 'smpte-149-2004', 'common-practice'],
});
