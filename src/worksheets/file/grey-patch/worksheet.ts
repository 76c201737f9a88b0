import { balanceCurves, balanceStops, type Channels } from '../../../core/file/colour-balance.ts';
import { colourFilter } from '../../../core/file/colour-commands.ts';
import { FILE_NAMES } from '../../../core/file/file-names.ts';
import { lookCommand } from '../../../core/file/recording-commands.ts';
import { viewingCommand } from '../../../core/file/viewing-commands.ts';
import { formatNumber, formatQuantity } from '../../../quantity/format.ts';
import { quantity } from '../../machine/answers.ts';
import { defineWorksheet } from '../../machine/define-worksheet.ts';
import type { InputSpecs, Outcome } from '../../machine/types.ts';
import { codeInput, gammaInput, sharesOf } from '../colour-inputs.ts';

/** Codes beyond which a channel clips or drowns, as shares; practice. */
const BRIGHTEST = 0.95;
const DARKEST = 0.05;
/** Difference that the eye lets pass, stop; practice. */
const NEUTRAL_STOPS = 0.1;

const inputs = {
  red: codeInput(
    'Red of the grey patch',
    '153',
    'From 1 to 255; a program that shows 10 bits: divide by four. The mean over a patch that was grey when it was filmed: a road, concrete, a grey shirt, in the light of the scene. Not sky, not snow in shadow.',
  ),
  green: codeInput('Green', '128', 'Of the same patch.'),
  blue: codeInput('Blue', '102', 'Of the same patch.'),
  gamma: gammaInput,
} as const satisfies InputSpecs;

function verdictFor(shares: Channels, stops: Channels): Outcome['verdict'] {
  const all = [shares.red, shares.green, shares.blue];
  if (all.some((share) => share > BRIGHTEST)) {
    return {
      level: 'stop',
      sentence: 'This patch is too bright: a channel that clips tells nothing. Take a darker one.',
    };
  }
  if (all.some((share) => share < DARKEST)) {
    return {
      level: 'stop',
      sentence: 'This patch is too dark: noise and stray light decide. Take a brighter one.',
    };
  }
  if (Math.max(Math.abs(stops.red), Math.abs(stops.blue)) < NEUTRAL_STOPS) {
    return { level: 'good', sentence: 'The patch is neutral as it is. Leave it.' };
  }
  const change = (value: number, channel: string): string => {
    const amount = formatQuantity(Math.abs(value), 'stop', 2);
    return value < 0 ? `take ${amount} from ${channel}` : `add ${amount} to ${channel}`;
  };
  const [red, blue] = [change(stops.red, 'red'), change(stops.blue, 'blue')];
  return {
    level: 'note',
    sentence: `${red.charAt(0).toUpperCase()}${red.slice(1)}, and ${blue}; leave green as it is. Then look at skin and at the whites.`,
  };
}

export const worksheet = defineWorksheet({
  id: 'grey-patch',
  title: 'Balance from a grey patch',
  question: 'How much must red and blue change to make grey neutral?',
  chapter: 'file/copy-to-watch',
  inputs,
  model:
    'Light is proportional to a power of the code, about 2.2 in ordinary video. Red and blue are brought to green: stops = exponent × log2(green ÷ channel). In codes that is one factor for the whole channel. It mends a light of the wrong colour; faded dye has lost contrast as well, and has a sheet of its own. What has clipped in one channel stays clipped, and gets a tint.',
  answers: {
    redStops: 'Red, stops to add',
    blueStops: 'Blue, stops to add',
    redGain: 'Red, factor on the codes',
    blueGain: 'Blue, factor on the codes',
    brightestPercent: 'Brightest channel of the patch',
  },
  find(values) {
    const shares = sharesOf(values);
    return {
      shares,
      stops: balanceStops(shares, values.gamma),
      curves: balanceCurves(shares),
    };
  },
  outcome({ shares, stops, curves }) {
    const verdict = verdictFor(shares, stops);
    const filter = colourFilter(curves);
    return {
      verdict,
      answers: {
        redStops: quantity(stops.red, 'stop'),
        blueStops: quantity(stops.blue, 'stop'),
        redGain: quantity(curves.red.gain, 'one'),
        blueGain: quantity(curves.blue.gain, 'one'),
        brightestPercent: quantity(
          100 * Math.max(shares.red, shares.green, shares.blue),
          'percent',
          2,
        ),
      },
      ...(verdict.level === 'note'
        ? {
            commands: [
              { label: 'Look at one picture', text: lookCommand(FILE_NAMES.film, [filter], 10) },
              {
                label: 'Make the copy to watch with it',
                text: viewingCommand(undefined, false, [filter]),
              },
              { label: 'The same with sound', text: viewingCommand(undefined, true, [filter]) },
            ],
          }
        : {}),
    };
  },
  working(_, told, { red, green, blue, gamma }) {
    const number = (value: number): string => formatNumber(value);
    return [
      {
        words: 'Red, brought to green.',
        sum: `${number(gamma)} × log2(${number(green)} ÷ ${number(red)}) = ${told('redStops')}`,
      },
      {
        words: 'Blue, brought to green.',
        sum: `${number(gamma)} × log2(${number(green)} ÷ ${number(blue)}) = ${told('blueStops')}`,
      },
      {
        words: 'The same as factors on the codes.',
        sum: `${number(green)} ÷ ${number(red)} = ${told('redGain')}; ${number(green)} ÷ ${number(blue)} = ${told('blueGain')}`,
      },
    ];
  },
  cautions: [
    'Only in the copy to watch. The master keeps the colours of the film, fixed by the bare light of the machine.',
  ],
  sources: ['arithmetic', 'common-practice', 'ffmpeg-documentation'],
});
