import { codeDensity, dyeRestoring, type Channels } from '../../../core/file/colour-balance.ts';
import { colourFilter } from '../../../core/file/colour-commands.ts';
import { FILE_NAMES } from '../../../core/file/file-names.ts';
import { lookCommand } from '../../../core/file/recording-commands.ts';
import { viewingCommand } from '../../../core/file/viewing-commands.ts';
import { formatNumber } from '../../../quantity/format.ts';
import { quantity } from '../../machine/answers.ts';
import { defineWorksheet } from '../../machine/define-worksheet.ts';
import type { InputSpecs, Outcome, ValuesOf } from '../../machine/types.ts';
import { codeInput, gammaInput, sharesOf } from '../colour-inputs.ts';

/** Contrast beyond which what is left of a dye gives blotches; practice. */
const LARGEST_CONTRAST = 2.5;
/** Spread of a channel below which steps show in 8 bits, codes of 256; practice. */
const SMALLEST_SPREAD = 80;

const NAMES = ['red', 'green', 'blue'] as const;

const inputs = {
  whiteRed: codeInput(
    'Red of a clear part',
    '230',
    'From 1 to 255; 10 bits: divide by four. The clearest part that should be white or bare: a title, a spark, film between pictures of a reversal reel.',
  ),
  whiteGreen: codeInput('Green', '225', 'Of the same part.'),
  whiteBlue: codeInput('Blue', '196', 'Of the same part.'),
  blackRed: codeInput(
    'Red of a part that should be black',
    '81',
    'A deep shadow or a black coat; the darkest part of the scene that was neutral.',
  ),
  blackGreen: codeInput('Green', '35', 'Of the same part.'),
  blackBlue: codeInput('Blue', '43', 'Of the same part.'),
  gamma: gammaInput,
} as const satisfies InputSpecs;

type Found = ReturnType<typeof findRestoring>;

function findRestoring(values: ValuesOf<typeof inputs>) {
  const white = sharesOf({
    red: values.whiteRed,
    green: values.whiteGreen,
    blue: values.whiteBlue,
  });
  const black = sharesOf({
    red: values.blackRed,
    green: values.blackGreen,
    blue: values.blackBlue,
  });
  const restoring = dyeRestoring(white, black, values.gamma);
  const spreads = NAMES.map((name) => 255 * (white[name] - black[name]));
  return {
    white,
    black,
    restoring,
    smallestSpread: Math.min(...spreads),
    largestContrast: Math.max(...NAMES.map((name) => restoring[name].contrast)),
    curves: {
      red: restoring.red.curve,
      green: restoring.green.curve,
      blue: restoring.blue.curve,
    },
  };
}

function verdictFor({ restoring, smallestSpread, largestContrast }: Found): Outcome['verdict'] {
  if (largestContrast > LARGEST_CONTRAST) {
    return {
      level: 'stop',
      sentence: `One layer would need ${formatNumber(largestContrast, 2)} times its contrast: less than 40 % of that dye is left, and full correction gives blotches. Settle for part of it, and say so.`,
    };
  }
  const weakest = NAMES.reduce((a, b) => (restoring[b].contrast > restoring[a].contrast ? b : a));
  if (largestContrast < 1.05) {
    return {
      level: 'good',
      sentence: 'The three layers still have the same contrast. Balance is enough.',
    };
  }
  return smallestSpread < SMALLEST_SPREAD
    ? {
        level: 'care',
        sentence: `Raise ${weakest} to ${formatNumber(largestContrast)} times its contrast, but from a recording of 10 bits: in 8 bits so few codes are left that steps show.`,
      }
    : {
        level: 'note',
        sentence: `Raise ${weakest} to ${formatNumber(largestContrast)} times its contrast, the others as listed. Judge it by a black that should be neutral.`,
      };
}

export const worksheet = defineWorksheet({
  id: 'faded-dye',
  title: 'Faded colour',
  question: 'How much contrast has each layer of the film lost, and can it be brought back?',
  chapter: 'file/copy-to-watch',
  inputs,
  model:
    'Fading in the dark takes a share of each dye, and so some of the contrast of that layer; a stain is added. Each channel gets the contrast of the one that faded least: density′ = factor × density + offset, which in codes is a power. Dyes overlap in colour and fading can be uneven over the picture; no set of six numbers mends that. Noise grows with the factor.',
  answers: {
    redContrast: 'Red, contrast × ',
    greenContrast: 'Green, contrast × ',
    blueContrast: 'Blue, contrast × ',
    redOffset: 'Red, density added',
    greenOffset: 'Green, density added',
    blueOffset: 'Blue, density added',
    noiseStops: 'Noise of the weakest layer grows by',
    spreadCodes: 'Codes that the weakest layer uses, of 256',
  },
  find: findRestoring,
  outcome(found) {
    const { restoring, largestContrast, smallestSpread } = found;
    const verdict = verdictFor(found);
    const filter = colourFilter(found.curves);
    const offset = (name: keyof Channels) => quantity(restoring[name].offset, 'one', 2);
    return {
      verdict,
      answers: {
        redContrast: quantity(restoring.red.contrast, 'one'),
        greenContrast: quantity(restoring.green.contrast, 'one'),
        blueContrast: quantity(restoring.blue.contrast, 'one'),
        redOffset: offset('red'),
        greenOffset: offset('green'),
        blueOffset: offset('blue'),
        noiseStops: quantity(Math.log2(largestContrast), 'stop', 2),
        spreadCodes: quantity(smallestSpread, 'one', 2, {
          level: smallestSpread < SMALLEST_SPREAD ? 'care' : 'good',
        }),
      },
      ...(verdict.level === 'note' || verdict.level === 'care'
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
  working({ white, black, restoring }, told, values) {
    const gamma = formatNumber(values.gamma);
    const density = (codes: Channels, name: keyof Channels): string =>
      formatNumber(codeDensity(codes[name], values.gamma), 4);
    const densitySum = (codes: Channels, name: keyof Channels): string =>
      `−${gamma} × log10(${formatNumber(255 * codes[name])} ÷ 255) = ${density(codes, name)}`;
    const range = (name: keyof Channels): string =>
      `(${density(black, name)} − ${density(white, name)})`;
    const best = NAMES.find((name) => restoring[name].contrast === 1) ?? 'red';
    return [
      {
        words: 'Density of a code, clear and black: red, then green, then blue.',
        sum: NAMES.flatMap((name) => [densitySum(white, name), densitySum(black, name)]).join('; '),
      },
      {
        words: 'The longest of the three ranges, divided by each range, is its factor.',
        sum: NAMES.map(
          (name) => `${range(best)} ÷ ${range(name)} = ${told(`${name}Contrast`)}`,
        ).join('; '),
      },
      {
        words: 'The offset then brings the clear part to that of the best channel.',
        sum: NAMES.map(
          (name) =>
            `${density(white, best)} − ${formatNumber(restoring[name].contrast, 4)} × ${density(white, name)} = ${told(`${name}Offset`)}`,
        ).join('; '),
      },
    ];
  },
  cautions: [
    'Only in the copy to watch, scene by scene. The master keeps the film as it is now.',
    'Do not bring back more than was there: tints and toned black-and-white are content.',
  ],
  sources: [
    'wallace-1989',
    'chatterjee-unfading-2023',
    'arithmetic',
    'common-practice',
    'ffmpeg-documentation',
  ],
});
